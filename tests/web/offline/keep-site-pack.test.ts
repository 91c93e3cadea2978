import { createHash } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { SITE_URL } from '../../../web/kept/pack-key.ts';
import { keptFile } from '../../../web/kept/pack-files.ts';
import { listKept, type KeptPack } from '../../../web/kept/kept-packs.ts';
import { keepSitePack } from '../../../web/offline/keep-site-pack.ts';
import { PackKeeper } from '../../../web/offline/pack-keeper.svelte.ts';
import type { PackState } from '../../../web/state/pack-state.svelte.ts';
import { MemoryDirectory, MemoryFile, MemoryLocks } from '../kept/memory-file-system.ts';
import { PACK } from '../state/sample-pack.ts';

const BASE = `${SITE_URL}packs/`;
const CONTENT: Record<string, string> = {
  'stations.json': '[1]',
  'winters/a.arrow': 'abc',
  'records.duckdb': 'x'.repeat(5000),
};
let served: Record<string, string>;
let root: MemoryDirectory;
let count = 0;
let entry = PACK.entry;

function manifest(): string {
  const files = Object.entries(CONTENT).map(([path, text]) => ({
    path,
    bytes: text.length,
    sha256: createHash('sha256').update(text).digest('hex'),
  }));
  return JSON.stringify({ ...PACK.meta, files });
}

beforeEach(() => {
  root = new MemoryDirectory('', { left: 1e6 });
  entry = { ...PACK.entry, path: `site-${++count}` };
  served = { ...CONTENT, 'pack.json': manifest() };
  vi.stubGlobal('FileSystemFileHandle', MemoryFile);
  vi.stubGlobal('navigator', { storage: { getDirectory: async () => root }, locks: new MemoryLocks() });
  vi.stubGlobal('fetch', async (url: string) => {
    const text = served[url.slice(`${BASE}${entry.path}/`.length)];
    return text === undefined ? new Response('', { status: 404 }) : new Response(text);
  });
});
afterEach(() => vi.unstubAllGlobals());

const keep = (
  onBytes: (loaded: number, total: number) => void = () => {},
  signal = new AbortController().signal,
) => keepSitePack(entry, { base: BASE, onBytes, signal });

describe('keeping a pack of the site', () => {
  it('keeps every file it lists and the list itself, and counts the bytes', async () => {
    const seen: number[] = [];
    const kept = await keep((loaded, total) => {
      expect(total).toBe(5006);
      seen.push(loaded);
    });
    expect(seen[0]).toBe(0);
    expect(seen.at(-1)).toBe(5006);
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
    expect([kept.own, kept.bytes]).toEqual([false, 5006 + manifest().length]);
    for (const [path, text] of Object.entries(served))
      expect(await (await keptFile(`${BASE}${entry.path}/${path}`))!.text()).toBe(text);
  });

  it.each([
    ['cut short', 'winters/a.arrow', 'ab', /winters\/a\.arrow arrived damaged/],
    ['of other content', 'records.duckdb', 'y'.repeat(5000), /records\.duckdb arrived damaged/],
    ['missing', 'stations.json', undefined, /stations\.json could not be loaded: the server answered 404/],
    ['a page in place of the manifest', 'pack.json', '<html>', /pack\.json arrived damaged/],
  ])('keeps nothing where a file is %s', async (_, path, text, message) => {
    if (text === undefined) delete served[path];
    else served[path] = text;
    await expect(keep()).rejects.toThrow(message);
    expect(await listKept()).toEqual([]);
    expect(root.paths()).toEqual([]);
  });

  it('keeps nothing where a file too large for a checksum is shorter than listed', async () => {
    const { files, ...rest } = JSON.parse(served['pack.json']) as {
      files: { path: string; bytes: number }[];
    };
    const listed = files.map((file) =>
      file.path === 'records.duckdb' ? { ...file, bytes: 65_000_000 } : file,
    );
    served['pack.json'] = JSON.stringify({ ...rest, files: listed });
    await expect(keep()).rejects.toThrow(/records\.duckdb arrived damaged/);
    expect(root.paths()).toEqual([]);
  });

  it('tells which pack was kept anew, whose older files the page still shows', async () => {
    const packs = {
      kept: [] as readonly KeptPack[],
      lookForKept: async () => void (packs.kept = await listKept()),
    };
    const keeper = new PackKeeper(packs as unknown as PackState, BASE);
    expect([await keeper.keep(entry), keeper.renewed]).toEqual([true, []]);
    expect([await keeper.keep(entry), keeper.renewed]).toEqual([true, [entry.id]]);
    served['winters/a.arrow'] = 'ab';
    expect([await keeper.keep(entry), keeper.renewed]).toEqual([false, [entry.id]]);
    expect(keeper.failure?.message).toMatch(/arrived damaged/);
  });

  it('keeps nothing when it is stopped half-way', async () => {
    const stop = new AbortController();
    const stopped = keep((loaded) => {
      if (loaded >= 3) stop.abort();
    }, stop.signal);
    await expect(stopped).rejects.toMatchObject({ name: 'AbortError' });
    expect(root.paths()).toEqual([]);
  });
});
