import { LaterAnswer, type AnswerStatus } from './later-answer.svelte.ts';
import type { OnProgress } from './ports.ts';

/** An answer that takes a moment: how far it is, and the way to stop it. Otherwise as {@link LaterAnswer}. */
export class StoppableAnswer<Question, Answer> {
  #done = $state(0);
  #stopped = $state<'cancelled' | 'idle' | null>(null);
  readonly #later: LaterAnswer<Question, Answer>;

  constructor(
    port: (question: Question, onProgress: OnProgress) => Promise<Answer>,
    /** Rejects what is being worked out as overtaken. */
    private readonly stop: () => void,
  ) {
    this.#later = new LaterAnswer((question) => port(question, (done) => (this.#done = done)));
  }

  get status(): AnswerStatus | 'cancelled' {
    return this.#stopped ?? this.#later.status;
  }
  /** Share that is done, 0-1. */
  get done(): number {
    return this.#done;
  }
  get answer(): Answer | null {
    return this.#later.answer;
  }
  /** The question that `answer` answers. */
  get answered(): Question | null {
    return this.#later.answered;
  }
  get error(): string | null {
    return this.#later.error;
  }

  ask(question: Question): Promise<void> {
    this.#stopped = null;
    this.#done = 0;
    return this.#later.ask(question);
  }

  retry(): Promise<void> {
    this.#stopped = null;
    this.#done = 0;
    return this.#later.retry();
  }

  /** Stop at the reader's wish. */
  cancel(): void {
    this.#stopped = 'cancelled';
    this.stop();
  }

  /** Stop because nobody looks any more. */
  drop(): void {
    this.#stopped = 'idle';
    this.stop();
  }
}
