import type { Assessment, Headline } from '../../analysis/answer/assessment.ts';
import type { Condition, Level } from './chosen.ts';

/** The tree as the reader described it. */
export interface TreeQuestion {
  /** `null`: mature. */
  readonly ageYears: number | null;
  readonly condition: Condition;
  readonly fruitLoad: boolean;
  readonly container: boolean;
  readonly notHardened: boolean;
  readonly rootstock: string | null;
}

export interface AssessQuestion {
  /** Address of the pack's folder, ending in `/`. */
  readonly packUrl: string;
  readonly stationId: string;
  readonly tree: TreeQuestion;
  /** Horizon of the chance of at least one hit, winters. */
  readonly years: number;
}

export interface StationPeriodsQuestion {
  readonly packUrl: string;
  readonly tree: TreeQuestion;
  readonly typeId: string;
  readonly level: Level;
}

/** Bytes of a download; `total` is `null` where the host doesn't say. */
export interface LoadProgress {
  readonly loaded: number;
  readonly total: number | null;
}

/** One station's answer for one type and level, for the map. */
export interface StationPeriod {
  readonly stationId: string;
  readonly winters: number;
  readonly headline: Headline;
}

/** The worker that reads winters tiles and assesses; `web/workers/assess-client.ts` is the real one. */
export interface AssessPort {
  assess(question: AssessQuestion): Promise<Assessment>;
  stationPeriods(question: StationPeriodsQuestion): Promise<readonly StationPeriod[]>;
}

/** A result of a query, read into plain values. Dates are `YYYY-MM-DD` strings, unknown is `null`. */
export interface QueryResult {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number | boolean | null)[])[];
}

/** The database in the page; `web/engine` holds the real one. Opened at the first query, once. */
export interface DatabasePort {
  open(packUrl: string, onProgress: (progress: LoadProgress) => void): Promise<void>;
  /** One statement of the reader's own, or of ours; rejects with a plain sentence. */
  query(sql: string, parameters?: readonly (string | number)[]): Promise<QueryResult>;
}
