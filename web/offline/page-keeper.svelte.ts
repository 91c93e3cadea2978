import { t } from '../../analysis/language/t.ts';
import { ask, ownCaches, ownRegistration, workerAddress, workerInCharge } from './page-worker-port.ts';
import type { LaterFiles, WorkerQuestion } from './site-files.ts';

/**
 * How far the page has come with working without network. `none`: this browser or address has no such thing; `off`: not done
 * unless asked, to save data or because the reader removed it.
 */
export type PageKept = 'none' | 'off' | 'working' | 'ready' | 'failed';

/** How long an update is left to itself before the server is asked again, ms. */
const ASK_AGAIN_MS = 3_600_000;

/** Keeps the page itself on this device: its files by a service worker, the database engine by what is fetched here. */
export class PageKeeper {
  #status = $state<PageKept>('none');
  #loaded = $state(0);
  #total = $state(0);
  #bytes = $state(0);
  #waiting = $state.raw<ServiceWorker | null>(null);
  #registration: ServiceWorkerRegistration | null = null;
  /** True once this page, and no other, has asked for the newer version. */
  #using = false;

  get status(): PageKept {
    return this.#status;
  }
  /** Bytes that travel, so far and in all, while `working`. */
  get progress(): { readonly loaded: number; readonly total: number } {
    return { loaded: Math.round(this.#loaded), total: this.#total };
  }
  /** What the page's files take on this device, bytes; 0 while it isn't known. */
  get bytes(): number {
    return this.#bytes;
  }
  /** True where a newer version of the page waits. */
  get newerWaits(): boolean {
    return this.#waiting !== null;
  }

  /** True where the browser lets a page work without network at this address. */
  static get possible(): boolean {
    return import.meta.env.PROD && 'serviceWorker' in navigator && 'caches' in globalThis;
  }

  /** To be told instead of {@link begin} where nothing is fetched unless asked; what an earlier visit kept still counts. */
  async leaveOff(): Promise<void> {
    if (!PageKeeper.possible) return;
    this.#status = 'off';
    const registration = await ownRegistration().catch(() => null);
    // A worker whose caches were removed would fetch the page again to answer.
    if (!registration?.active || (await ownCaches()).length === 0) return;
    this.#watch(registration);
    const later = await ask<LaterFiles | null>(registration.active, { kind: 'later' });
    if (later && (await missingOf(later)).length === 0) this.#isThere(later);
  }

  /** Registers the worker, waits until it has the page's files, and fetches the rest. */
  async begin(): Promise<void> {
    if (!PageKeeper.possible) return;
    this.#status = 'working';
    try {
      const registration = await navigator.serviceWorker.register(workerAddress(), {
        updateViaCache: 'none',
      });
      // Where the browser was told to refuse it, it may say nothing at all.
      if (!registration) return void (this.#status = 'none');
      this.#watch(registration);
      const worker = await workerInCharge(registration);
      const later = await ask<LaterFiles | null>(worker, { kind: 'later' });
      if (!later) return void (this.#status = 'failed');
      await this.#fetchLater(later);
      worker.postMessage({ kind: 'tidy' } satisfies WorkerQuestion);
      this.#isThere(later);
    } catch {
      this.#status = 'failed';
    }
  }

  #isThere({ bytes }: LaterFiles): void {
    this.#bytes = bytes;
    this.#status = 'ready';
  }

  /** Lets the newer version take over, and opens this page anew with it; the address holds all choices. */
  use(): void {
    this.#using = true;
    this.#waiting?.postMessage({ kind: 'use' } satisfies WorkerQuestion);
  }

  /** Takes the page's files off this device. Open pages go on with the network. */
  async remove(): Promise<void> {
    if (!PageKeeper.possible) return;
    // One of an earlier visit counts as well, where this visit has asked for none.
    await (this.#registration ?? (await ownRegistration()))?.unregister();
    for (const name of await ownCaches()) await caches.delete(name);
    this.#bytes = 0;
    this.#status = 'off';
    this.#waiting = null;
  }

  #watch(registration: ServiceWorkerRegistration): void {
    if (registration === this.#registration) return;
    this.#registration = registration;
    const look = (): void => {
      // Without a worker in charge the first one is no update.
      this.#waiting = registration.active ? registration.waiting : null;
    };
    look();
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', look);
    });
    navigator.serviceWorker.addEventListener('controllerchange', () => {
      // Another page may have asked for the newer version: this one stays as it is until its reader wants otherwise.
      if (this.#using) location.reload();
      else look();
    });
    let asked = Date.now();
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState !== 'visible' || Date.now() - asked < ASK_AGAIN_MS) return;
      asked = Date.now();
      void registration.update().catch(() => {});
    });
  }

  async #fetchLater(later: LaterFiles): Promise<void> {
    const cache = await caches.open(later.cache);
    const missing = await missingOf(later);
    this.#total = missing.reduce((sum, { sent }) => sum + sent, 0);
    this.#loaded = 0;
    for (const file of missing) {
      const before = this.#loaded;
      const response = await fetch(file.url);
      if (!response.ok) throw new TypeError(t`The server answered ${response.status}.`);
      const counted = response.body!.pipeThrough(
        new TransformStream<Uint8Array, Uint8Array>({
          transform: (chunk, controller) => {
            // The stream counts what is unpacked; the reader pays for what travels.
            this.#loaded += (chunk.length * file.sent) / file.bytes;
            controller.enqueue(chunk);
          },
        }),
      );
      await cache.put(file.url, new Response(counted, { headers: response.headers }));
      this.#loaded = before + file.sent;
    }
  }
}

/** Which of the files for later are not there yet. */
async function missingOf({ cache: name, files }: LaterFiles): Promise<LaterFiles['files']> {
  const cache = await caches.open(name);
  const missing: LaterFiles['files'][number][] = [];
  for (const file of files) if (!(await cache.match(file.url))) missing.push(file);
  return missing;
}
