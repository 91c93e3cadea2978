import type { Parameter } from './bind-named.ts';
import type { OnBytes } from './download.ts';
import type { ResultTable } from './table-rows.ts';

/** A running database with one pack attached; the narrow part of DuckDB that the page uses. */
export interface RunningEngine {
  /** Attaches a pack's database, read-only, by its absolute address, in place of the one before. */
  attach(recordsUrl: string): Promise<void>;
  /** One statement that gives rows, prepared; parameters by position. At most `limit` rows are read out. */
  ask(sql: string, parameters: readonly Parameter[], limit: number): Promise<ResultTable>;
  /** As `ask` without parameters, stoppable by `stop`. */
  askStoppable(sql: string, limit: number): Promise<ResultTable>;
  stop(): Promise<void>;
  close(): Promise<void>;
}

/** Brings the engine up, counting the bytes it takes. */
export type StartEngine = (onBytes: OnBytes) => Promise<RunningEngine>;
