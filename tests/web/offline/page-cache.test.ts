import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { pageLock, type SiteFile } from '../../../web/offline/site-files.ts';
import { PageCache } from '../../../web/offline/worker/page-cache.ts';
import { MemoryCaches } from './memory-caches.ts';

const SCOPE = 'https://example.org/garden/';
const file = (path: string, revision: string | null = null, later = false): SiteFile => ({
  path,
  revision,
  bytes: 100,
  sent: 40,
  later,
});
const FIRST = [
  file('', 'aaaa'),
  file('theme.js', 'bbbb'),
  file('assets/main-11111111.js'),
  file('assets/View-11111111.js'),
  file('assets/engine-11111111.wasm', null, true),
];
const SECOND = [
  file('', 'cccc'),
  file('theme.js', 'bbbb'),
  file('assets/main-22222222.js'),
  file('assets/View-22222222.js'),
  file('assets/engine-11111111.wasm', null, true),
];

let caches: MemoryCaches;
let asked: { url: string; cache: string | undefined }[];
let server: (url: string) => Response;

beforeEach(() => {
  caches = new MemoryCaches();
  asked = [];
  server = (url) => new Response(`content of ${url}`);
  vi.stubGlobal('fetch', async (input: string | Request, init?: RequestInit) => {
    const url = typeof input === 'string' ? input : input.url;
    asked.push({ url, cache: init?.cache });
    return server(url);
  });
});
afterEach(() => vi.unstubAllGlobals());

const version = (name: string, files: readonly SiteFile[]): PageCache =>
  new PageCache({ version: name, files }, SCOPE, caches as unknown as CacheStorage);
const at = (path: string): string => new URL(path, SCOPE).href;
const locksOf = (...entries: string[]): LockManager =>
  ({
    query: async () => ({ held: entries.map((entry) => ({ name: pageLock(entry) })) }),
  }) as unknown as LockManager;

describe('the files of the page in its worker', () => {
  it('fetches all but what is for later, and asks the server about names without a hash', async () => {
    await version('1', FIRST).fill();
    expect(asked.map(({ url }) => url).sort()).toEqual(
      ['.', 'theme.js', 'assets/main-11111111.js', 'assets/View-11111111.js'].map(at).sort(),
    );
    expect(
      asked
        .filter(({ cache }) => cache === 'no-cache')
        .map(({ url }) => url)
        .sort(),
    ).toEqual([at('.'), at('theme.js')].sort());
  });

  it('is not to be used where a file is missing', async () => {
    server = (url) => new Response('', { status: url.includes('View') ? 404 : 200 });
    await expect(version('1', FIRST).fill()).rejects.toThrow(/View-11111111\.js: the server answered 404/);
  });

  it('answers for the page with whatever choices, and for its parts, without asking the server', async () => {
    const cache = version('1', FIRST);
    await cache.fill();
    asked.length = 0;
    for (const url of [at('.'), at('?type=meyer_lemon#life'), at('index.html'), at('theme.js')]) {
      expect(cache.answers(new Request(url))).toBe(true);
      expect((await cache.answer(new Request(url))).status).toBe(200);
    }
    expect(await (await cache.answer(new Request(at('?x=1')))).text()).toBe(`content of ${at('.')}`);
    expect(asked).toEqual([]);
  });

  it.each([
    ['packs', new Request(at('packs/demo/records.duckdb'))],
    ['the list of packs', new Request(at('packs/index.json'))],
    ['settings of the server', new Request(at('site.json'))],
    ['ranges', new Request(at('theme.js'), { headers: { Range: 'bytes=0-9' } })],
    ['what is sent', new Request(at('theme.js'), { method: 'POST', body: 'x' })],
    ['another site on the same host', new Request('https://example.org/assets/main-11111111.js')],
    ['another host', new Request('https://elsewhere.example/garden/theme.js')],
  ])('leaves alone: %s', (_, request) => {
    expect(version('1', FIRST).answers(request)).toBe(false);
  });

  it('asks the server for a part it hasn’t: the engine before it was fetched', async () => {
    const cache = version('1', FIRST);
    await cache.fill();
    asked.length = 0;
    const engine = new Request(at('assets/engine-11111111.wasm'));
    expect(cache.answers(engine)).toBe(true);
    expect(await (await cache.answer(engine)).text()).toContain('engine');
    expect(asked).toHaveLength(1);
    expect(cache.later).toEqual({
      cache: 'citrus-winters /garden/ 1',
      bytes: 500,
      files: [{ url: engine.url, bytes: 100, sent: 40 }],
    });
  });
});

describe('a newer version of the page', () => {
  beforeEach(async () => {
    await version('1', FIRST).fill();
    const old = await caches.open('citrus-winters /garden/ 1');
    await old.put(at('assets/engine-11111111.wasm'), new Response('the engine'));
    asked.length = 0;
  });

  it('takes over what didn’t change, and fetches the rest', async () => {
    await version('2', SECOND).fill();
    expect(asked.map(({ url }) => url).sort()).toEqual(
      ['.', 'theme.js', 'assets/main-22222222.js', 'assets/View-22222222.js'].map(at).sort(),
    );
    const cache = await caches.open('citrus-winters /garden/ 2');
    expect(await (await cache.match(at('assets/engine-11111111.wasm')))!.text()).toBe('the engine');
  });

  it('still has the parts of the one before while a page of that is open, and no longer', async () => {
    const cache = version('2', SECOND);
    await cache.fill();
    await (
      await caches.open('citrus-winters /other/ 1')
    ).put('https://example.org/other/', new Response('x'));
    await cache.tidy(locksOf(at('assets/main-11111111.js'), at('assets/main-22222222.js')));
    expect(await caches.keys()).toHaveLength(3);
    asked.length = 0;
    const oldPart = new Request(at('assets/View-11111111.js'));
    expect(cache.answers(oldPart)).toBe(true);
    expect(await (await cache.answer(oldPart)).text()).toBe(`content of ${oldPart.url}`);
    expect(asked).toEqual([]);

    await cache.tidy(locksOf(at('assets/main-22222222.js')));
    expect(await caches.keys()).toEqual(['citrus-winters /garden/ 2', 'citrus-winters /other/ 1']);
    server = () => new Response('', { status: 404 });
    expect((await cache.answer(oldPart)).status).toBe(404);
  });

  it('removes nothing where the browser doesn’t tell which pages are open', async () => {
    await version('2', SECOND).tidy(undefined);
    expect(await caches.keys()).toContain('citrus-winters /garden/ 1');
  });

  it('takes other headers of the same page, never the page of another version', async () => {
    const cache = version('1', FIRST);
    const kept = async (): Promise<string | null> =>
      (await cache.answer(new Request(at('.')))).headers.get('Content-Security-Policy');
    server = (url) => new Response(`content of ${url}`, { headers: { 'Content-Security-Policy': 'new' } });
    await cache.refreshHeaders();
    expect(await kept()).toBe('new');
    server = () => new Response('the next page', { headers: { 'Content-Security-Policy': 'newer' } });
    await cache.refreshHeaders();
    expect(await kept()).toBe('new');
  });
});
