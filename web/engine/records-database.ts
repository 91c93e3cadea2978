import type { LoadProgress } from '../state/ports.ts';
import { bindNamed, type Parameter } from './bind-named.ts';
import type { OnBytes } from './download.ts';
import type { RunningEngine, StartEngine } from './engine-port.ts';
import { plainError, readOnlyQuestion } from './read-only.ts';
import { SharedAttempt } from './shared-attempt.ts';
import type { ResultTable } from './table-rows.ts';

/** A question the database could not answer; the message is one sentence for the reader. */
export class DatabaseError extends Error {
  override readonly name = 'DatabaseError';
  constructor(
    message: string,
    /** The statement, for whoever wants to see it. */
    readonly sql: string,
    options?: ErrorOptions,
  ) {
    super(message, options);
  }
}

export const ROW_LIMIT = 1000;

/** How long a stopped query may take to give up before the engine is closed, ms. */
const STOP_PATIENCE_MS = 1500;

export interface RunOptions {
  /** Rows at most; the result says when there were more. */
  readonly limit?: number;
  /** Stops the query. */
  readonly signal?: AbortSignal;
}

/** Brings DuckDB only when it is first needed: 35 MB that the first screen does without. */
const startDuckdbLazily: StartEngine = async (onBytes) => {
  const { startDuckdb } = await import('./duckdb-engine.ts');
  return startDuckdb(onBytes);
};

/**
 * The database of the open pack. Opened by the first question behind one shared attempt; a failure is forgotten, so
 * asking again tries again. Questions wait for each other.
 */
export class RecordsDatabase {
  readonly #engine: SharedAttempt<RunningEngine>;
  readonly #listeners = new Set<OnBytes>();
  #packUrl: string | null = null;
  #attachedUrl: string | null = null;
  #last: Promise<unknown> = Promise.resolve();
  /** A stopped query may still be giving up; the next one waits for that. */
  #stopping: Promise<void> = Promise.resolve();

  constructor(start: StartEngine = startDuckdbLazily) {
    this.#engine = new SharedAttempt(() =>
      start((loaded, total) => this.#listeners.forEach((listener) => listener(loaded, total))),
    );
  }

  /**
   * Opens the engine and attaches a pack. `packUrl` is the absolute address of its folder, ending in `/`.
   * @throws DatabaseError in one plain sentence; call again to retry
   */
  async open(packUrl: string, onProgress: (progress: LoadProgress) => void = () => {}): Promise<void> {
    this.#packUrl = packUrl;
    const listener: OnBytes = (loaded, total) => onProgress({ loaded, total });
    this.#listeners.add(listener);
    try {
      await this.#queued(() => this.#attached(), 'attach', false);
    } finally {
      this.#listeners.delete(listener);
    }
  }

  /** A statement of ours or of the reader's that gives rows, at most `ROW_LIMIT`; parameters by position. */
  query(sql: string, parameters: readonly Parameter[] = []): Promise<ResultTable> {
    if (parameters.length === 0) return this.run(sql);
    return this.#ask(sql, parameters, ROW_LIMIT);
  }

  /** A statement of `analysis/records/sql` with its parameters by name, all rows. */
  ask(sql: string, values: Readonly<Record<string, Parameter>>): Promise<ResultTable> {
    const bound = bindNamed(sql, values);
    return this.#ask(bound.sql, bound.parameters, Infinity);
  }

  /** The reader's own SQL: one statement that reads, stoppable, with a limit of rows. */
  async run(sql: string, { limit = ROW_LIMIT, signal }: RunOptions = {}): Promise<ResultTable> {
    const question = readOnlyQuestion(sql, limit);
    return this.#queued(
      async () => {
        signal?.throwIfAborted();
        const engine = await this.#attached();
        const stop = (): void => void (this.#stopping = this.#stop(engine));
        const stopped = rejection(signal);
        signal?.addEventListener('abort', stop, { once: true });
        try {
          return await Promise.race([stopped, engine.askStoppable(question, limit)]);
        } finally {
          signal?.removeEventListener('abort', stop);
        }
      },
      sql,
      true,
    );
  }

  /** Frees the memory; the next question opens anew. */
  async close(): Promise<void> {
    this.#attachedUrl = null;
    const engine = await this.#engine.take()?.catch(() => null);
    await engine?.close();
  }

  #ask(sql: string, parameters: readonly Parameter[], limit: number): Promise<ResultTable> {
    return this.#queued(async () => (await this.#attached()).ask(sql, parameters, limit), sql, false);
  }

  async #attached(): Promise<RunningEngine> {
    const packUrl = this.#packUrl;
    if (packUrl === null) throw new Error('No pack is open.');
    const engine = await this.#engine.get();
    if (this.#attachedUrl !== packUrl) {
      await engine.attach(new URL('records.duckdb', packUrl).href);
      this.#attachedUrl = packUrl;
    }
    return engine;
  }

  /** Asks politely; an engine that doesn't react is closed, and the next question starts a new one. */
  async #stop(engine: RunningEngine): Promise<void> {
    const late = new Promise<'late'>((resolve) => setTimeout(() => resolve('late'), STOP_PATIENCE_MS));
    const outcome = await Promise.race([engine.stop().catch(() => 'late' as const), late]);
    if (outcome === 'late') await this.close();
  }

  async #queued<T>(work: () => Promise<T>, sql: string, ownSql: boolean): Promise<T> {
    const turn = this.#last.then(() => this.#stopping).then(work);
    this.#last = turn.catch(() => {});
    try {
      return await turn;
    } catch (error) {
      const text = error instanceof Error ? error.message : String(error);
      throw new DatabaseError(plainError(text, ownSql), sql, { cause: error });
    }
  }
}

/** Never resolves; rejects when the signal fires. */
function rejection(signal: AbortSignal | undefined): Promise<never> {
  return new Promise((_, reject) => {
    signal?.addEventListener('abort', () => reject(new Error('query cancelled')), { once: true });
  });
}
