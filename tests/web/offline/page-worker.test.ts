import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { LaterFiles, SiteFile } from '../../../web/offline/site-files.ts';
import { MemoryCaches } from './memory-caches.ts';

const SCOPE = 'https://example.org/garden/';
const file = (path: string, later: boolean): SiteFile => ({
  path,
  revision: null,
  bytes: 10,
  sent: 5,
  later,
});

interface Heard {
  readonly data: unknown;
  readonly ports: readonly { postMessage(answer: LaterFiles | null): void }[];
  waitUntil(work: Promise<unknown>): void;
}

let caches: MemoryCaches;
let listeners: Map<string, (event: Heard) => void>;
let status: number;

beforeEach(async () => {
  caches = new MemoryCaches();
  listeners = new Map();
  status = 200;
  vi.stubGlobal('SITE', {
    version: '1',
    files: [file('assets/main-11111111.js', false), file('assets/engine-11111111.wasm', true)],
  });
  vi.stubGlobal('caches', caches);
  vi.stubGlobal('fetch', async () => new Response('content', { status }));
  vi.stubGlobal('self', {
    registration: { scope: SCOPE, installing: null, waiting: null },
    addEventListener: (kind: string, listener: (event: Heard) => void) => listeners.set(kind, listener),
  });
  vi.resetModules();
  await import('../../../web/offline/worker/page-worker.ts');
});
afterEach(() => vi.unstubAllGlobals());

async function askLater(): Promise<LaterFiles | null> {
  let work: Promise<unknown> = Promise.resolve();
  const answers: (LaterFiles | null)[] = [];
  listeners.get('message')!({
    data: { kind: 'later' },
    ports: [{ postMessage: (answer) => void answers.push(answer) }],
    waitUntil: (promised) => (work = promised),
  });
  await work;
  expect(answers).toHaveLength(1);
  return answers[0];
}

it('has the page’s files again before it tells of those for later, where its cache was removed', async () => {
  expect(caches.caches.size).toBe(0);
  const later = await askLater();
  expect(later?.files.map(({ url }) => url)).toEqual([`${SCOPE}assets/engine-11111111.wasm`]);
  const cache = await caches.open(later!.cache);
  expect(await cache.match(`${SCOPE}assets/main-11111111.js`)).toBeDefined();
});

it('says so where the page’s files can’t be had', async () => {
  status = 503;
  expect(await askLater()).toBeNull();
});
