import type { LifeAnswer } from '../../../analysis/answer/life.ts';
import { LaterAnswer, type AnswerStatus } from '../../state/later-answer.svelte.ts';
import type { LifePort, LifeQuestion } from '../../state/ports.ts';

/** The life of trees once more with its ranges: how far it is, and the way to stop it. */
export class RangesState {
  #done = $state(0);
  #stopped = $state<'cancelled' | 'idle' | null>(null);
  readonly #later: LaterAnswer<LifeQuestion, LifeAnswer>;

  constructor(private readonly port: Pick<LifePort, 'lifeRanges' | 'cancel'>) {
    this.#later = new LaterAnswer((question) => port.lifeRanges(question, (done) => (this.#done = done)));
  }

  get status(): AnswerStatus | 'cancelled' {
    return this.#stopped ?? this.#later.status;
  }
  /** Share that is done, 0-1. */
  get done(): number {
    return this.#done;
  }
  get error(): string | null {
    return this.#later.error;
  }

  /** The answer with ranges to exactly this question; `null` while it isn't there. */
  answerTo(question: LifeQuestion | null): LifeAnswer | null {
    return this.#later.answered === question ? this.#later.answer : null;
  }

  ask(question: LifeQuestion): Promise<void> {
    this.#stopped = null;
    this.#done = 0;
    return this.#later.ask(question);
  }

  /** Stop at the reader's wish. */
  cancel(): void {
    this.#stop('cancelled');
  }

  /** Stop because the question is no longer the one on the page. */
  drop(): void {
    this.#stop('idle');
  }

  #stop(status: 'cancelled' | 'idle'): void {
    this.#stopped = status;
    this.port.cancel('lifeRanges');
  }
}
