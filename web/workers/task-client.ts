import { InputError } from '../../analysis/records/input-error.ts';
import type { Drop, ReplyOf, RequestOf, TaskList, TaskWorker } from './task-messages.ts';

/** A worker that takes tasks and hears when nobody waits for one any more. */
export type StoppableWorker<Tasks extends TaskList<Tasks>, Progress> = TaskWorker<
  RequestOf<Tasks> | Drop,
  ReplyOf<Tasks, Progress>
>;

/** How one question is followed. */
export interface TaskOptions<Progress> {
  readonly onProgress?: (progress: Progress) => void;
  readonly signal?: AbortSignal;
}

interface Waiting<Progress> {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: unknown) => void;
  readonly onProgress: (progress: Progress) => void;
}

/**
 * The page's side of a worker whose questions can be stopped. Starts it at the first question; a worker that breaks fails
 * what is waiting and is started anew next time.
 */
export class TaskClient<Tasks extends TaskList<Tasks>, Progress> {
  #worker: StoppableWorker<Tasks, Progress> | null = null;
  #nextId = 1;
  readonly #waiting = new Map<number, Waiting<Progress>>();

  constructor(
    private readonly start: () => StoppableWorker<Tasks, Progress>,
    /** What is said when the worker breaks. */
    private readonly broken: string,
  ) {}

  /**
   * Asks the worker one thing.
   * @throws InputError with a sentence for the reader where the failure is plain; the signal's reason when it was stopped
   */
  ask<K extends keyof Tasks>(
    kind: K,
    question: Tasks[K]['question'],
    { onProgress = () => {}, signal }: TaskOptions<Progress> = {},
  ): Promise<Tasks[K]['answer']> {
    const id = this.#nextId++;
    return new Promise((resolve, reject) => {
      if (signal?.aborted) return reject(signal.reason);
      this.#waiting.set(id, { resolve, reject, onProgress });
      signal?.addEventListener('abort', () => this.#drop(id, signal.reason), { once: true });
      this.#running().postMessage({ id, kind, question } as RequestOf<Tasks>);
    });
  }

  /** Ends the worker and whatever it kept; who still waits is told why. */
  close(reason: Error): void {
    this.#worker?.terminate();
    this.#worker = null;
    const open = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { reject } of open) reject(reason);
  }

  #drop(id: number, reason: unknown): void {
    const dropped = this.#waiting.get(id);
    if (!dropped) return;
    this.#waiting.delete(id);
    this.#worker?.postMessage({ kind: 'drop', id });
    dropped.reject(reason);
  }

  #running(): StoppableWorker<Tasks, Progress> {
    if (!this.#worker) {
      this.#worker = this.start();
      this.#worker.onmessage = ({ data }) => this.#receive(data);
      this.#worker.onerror = () => this.close(new Error(this.broken));
    }
    return this.#worker;
  }

  #receive(reply: ReplyOf<Tasks, Progress>): void {
    const waiting = this.#waiting.get(reply.id);
    if (!waiting) return;
    if ('progress' in reply) return waiting.onProgress(reply.progress);
    this.#waiting.delete(reply.id);
    if ('answer' in reply) waiting.resolve(reply.answer as never);
    else waiting.reject(reply.plain ? new InputError(reply.failure) : new Error(reply.failure));
  }
}
