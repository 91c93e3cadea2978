import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { PageKeeper } from '../../../web/offline/page-keeper.svelte.ts';
import { cachePrefix, type LaterFiles } from '../../../web/offline/site-files.ts';
import { MemoryCaches } from './memory-caches.ts';

const SCOPE = 'https://example.org/garden/';
const ENGINE = `${SCOPE}assets/engine-11111111.wasm`;
const LATER: LaterFiles = {
  cache: `${cachePrefix(SCOPE)}1`,
  bytes: 35,
  files: [{ url: ENGINE, bytes: 30, sent: 8 }],
};

let caches: MemoryCaches;
let asked: number;
let fetched: number;

/** A browser where an earlier visit registered the worker, unless told otherwise; `waiting` is a newer one, `first` that of this visit. */
function visit(registered = true, waiting: object | null = null, first = false): PageKeeper {
  const active = {
    postMessage(_: unknown, [port]: MessagePort[]) {
      asked += 1;
      port.postMessage(LATER);
    },
  };
  const registration = {
    ...{ scope: SCOPE, active: first ? null : active, installing: null, waiting },
    addEventListener: () => {},
  };
  vi.stubGlobal('navigator', {
    serviceWorker: {
      getRegistration: async () => (registered ? registration : undefined),
      register: async () => registration,
      addEventListener: () => {},
    },
  });
  return new PageKeeper();
}

beforeEach(() => {
  caches = new MemoryCaches();
  [asked, fetched] = [0, 0];
  vi.stubEnv('PROD', true);
  vi.stubGlobal('caches', caches);
  vi.stubGlobal('document', { baseURI: `${SCOPE}?lang=en`, addEventListener: () => {} });
  vi.stubGlobal('fetch', async () => ((fetched += 1), new Response('content')));
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.unstubAllEnvs();
});

it('tells of a page that an earlier visit kept, though nothing is to be fetched unasked', async () => {
  const cache = await caches.open(LATER.cache);
  await cache.put(ENGINE, new Response('engine'));
  const keeper = visit();
  await keeper.leaveOff();
  expect([keeper.status, keeper.bytes, fetched]).toEqual(['ready', LATER.bytes, 0]);
});

it('fetches nothing where the engine is missing, the caches are gone, or no visit has kept the page', async () => {
  const [first, bare] = [visit(false), visit()];
  await first.leaveOff();
  await bare.leaveOff();
  expect([first.status, bare.status, asked]).toEqual(['off', 'off', 0]);
  await caches.open(LATER.cache);
  const partly = visit();
  await partly.leaveOff();
  expect([partly.status, asked, fetched]).toEqual(['off', 1, 0]);
});

it('tells of a newer version where one waits, not of the first that is on its way', async () => {
  const waiting = { state: 'installed', addEventListener: () => {} };
  await (await caches.open(LATER.cache)).put(ENGINE, new Response('engine'));
  const updated = visit(true, waiting);
  await updated.leaveOff();
  expect(updated.newerWaits).toBe(true);
  const first = visit(true, waiting, true);
  // It waits for its worker, which never comes here.
  void first.begin();
  await new Promise((settled) => setTimeout(settled));
  expect([first.status, first.newerWaits]).toEqual(['working', false]);
});
