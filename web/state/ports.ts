import type { DepthDuration, Headline, Ranking } from '../../analysis/answer/assessment.ts';
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

/** The curves of depth and duration at a station; the tree has no part in them. */
export interface DepthDurationQuestion {
  readonly packUrl: string;
  readonly stationId: string;
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
  assess(question: AssessQuestion): Promise<Ranking>;
  depthDuration(question: DepthDurationQuestion): Promise<readonly DepthDuration[]>;
  stationPeriods(question: StationPeriodsQuestion): Promise<readonly StationPeriod[]>;
  winterNights(question: WinterNightsQuestion): Promise<readonly ColdestNight[]>;
}

/** A result of a query in plain values. Dates are `YYYY-MM-DD`, unknown is `null`. */
export interface QueryResult {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number | boolean | null)[])[];
  /** There were more rows than the limit. */
  readonly truncated: boolean;
}

/** The database in the page as `web/engine` offers it. */
export interface DatabasePort {
  open(packUrl: string, onProgress: (progress: LoadProgress) => void): Promise<void>;
  /** One statement; rejects with a plain sentence. */
  query(sql: string, parameters?: readonly (string | number)[]): Promise<QueryResult>;
}

/** Nights with a hit: the station, hours from 0 to 24 as kept, and the level reached (penalties in it), °C. */
export interface HitNightsQuestion {
  readonly stationId: string;
  readonly hours: number;
  readonly limitC: number;
  readonly gainCalmC: number;
  readonly gainWindyC: number;
}

/** What the Records view asks of one pack's database; `web/data/records-port.ts` makes the real one. Opened once, when first asked for. */
export interface RecordsPort {
  open(onProgress: (progress: LoadProgress) => void): Promise<void>;
  hitNights(question: HitNightsQuestion): Promise<QueryResult>;
  /** The reader's own statement; rejects with a plain sentence. */
  run(sql: string): Promise<QueryResult>;
  close(): void;
}
