import type { BadRow, BatchPlace, BatchRow } from '../../analysis/answer/batch.ts';
import type { BatchRunOptions, BatchTold } from '../../analysis/answer/batch-run.ts';

/** A type as a batch names it. */
export interface TypeRef {
  readonly id: string;
  readonly name: string;
}

/** What was read and looked up, ready to be answered. */
export interface BatchLoaded {
  /** The file's name, or that it is all postcodes of a pack. */
  readonly name: string;
  readonly packUrl: string;
  readonly rows: readonly BatchRow[];
  readonly places: readonly BatchPlace[];
  readonly bad: readonly BadRow[];
  /** Columns of the file that were left out. */
  readonly ignored: readonly string[];
}

/** What was asked about the places, as it stood when the batch was started. */
export interface BatchRun<Asked> {
  readonly asked: Asked;
  readonly types: readonly TypeRef[];
}

export type BatchStatus = 'empty' | 'loaded' | 'working' | 'cancelled' | 'failed' | 'finished';

/** Answers places; resolves to whether all were. */
export type BatchPort<Asked> = (
  asked: Asked,
  places: readonly BatchPlace[],
  options: BatchRunOptions,
) => Promise<boolean>;

/** One batch of the page, from its file to its answers. What was answered stays when the rest is stopped or fails. */
export class BatchState<Asked> {
  #loaded = $state.raw<BatchLoaded | null>(null);
  #status = $state<BatchStatus>('empty');
  #error = $state<string | null>(null);
  #run = $state.raw<BatchRun<Asked> | null>(null);
  #answers = $state.raw<readonly (BatchTold | null)[]>([]);
  /** The same while they come in. */
  #coming: (BatchTold | null)[] = [];
  #done = $state(0);
  #secondsLeft = $state<number | null>(null);
  #turn = 0;

  constructor(
    private readonly port: BatchPort<Asked>,
    private readonly nowMs: () => number,
  ) {}

  get status(): BatchStatus {
    return this.#status;
  }
  /** Why the file was refused, or the batch ended early. */
  get error(): string | null {
    return this.#error;
  }
  get loaded(): BatchLoaded | null {
    return this.#loaded;
  }
  get run(): BatchRun<Asked> | null {
    return this.#run;
  }
  /** By place; `null` where it was not reached. Only once the batch has ended. */
  get answers(): readonly (BatchTold | null)[] {
    return this.#answers;
  }
  /** Places answered so far. */
  get done(): number {
    return this.#done;
  }
  /** `null`: too early to tell. */
  get secondsLeft(): number | null {
    return this.#secondsLeft;
  }

  /** Takes what `read` gives as the next batch; what it throws becomes the reason why there is none. */
  async load(read: () => Promise<BatchLoaded> | BatchLoaded): Promise<void> {
    const turn = ++this.#turn;
    try {
      const loaded = await read();
      if (turn !== this.#turn) return;
      this.#forget();
      this.#loaded = loaded;
      this.#status = 'loaded';
    } catch (error) {
      if (turn !== this.#turn) return;
      this.#forget();
      this.#error = error instanceof Error ? error.message : String(error);
      this.#status = 'empty';
    }
  }

  /** Answers all places anew. */
  async start(run: BatchRun<Asked>): Promise<void> {
    const loaded = this.#loaded;
    if (!loaded) return;
    const turn = ++this.#turn;
    const answers: (BatchTold | null)[] = loaded.places.map(() => null);
    this.#coming = answers;
    this.#run = run;
    this.#answers = [];
    this.#done = 0;
    this.#secondsLeft = null;
    this.#error = null;
    this.#status = 'working';
    const startedMs = this.nowMs();
    let ended: BatchStatus;
    try {
      const whole = await this.port(run.asked, loaded.places, {
        stopped: () => turn !== this.#turn || this.#status !== 'working',
        onAnswers: (indices, told) => {
          if (turn !== this.#turn) return;
          indices.forEach((at, i) => (answers[at] = told[i]));
          this.#done += indices.length;
          const each = (this.nowMs() - startedMs) / this.#done;
          this.#secondsLeft = (each * (loaded.places.length - this.#done)) / 1000;
        },
      });
      ended = whole ? 'finished' : 'cancelled';
    } catch (error) {
      if (turn !== this.#turn) return;
      this.#error = error instanceof Error ? error.message : String(error);
      ended = 'failed';
    }
    if (turn !== this.#turn) return;
    this.#answers = answers;
    this.#status = ended;
  }

  /** Stops after what is on its way; what is answered stays. */
  cancel(): void {
    if (this.#status !== 'working') return;
    this.#answers = [...this.#coming];
    this.#status = 'cancelled';
  }

  /** Forgets file and answers. */
  clear(): void {
    this.#turn++;
    this.#forget();
    this.#status = 'empty';
  }

  #forget(): void {
    this.#loaded = this.#run = this.#error = null;
    this.#answers = [];
    this.#done = 0;
  }
}
