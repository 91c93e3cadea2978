import type { HitNightsQuestion, LoadProgress, QueryResult, RecordsPort } from './ports.ts';

export type DatabaseStatus = 'closed' | 'opening' | 'open' | 'failed';

/** One question to the database and what came of it. */
export interface Answered {
  readonly result: QueryResult | null;
  readonly error: string | null;
  readonly running: boolean;
}

const NOTHING: Answered = { result: null, error: null, running: false };

function words(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** The database of one pack: closed until the reader asks for it, opened once, and what it answered. */
export class RecordsState {
  #status = $state<DatabaseStatus>('closed');
  #progress = $state.raw<LoadProgress>({ loaded: 0, total: null });
  #error = $state<string | null>(null);
  #nights = $state.raw<Answered>(NOTHING);
  #own = $state.raw<Answered>(NOTHING);
  #port: RecordsPort;
  #nightsTurn = 0;
  #ownTurn = 0;

  constructor(port: RecordsPort) {
    this.#port = port;
  }

  get status(): DatabaseStatus {
    return this.#status;
  }
  get progress(): LoadProgress {
    return this.#progress;
  }
  get error(): string | null {
    return this.#error;
  }
  /** The nights with a hit. */
  get nights(): Answered {
    return this.#nights;
  }
  /** The reader's own statement. */
  get own(): Answered {
    return this.#own;
  }

  async open(): Promise<void> {
    if (this.#status === 'opening' || this.#status === 'open') return;
    this.#status = 'opening';
    this.#error = null;
    this.#progress = { loaded: 0, total: null };
    try {
      await this.#port.open((progress) => (this.#progress = progress));
      this.#status = 'open';
    } catch (error) {
      this.#error = words(error);
      this.#status = 'failed';
    }
  }

  /** Ask for the nights with a hit; the latest question wins. */
  async askNights(question: HitNightsQuestion): Promise<void> {
    const turn = ++this.#nightsTurn;
    this.#nights = { ...this.#nights, running: true };
    const answered = await this.#answer(() => this.#port.hitNights(question));
    if (turn === this.#nightsTurn) this.#nights = answered;
  }

  /** Run the reader's own statement; the latest wins. */
  async run(sql: string): Promise<void> {
    const turn = ++this.#ownTurn;
    this.#own = { ...this.#own, error: null, running: true };
    const answered = await this.#answer(() => this.#port.run(sql));
    if (turn === this.#ownTurn) this.#own = answered;
  }

  close(): void {
    this.#port.close();
  }

  async #answer(ask: () => Promise<QueryResult>): Promise<Answered> {
    try {
      return { result: await ask(), error: null, running: false };
    } catch (error) {
      return { result: null, error: words(error), running: false };
    }
  }
}
