import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { PackIndexEntry } from '../../../analysis/records/pack.ts';
import {
  addToKept,
  keepWhole,
  listKept,
  removeKept,
  tidyKept,
  type Put,
} from '../../../web/kept/kept-packs.ts';
import { keptFile, packFetch } from '../../../web/kept/pack-files.ts';
import { SITE_URL, placesOf } from '../../../web/kept/pack-key.ts';
import { MemoryDirectory, MemoryFile, MemoryLocks, type Room } from './memory-file-system.ts';

// The real storage is used in tests/browser/offline.test.ts; this double goes where a browser can't be made to fail on purpose.
let root: MemoryDirectory;
let room: Room;
let count = 0;
let entry: PackIndexEntry;

beforeEach(() => {
  room = { left: 1e6 };
  root = new MemoryDirectory('', room);
  // A path of its own for each test: the modules remember what they met, as they do for the life of a page.
  entry = {
    id: `own-${++count}`,
    title: 'Hill farm',
    invented: false,
    path: `own-${count}`,
    bytes: 0,
    stations: 1,
    winters: { first: 1990, last: 2020 },
  };
  vi.stubGlobal('FileSystemFileHandle', MemoryFile);
  vi.stubGlobal('navigator', {
    storage: {
      getDirectory: async () => root,
      estimate: async () => ({ usage: 1e6 - room.left, quota: 1e6 }),
    },
    locks: new MemoryLocks(),
  });
});
afterEach(() => vi.unstubAllGlobals());

const address = (path: string): string => `${SITE_URL}packs/${entry.path}/${path}`;
const text = async (path: string): Promise<string | undefined> => (await keptFile(address(path)))?.text();

function files(contents: Record<string, string>) {
  return async (put: Put): Promise<void> => {
    for (const [path, content] of Object.entries(contents)) await put(path, content);
  };
}

describe('keeping a pack', () => {
  it('keeps all its files under their addresses, and lists it with its bytes', async () => {
    expect(await keptFile(address('pack.json'))).toBeNull();
    const kept = await keepWhole(entry, true, async (put) => {
      await put('pack.json', '{}');
      await put('winters/t.arrow', new Uint8Array([1, 2, 3]));
      await put('records.duckdb', new Blob(['12345']));
      await put('grid.bin', new Blob(['67']).stream() as ReadableStream<Uint8Array>);
    });
    expect(kept).toMatchObject({ own: true, bytes: 12, entry: { id: entry.id, bytes: 12 } });
    expect(Math.abs(Date.parse(kept.keptAt) - Date.now())).toBeLessThan(60_000);
    expect(await listKept()).toEqual([kept]);
    expect((await keptFile(address('winters/t.arrow')))?.size).toBe(3);
    expect(await (await packFetch(address('records.duckdb'))).text()).toBe('12345');
    expect(await keptFile(address('absent.json'))).toBeNull();
    expect(await keptFile(`${SITE_URL}packs/another/pack.json`)).toBeNull();
    expect(await keptFile('https://elsewhere.example/packs/own-1/pack.json')).toBeNull();
  });

  it('keeps nothing where writing fails, and passes on why', async () => {
    const broken = keepWhole(entry, true, async (put) => {
      await put('pack.json', '{}');
      throw new Error('the reader broke');
    });
    await expect(broken).rejects.toThrow('the reader broke');
    expect(await listKept()).toEqual([]);
    expect(root.paths()).toEqual([]);
    expect(await keptFile(address('pack.json'))).toBeNull();
  });

  it('keeps nothing when it is stopped', async () => {
    const stop = new AbortController();
    const stopped = keepWhole(
      entry,
      true,
      async (put) => {
        await put('pack.json', '{}');
        stop.abort();
        await put('stations.json', '[]');
      },
      stop.signal,
    );
    await expect(stopped).rejects.toMatchObject({ name: 'AbortError' });
    expect(root.paths()).toEqual([]);
  });

  it('says what it needs and what is left where it can’t fit, before writing', async () => {
    room.left = 5000;
    const write = vi.fn();
    await expect(keepWhole({ ...entry, bytes: 60_000 }, false, write)).rejects.toThrow(
      'This browser has no room for “Hill farm”: it needs 60 kB, and 5 kB are left for this page. Nothing was kept.',
    );
    expect(write).not.toHaveBeenCalled();
  });

  it('says where it stopped when room ends while writing, and leaves nothing', async () => {
    room.left = 5000;
    const write = files({ 'pack.json': '{}'.padEnd(1000), 'records.duckdb': 'x'.repeat(9000) });
    await expect(keepWhole(entry, true, write)).rejects.toThrow(
      /no room for “Hill farm”: after 1 kB it took no more/,
    );
    expect(root.paths()).toEqual([]);
  });

  it('refuses paths that lead elsewhere', async () => {
    for (const path of ['../x', 'a//b', '', '/a', 'a/./b'])
      await expect(keepWhole(entry, true, files({ [path]: 'x' }))).rejects.toThrow('is no path of a file');
    expect(root.paths()).toEqual([]);
  });

  it('replaces a pack whole; who read the older files goes on with them', async () => {
    await keepWhole(entry, false, files({ 'pack.json': 'old', 'only-old.json': 'old' }));
    expect(await text('pack.json')).toBe('old');
    const { keptAt } = await keepWhole(entry, false, files({ 'pack.json': 'new' }));
    expect(await text('only-old.json')).toBe('old');
    expect((await listKept())[0].keptAt).toBe(keptAt);
    expect(root.paths().filter((path) => path.endsWith('pack.json'))).toHaveLength(2);
    await tidyKept();
    expect(root.paths().filter((path) => path.endsWith('pack.json'))).toHaveLength(2);
    // The pages that read them are closed.
    vi.stubGlobal('navigator', { ...navigator, locks: new MemoryLocks() });
    await tidyKept();
    expect(root.paths().filter((path) => path.endsWith('pack.json'))).toHaveLength(1);
  });

  it('kept anew keeps its place in the list', async () => {
    vi.useFakeTimers({ toFake: ['Date'], now: Date.UTC(2026, 0, 1) });
    const second = { ...entry, id: 'second', path: `${entry.path}-second` };
    for (const one of [entry, second, entry]) {
      await keepWhole(one, false, files({ 'pack.json': 'x' }));
      vi.setSystemTime(Date.now() + 1000);
    }
    vi.useRealTimers();
    expect((await listKept()).map(({ entry: { id }, keptAt }) => [id, keptAt.slice(17, 19)])).toEqual([
      [entry.id, '02'],
      ['second', '01'],
    ]);
  });

  it('stays as it was where keeping it anew fails', async () => {
    await keepWhole(entry, false, files({ 'pack.json': 'old' }));
    await expect(
      keepWhole(entry, false, async (put) => {
        await put('pack.json', 'new');
        throw new Error('cut');
      }),
    ).rejects.toThrow('cut');
    expect(await text('pack.json')).toBe('old');
    expect(await listKept()).toHaveLength(1);
  });

  it('stays kept where its older files can’t be gone through', async () => {
    await keepWhole(entry, true, files({ 'pack.json': 'old' }));
    const keys = vi.spyOn(MemoryDirectory.prototype, 'keys').mockImplementation(() => {
      throw new DOMException('changed meanwhile', 'InvalidStateError');
    });
    try {
      await keepWhole(entry, true, files({ 'pack.json': 'new' }));
    } finally {
      keys.mockRestore();
    }
    expect(await text('pack.json')).toBe('new');
  });

  it('may be removed by two pages at the same time', async () => {
    await keepWhole(entry, true, files({ 'pack.json': '{}' }));
    await Promise.all([removeKept(entry.id), removeKept(entry.id)]);
    expect(root.paths()).toEqual([]);
  });

  it('is found again after the storage failed once', async () => {
    await keepWhole(entry, true, files({ 'pack.json': '{}' }));
    const { storage } = navigator;
    const broken = { ...storage, getDirectory: async () => brokenRoot };
    const brokenRoot = {
      getDirectoryHandle: async () => ({
        getDirectoryHandle: () => Promise.reject(new DOMException('busy', 'InvalidStateError')),
      }),
    };
    vi.stubGlobal('navigator', { ...navigator, storage: broken });
    expect(await keptFile(address('pack.json'))).toBeNull();
    vi.stubGlobal('navigator', { ...navigator, storage });
    expect(await text('pack.json')).toBe('{}');
  });

  it('takes more files in where it lies, whole at each moment, and lets a folder of it go', async () => {
    const before = { 'pack.json': 'old', 'a.json': '123', 'unwritten/nights.csv': '12345' };
    await keepWhole(entry, true, files(before));
    const more = [
      { path: 'records.duckdb', content: 'dddd' },
      { path: 'pack.json', content: 'newer' },
    ];
    room.left = 2;
    await expect(addToKept(entry.id, more, 'unwritten')).rejects.toMatchObject({
      name: 'QuotaExceededError',
    });
    expect([await text('pack.json'), await text('unwritten/nights.csv')]).toEqual(['old', '12345']);
    room.left = 1e6;
    await addToKept(entry.id, more, 'unwritten');
    expect([await text('pack.json'), await text('records.duckdb')]).toEqual(['newer', 'dddd']);
    expect(await text('unwritten/nights.csv')).toBeUndefined();
    expect(await listKept()).toMatchObject([{ bytes: 12, entry: { id: entry.id, bytes: 12 } }]);
    await removeKept(entry.id);
    await expect(addToKept(entry.id, more, 'unwritten')).rejects.toThrow(
      'is not kept in this browser any more',
    );
  });

  it('removes a pack and all of it', async () => {
    await keepWhole(entry, true, files({ 'pack.json': '{}', 'winters/t.arrow': 'x' }));
    await removeKept('another');
    expect(await listKept()).toHaveLength(1);
    await removeKept(entry.id);
    expect(await listKept()).toEqual([]);
    expect(root.paths()).toEqual([]);
    expect(await keptFile(address('pack.json'))).toBeNull();
  });

  it('clears what a broken attempt left, but not what another page is writing', async () => {
    await keepWhole(entry, true, files({ 'pack.json': '{}' }));
    const packs = await root.getDirectoryHandle('packs');
    const [key] = [...packs.children.keys()];
    const leftover = await packs.getDirectoryHandle(`${key}-left`, { create: true });
    const file = await (
      await leftover.getDirectoryHandle('files-1', { create: true })
    ).getFileHandle('x', { create: true });
    await (await file.createWritable()).close();
    const during = keepWhole(
      { ...entry, id: 'own-other', path: `${entry.path}-other` },
      true,
      async (put) => {
        await put('pack.json', '{}');
        await tidyKept();
        await put('stations.json', '[]');
      },
    );
    await during;
    expect(root.paths().some((path) => path.includes('-left/'))).toBe(false);
    expect((await listKept()).map(({ entry: { id } }) => id)).toEqual([entry.id, 'own-other']);
  });

  it('takes an entry cut off in the middle for no pack', async () => {
    await keepWhole(entry, true, files({ 'pack.json': '{}' }));
    const packs = await root.getDirectoryHandle('packs');
    const [folder] = [...packs.children.values()] as MemoryDirectory[];
    const writer = (await (await folder.getFileHandle('entry.json')).createWritable()).getWriter();
    await writer.write(new TextEncoder().encode('{"entry":{"id":"own'));
    await writer.close();
    expect(await listKept()).toEqual([]);
    expect(await keptFile(address('pack.json'))).toBeNull();
  });
});

describe('where the browser has no storage', () => {
  it.each([
    ['on http', {}],
    [
      'in a window that refuses',
      { storage: { getDirectory: () => Promise.reject(new DOMException('no', 'SecurityError')) } },
    ],
  ])('%s nothing is kept, and the page goes on', async (_, browser) => {
    vi.stubGlobal('navigator', browser);
    expect(await listKept()).toEqual([]);
    expect(await keptFile(address('pack.json'))).toBeNull();
    await tidyKept();
    await expect(keepWhole(entry, true, files({}))).rejects.toThrow(
      /This browser (keeps nothing|refuses to keep anything) for this page/,
    );
  });
});

describe('the address of a kept file', () => {
  const site = 'https://example.org/garden/';
  it('leads to the pack and the path in it, whatever the pack’s own path', () => {
    expect(placesOf(`${site}packs/demo/winters/n30w042.arrow?x=1`, site)).toEqual([
      { key: encodeURIComponent('/garden/packs/demo'), path: 'winters/n30w042.arrow' },
      { key: encodeURIComponent('/garden/packs/demo/winters'), path: 'n30w042.arrow' },
    ]);
    expect(placesOf(`${site}packs/demo/old%20list.json`, site)[0].path).toBe('old list.json');
    expect(placesOf(`${site}packs/index.json`, site)).toEqual([]);
    expect(placesOf('https://example.org/packs/demo/pack.json', site)).toEqual([]);
  });
});
