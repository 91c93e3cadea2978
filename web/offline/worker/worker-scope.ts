/** The parts of a service worker's world that ours uses; the library of types for it can't stand beside that of the page. */
export interface WorkerScope {
  readonly registration: {
    readonly scope: string;
    readonly installing: unknown;
    readonly waiting: unknown;
  };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener<K extends keyof WorkerEvents>(kind: K, listener: (event: WorkerEvents[K]) => void): void;
}

interface Lasting {
  waitUntil(work: Promise<unknown>): void;
}

interface WorkerEvents {
  readonly install: Lasting;
  readonly activate: Lasting;
  readonly fetch: Lasting & { readonly request: Request; respondWith(answer: Promise<Response>): void };
  readonly message: Lasting & { readonly data: unknown; readonly ports: readonly MessagePort[] };
}
