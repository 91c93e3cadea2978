import { cachePrefix, pageLock, type WorkerQuestion } from './site-files.ts';

/** Address of the worker's file, beside the page. */
export function workerAddress(): string {
  return new URL('sw.js', document.baseURI).href;
}

/** For as long as this page is open, says of which version it is. */
export function holdPageVersion(): void {
  const entry = document.querySelector<HTMLScriptElement>('script[type="module"][src]')?.src;
  if (entry) void navigator.locks?.request(pageLock(entry), { mode: 'shared' }, () => new Promise(() => {}));
}

/** Names of all caches of this site, of whatever version. */
export async function ownCaches(): Promise<string[]> {
  const prefix = cachePrefix(new URL('.', document.baseURI).href);
  return (await caches.keys()).filter((name) => name.startsWith(prefix));
}

/** The worker registered for this site, by whatever visit; not that of a site around it. */
export async function ownRegistration(): Promise<ServiceWorkerRegistration | null> {
  const scope = new URL('.', document.baseURI).href;
  const found = await navigator.serviceWorker.getRegistration(scope);
  return found?.scope === scope ? found : null;
}

/** The worker, once it has the page's files. @throws Error where its files could not be had */
export function workerInCharge(registration: ServiceWorkerRegistration): Promise<ServiceWorker> {
  return new Promise((resolve, reject) => {
    if (registration.active) return resolve(registration.active);
    const worker = registration.installing ?? registration.waiting;
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'activated') resolve(worker);
      if (worker.state === 'redundant') reject(new Error('The page’s files could not be kept.'));
    });
  });
}

/** Asks the worker something it answers. */
export function ask<T>(worker: ServiceWorker, question: WorkerQuestion): Promise<T> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }: MessageEvent<T>) => {
      port1.close();
      resolve(data);
    };
    worker.postMessage(question, [port2]);
  });
}
