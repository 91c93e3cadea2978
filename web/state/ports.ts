import type { Assessment, Headline } from '../../analysis/answer/assessment.ts';
import type { NightKind } from '../../analysis/records/nights.ts';
import type { Level } from '../../analysis/tree/levels.ts';
import type { TreeState } from '../../analysis/tree/penalties.ts';

export interface AssessQuestion {
  /** Address of the pack's folder, ending in `/`. */
  readonly packUrl: string;
  readonly stationId: string;
  readonly tree: TreeState;
  /** Horizon of the chance of at least one hit, winters. */
  readonly years: number;
}

export interface StationPeriodsQuestion {
  readonly packUrl: string;
  readonly tree: TreeState;
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

/** Which night made each winter's value, for so many hours at a station. */
export interface WinterNightsQuestion {
  readonly packUrl: string;
  readonly stationId: string;
  readonly hours: number;
}

/** One of them. */
export interface ColdestNight {
  readonly winter: number;
  /** `YYYY-MM-DD` of its morning. */
  readonly date: string;
  readonly kind: NightKind;
}

/** The worker that reads winters tiles and assesses; `web/workers/assess-client.ts` is the real one. */
export interface AssessPort {
  assess(question: AssessQuestion): Promise<Assessment>;
  stationPeriods(question: StationPeriodsQuestion): Promise<readonly StationPeriod[]>;
  winterNights(question: WinterNightsQuestion): Promise<readonly ColdestNight[]>;
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
