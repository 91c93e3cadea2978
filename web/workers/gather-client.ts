import { InputError } from '../../analysis/records/input-error.ts';
import type { GatherProgress } from '../gather/brought.ts';
import { told } from '../language/worker-language.ts';
import type { GatherReply, GatherRequest, GatherTaskKind, GatherTasks } from './gather-messages.ts';

/** The part of a `Worker` the client needs. */
export interface GatherWorker {
  postMessage(message: GatherRequest): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<GatherReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: unknown) => void;
  readonly onProgress: (progress: GatherProgress) => void;
}

function startWorker(): GatherWorker {
  return told(new Worker(new URL('./gather.worker.ts', import.meta.url), { type: 'module', name: 'gather' }));
}

/** The page's side of the worker that reads station files and makes packs of them. It keeps what it read until it is closed. */
export class GatherClient {
  #worker: GatherWorker | null = null;
  #nextId = 1;
  readonly #waiting = new Map<number, Waiting>();

  constructor(private readonly start: () => GatherWorker = startWorker) {}

  /**
   * Asks the worker one thing.
   * @throws InputError with a sentence for the reader; the signal's reason when it was stopped
   */
  ask<K extends GatherTaskKind>(
    kind: K,
    question: GatherTasks[K]['question'],
    {
      onProgress = () => {},
      signal,
    }: { onProgress?: (progress: GatherProgress) => void; signal?: AbortSignal } = {},
  ): Promise<GatherTasks[K]['answer']> {
    const id = this.#nextId++;
    return new Promise((resolve, reject) => {
      if (signal?.aborted) return reject(signal.reason);
      this.#waiting.set(id, { resolve, reject, onProgress });
      signal?.addEventListener('abort', () => this.#drop(id, signal.reason), { once: true });
      this.#running().postMessage({ id, kind, question } as GatherRequest);
    });
  }

  /** Ends the worker; what it read is gone. */
  close(): void {
    this.#fail(new DOMException('The worker was closed.', 'AbortError'));
  }

  #drop(id: number, reason: unknown): void {
    const dropped = this.#waiting.get(id);
    if (!dropped) return;
    this.#waiting.delete(id);
    this.#worker?.postMessage({ kind: 'drop', id });
    dropped.reject(reason);
  }

  #running(): GatherWorker {
    if (!this.#worker) {
      this.#worker = this.start();
      this.#worker.onmessage = ({ data }) => this.#receive(data);
      this.#worker.onerror = () =>
        this.#fail(new Error('The part of the page that reads files stopped working.'));
    }
    return this.#worker;
  }

  #receive(reply: GatherReply): void {
    const waiting = this.#waiting.get(reply.id);
    if (!waiting) return;
    if ('progress' in reply) return waiting.onProgress(reply.progress);
    this.#waiting.delete(reply.id);
    if ('answer' in reply) waiting.resolve(reply.answer as never);
    else waiting.reject(reply.plain ? new InputError(reply.failure) : new Error(reply.failure));
  }

  #fail(error: Error): void {
    this.#worker?.terminate();
    this.#worker = null;
    const open = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { reject } of open) reject(error);
  }
}
