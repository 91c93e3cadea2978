import { t } from '../../analysis/language/t.ts';
import type { BestSpot } from '../../analysis/spot/best-spots.ts';
import type { OffsetField } from '../../analysis/spot/offset-field.ts';
import { Superseded } from './messages.ts';
import type {
  BestQuestion,
  FieldQuestion,
  YardReply,
  YardRequest,
  YardTaskKind,
  YardTasks,
} from './yard-messages.ts';
import type { TaskWorker } from './task-messages.ts';
import { told } from '../language/worker-language.ts';

/** The worker behind the client. */
export type YardWorker = TaskWorker<YardRequest, YardReply>;

interface Waiting {
  readonly request: YardRequest;
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
}

function startWorker(): YardWorker {
  return told(new Worker(new URL('./yard.worker.ts', import.meta.url), { type: 'module', name: 'yard' }));
}

/**
 * The page's side of the worker that works out a yard's offsets, apart from the worker of the answer. One question is
 * with the worker at a time and, while something is dragged, the newest one waits for it: those between are rejected
 * with {@link Superseded}. A field goes before best spots.
 */
export class YardClient {
  #worker: YardWorker | null = null;
  #nextId = 1;
  #asked: Waiting | null = null;
  readonly #waiting = new Map<YardTaskKind, Waiting>();

  constructor(private readonly start: () => YardWorker = startWorker) {}

  /** Starts the worker before there is a question, so that it is warm by then. */
  prepare(): void {
    this.#running();
  }

  field(question: FieldQuestion): Promise<OffsetField> {
    return this.#ask('field', question);
  }

  best(question: BestQuestion): Promise<readonly BestSpot[]> {
    return this.#ask('best', question);
  }

  close(): void {
    this.#fail(new Superseded());
  }

  #ask<K extends YardTaskKind>(kind: K, question: YardTasks[K]['question']): Promise<YardTasks[K]['answer']> {
    this.#waiting.get(kind)?.reject(new Superseded());
    return new Promise((resolve, reject) => {
      const request = { id: this.#nextId++, kind, question } as YardRequest;
      this.#waiting.set(kind, { request, resolve, reject });
      this.#next();
    });
  }

  #next(): void {
    if (this.#asked) return;
    const next = this.#waiting.get('field') ?? this.#waiting.get('best');
    if (!next) return;
    this.#waiting.delete(next.request.kind);
    this.#asked = next;
    this.#running().postMessage(next.request);
  }

  #running(): YardWorker {
    if (!this.#worker) {
      this.#worker = this.start();
      this.#worker.onmessage = ({ data }) => this.#receive(data);
      this.#worker.onerror = () =>
        this.#fail(new Error(t`The part of the page that works out the yard stopped working.`));
    }
    return this.#worker;
  }

  #receive(reply: YardReply): void {
    const asked = this.#asked;
    if (!asked || asked.request.id !== reply.id) return;
    this.#asked = null;
    if ('failure' in reply) asked.reject(new Error(reply.failure));
    else asked.resolve(reply.answer as never);
    this.#next();
  }

  #fail(error: Error): void {
    this.#worker?.terminate();
    this.#worker = null;
    const open = [...(this.#asked ? [this.#asked] : []), ...this.#waiting.values()];
    this.#asked = null;
    this.#waiting.clear();
    for (const { reject } of open) reject(error);
  }
}
