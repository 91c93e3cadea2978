import type { SiteVersion, WorkerQuestion } from '../site-files.ts';
import { PageCache } from './page-cache.ts';
import type { WorkerScope } from './worker-scope.ts';

/** Put in by the build. */
declare const SITE: SiteVersion;

const scope = self as unknown as WorkerScope;
const cache = new PageCache(SITE, scope.registration.scope, caches);

/** A newer worker fills its cache while this one is still in charge; its cache is not to be taken for an old one. */
async function tidy(): Promise<void> {
  if (!scope.registration.installing && !scope.registration.waiting) await cache.tidy(navigator.locks);
}

/** The page's files first: a worker whose cache was removed may be in charge again without being installed anew. */
async function tellLater(port: MessagePort): Promise<void> {
  const filled = await cache.fill().then(
    () => true,
    () => false,
  );
  port.postMessage(filled ? cache.later : null);
}

scope.addEventListener('install', (event) => event.waitUntil(cache.fill()));
scope.addEventListener('activate', (event) =>
  event.waitUntil(Promise.all([scope.clients.claim(), cache.tidy(navigator.locks)])),
);
scope.addEventListener('fetch', (event) => {
  if (cache.answers(event.request)) event.respondWith(cache.answer(event.request));
});
scope.addEventListener('message', (event) => {
  const { kind } = event.data as WorkerQuestion;
  if (kind === 'later') event.waitUntil(tellLater(event.ports[0]));
  if (kind === 'use') event.waitUntil(scope.skipWaiting());
  if (kind === 'tidy') event.waitUntil(Promise.all([tidy(), cache.refreshHeaders().catch(() => {})]));
});
