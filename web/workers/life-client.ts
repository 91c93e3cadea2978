import type { Chosen } from '../../analysis/answer/choosing.ts';
import type { LifeAnswer } from '../../analysis/answer/life.ts';
import type { YearAnswer } from '../../analysis/answer/year.ts';
import { t } from '../../analysis/language/t.ts';
import type { AskedOfCustomer } from '../../analysis/answer/advice-here.ts';
import type { CounterAnswer, CounterAsk, CounterNights, CounterPort } from '../state/counter-port.ts';
import type { ChooseQuestion, LifePort, LifeQuestion, OnProgress } from '../state/ports.ts';
import type { LifeReply, LifeRequest, LifeTaskKind, LifeTasks } from './life-messages.ts';
import { Superseded } from './messages.ts';
import { told } from '../language/worker-language.ts';

/** The part of a `Worker` the client needs. */
export interface LifeWorker {
  postMessage(message: LifeRequest): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<LifeReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

interface Waiting {
  readonly kind: LifeTaskKind;
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
  readonly onProgress: OnProgress;
}

function startWorker(): LifeWorker {
  return told(new Worker(new URL('./life.worker.ts', import.meta.url), { type: 'module', name: 'life' }));
}

/**
 * The page's side of the worker that goes through nights, apart from the worker of the ranking, which must not wait for it.
 * A newer question of a kind rejects the older one with {@link Superseded}, and the worker drops it at its next step.
 */
export class LifeClient implements LifePort, CounterPort {
  #worker: LifeWorker | null = null;
  #nextId = 1;
  readonly #waiting = new Map<number, Waiting>();

  constructor(private readonly start: () => LifeWorker = startWorker) {}

  life(question: LifeQuestion): Promise<LifeAnswer> {
    return this.#ask('life', question);
  }

  lifeRanges(question: LifeQuestion, onProgress: OnProgress): Promise<LifeAnswer> {
    return this.#ask('lifeRanges', question, onProgress);
  }

  year(question: LifeQuestion): Promise<YearAnswer> {
    return this.#ask('year', question);
  }

  choose(question: ChooseQuestion, onProgress: OnProgress): Promise<Chosen> {
    return this.#ask('choose', question, onProgress);
  }

  advice(question: CounterAsk): Promise<CounterAnswer> {
    return this.#ask('advice', question);
  }

  adviceQuestions(question: CounterAsk): Promise<readonly AskedOfCustomer[]> {
    return this.#ask('adviceQuestions', question);
  }

  adviceNights(question: LifeQuestion): Promise<CounterNights> {
    return this.#ask('adviceNights', question);
  }

  cancel(kind: LifeTaskKind): void {
    for (const [id, older] of this.#waiting) {
      if (older.kind !== kind) continue;
      this.#waiting.delete(id);
      this.#worker?.postMessage({ kind: 'drop', id });
      older.reject(new Superseded());
    }
  }

  close(): void {
    this.#fail(new Superseded());
  }

  #ask<K extends LifeTaskKind>(
    kind: K,
    question: LifeTasks[K]['question'],
    onProgress: OnProgress = () => {},
  ): Promise<LifeTasks[K]['answer']> {
    this.cancel(kind);
    const id = this.#nextId++;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { kind, resolve, reject, onProgress });
      this.#running().postMessage({ id, kind, question } as LifeRequest);
    });
  }

  #running(): LifeWorker {
    if (!this.#worker) {
      this.#worker = this.start();
      this.#worker.onmessage = ({ data }) => this.#receive(data);
      this.#worker.onerror = () =>
        this.#fail(new Error(t`The part of the page that follows trees through winters stopped working.`));
    }
    return this.#worker;
  }

  #receive(reply: LifeReply): void {
    const waiting = this.#waiting.get(reply.id);
    if (!waiting) return;
    if ('done' in reply) return waiting.onProgress(reply.done);
    this.#waiting.delete(reply.id);
    if ('failure' in reply) waiting.reject(new Error(reply.failure));
    else waiting.resolve(reply.answer as never);
  }

  #fail(error: Error): void {
    this.#worker?.terminate();
    this.#worker = null;
    for (const { reject } of this.#waiting.values()) reject(error);
    this.#waiting.clear();
  }
}
