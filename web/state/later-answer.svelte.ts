export type AnswerStatus = 'idle' | 'working' | 'ready' | 'failed';

/** Whether a newer question of the same kind took over, by the name of the error a client throws; such an answer is dropped. */
export function isSuperseded(error: unknown): boolean {
  return (error as Error).name === 'Superseded';
}

/** An answer of the worker on the page. While a new one is worked out the old one stays; the newest wins. */
export class LaterAnswer<Question, Answer> {
  #status = $state<AnswerStatus>('idle');
  #answer = $state.raw<Answer | null>(null);
  #answered = $state.raw<Question | null>(null);
  #error = $state<string | null>(null);
  #asked: Question | null = null;
  #turn = 0;

  constructor(private readonly port: (question: Question) => Promise<Answer>) {}

  get status(): AnswerStatus {
    return this.#status;
  }
  get answer(): Answer | null {
    return this.#answer;
  }
  /** The question that `answer` answers. */
  get answered(): Question | null {
    return this.#answered;
  }
  get error(): string | null {
    return this.#error;
  }

  async ask(question: Question): Promise<void> {
    const turn = ++this.#turn;
    this.#asked = question;
    this.#status = 'working';
    this.#error = null;
    try {
      const answer = await this.port(question);
      if (turn !== this.#turn) return;
      this.#answer = answer;
      this.#answered = question;
      this.#status = 'ready';
    } catch (error) {
      if (turn !== this.#turn || isSuperseded(error)) return;
      this.#error = error instanceof Error ? error.message : String(error);
      this.#status = 'failed';
    }
  }

  retry(): Promise<void> {
    return this.#asked ? this.ask(this.#asked) : Promise.resolve();
  }
}
