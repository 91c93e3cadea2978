import type { Chosen } from '../../analysis/answer/choosing.ts';
import type { LifeAnswer } from '../../analysis/answer/life.ts';
import type { YearAnswer } from '../../analysis/answer/year.ts';
import { t } from '../../analysis/language/t.ts';
import type { AskedOfCustomer } from '../../analysis/answer/advice-here.ts';
import type { CounterAnswer, CounterAsk, CounterNights, CounterPort } from '../state/counter-port.ts';
import type { ChooseQuestion, LifePort, LifeQuestion, OnProgress } from '../state/ports.ts';
import type { LifeTaskKind, LifeTasks } from './life-messages.ts';
import { Superseded } from './messages.ts';
import { TaskClient, type StoppableWorker } from './task-client.ts';
import { told } from '../language/worker-language.ts';

/** The worker behind the client. */
export type LifeWorker = StoppableWorker<LifeTasks, number>;

function startWorker(): LifeWorker {
  return told(new Worker(new URL('./life.worker.ts', import.meta.url), { type: 'module', name: 'life' }));
}

/**
 * The page's side of the worker that goes through nights, apart from the worker of the ranking, which must not wait for it.
 * A newer question of a kind rejects the older one with {@link Superseded}, and the worker drops it at its next step.
 */
export class LifeClient implements LifePort, CounterPort {
  readonly #client: TaskClient<LifeTasks, number>;
  readonly #newest = new Map<LifeTaskKind, AbortController>();

  constructor(start = startWorker) {
    this.#client = new TaskClient(
      start,
      t`The part of the page that follows trees through winters stopped working.`,
    );
  }

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
    this.#newest.get(kind)?.abort(new Superseded());
  }

  close(): void {
    this.#client.close(new Superseded());
  }

  #ask<K extends LifeTaskKind>(
    kind: K,
    question: LifeTasks[K]['question'],
    onProgress?: OnProgress,
  ): Promise<LifeTasks[K]['answer']> {
    this.cancel(kind);
    const stopper = new AbortController();
    this.#newest.set(kind, stopper);
    return this.#client.ask(kind, question, { onProgress, signal: stopper.signal });
  }
}
