import type { PlaceRequest } from '../../analysis/answer/find-subject.ts';
import type { DepthDuration, Headline, LevelAnswer, Ranking } from '../../analysis/answer/assessment.ts';
import type { Chosen as ChosenTypes, Wishes } from '../../analysis/answer/choosing.ts';
import type { LeastCoverAnswer } from '../../analysis/answer/cover-answer.ts';
import type { LifeAnswer, Planting } from '../../analysis/answer/life.ts';
import type { ProtectionTexts } from '../../analysis/answer/protection.ts';
import type { YearAnswer } from '../../analysis/answer/year.ts';
import type { ThreeReadings } from '../../analysis/answer/three-readings.ts';
import type { NightPlan } from '../../analysis/place/night-plan.ts';
import type { KeptNights } from '../../analysis/records/kept-nights.ts';
import type { NightKind } from '../../analysis/records/nights.ts';
import type { Level } from '../../analysis/tree/levels.ts';
import type { TreeState } from '../../analysis/tree/penalties.ts';

/** Part of every question about cold at the tree: where in the yard it stands and what is put over it. */
export interface Protected {
  /** `null`: in the open, without a cover. */
  readonly protection: ProtectionTexts | null;
}

export interface AssessQuestion extends Protected {
  /** Address of the pack's folder, ending in `/`. */
  readonly packUrl: string;
  readonly place: PlaceRequest;
  readonly tree: TreeState;
  /** Horizon of the chance of at least one hit, winters. */
  readonly years: number;
}

export interface StationPeriodsQuestion extends Protected {
  readonly packUrl: string;
  readonly tree: TreeState;
  readonly typeId: string;
  readonly level: Level;
}

/** The curves of depth and duration at a place; the tree has no part in them. */
export interface DepthDurationQuestion extends Protected {
  readonly packUrl: string;
  readonly place: PlaceRequest;
}

/** Bytes of a download; `total` is `null` where the host doesn't say. */
export interface LoadProgress {
  readonly loaded: number;
  readonly total: number | null;
  /** True while the nights of a pack just made are written; nothing is loaded yet. */
  readonly writing?: true;
}

/** One station's answer for one type and level, for the map. */
export interface StationPeriod {
  readonly stationId: string;
  readonly winters: number;
  readonly headline: Headline;
}

/** One type and level over all cells of the pack's land, for the map. */
export interface SurfaceQuestion extends Protected {
  readonly packUrl: string;
  readonly tree: TreeState;
  readonly typeId: string;
  readonly level: Level;
  /** Winters the answer comes from: all on record, or the last 30 of them. */
  readonly winters: 'all' | 'last30';
}

/** Return periods over the land. Cells run by rows from the south-west corner to the east, then north. */
export interface Surface {
  readonly columns: number;
  readonly rows: number;
  /** Centre of the first cell, degrees. */
  readonly west: number;
  readonly south: number;
  readonly stepLonDeg: number;
  readonly stepLatDeg: number;
  /** Winters between hits as estimated, Infinity where the curve ends before, NaN where there is no answer. */
  readonly periods: Float32Array;
  /** Longest period claimed in a cell: twice its winters. Beyond it say "rarer than about 1 in" this. */
  readonly longestClaims: Float32Array;
  /** 0 sea, 1 answered, 2 land beyond the reach of the stations. */
  readonly states: Uint8Array;
  /** False where the pack has no elevations, so that hills don't show. */
  readonly knowsElevation: boolean;
}

/** Which night made each winter's value, for so many hours at a place. */
export interface WinterNightsQuestion extends Protected {
  readonly packUrl: string;
  readonly place: PlaceRequest;
  readonly hours: number;
  /** What a cover gains depends on it. */
  readonly level: Level;
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

/** One type and level at a place, by the whole record, its end, and a curve that moves with the year. */
export interface ReadingsQuestion extends Protected {
  readonly packUrl: string;
  readonly place: PlaceRequest;
  readonly tree: TreeState;
  readonly typeId: string;
  readonly level: Level;
}

/** Several places, to be answered one after another and held beside each other. */
export interface ComparisonQuestion extends Protected {
  readonly packUrl: string;
  readonly places: readonly PlaceRequest[];
  readonly tree: TreeState;
  readonly years: number;
  /** Hours of cold whose nights are wanted, and the level they are wanted for. */
  readonly hours: number;
  readonly level: Level;
}

/** One of them: its answer, or a sentence why it has none. */
export type ComparedPlace =
  | {
      readonly problem: null;
      readonly ranking: Ranking;
      readonly coastKm: number | null;
      readonly nights: readonly ColdestNight[];
    }
  | { readonly problem: string };

/** Where the nights of a place come from. */
export interface NightsQuestion {
  readonly packUrl: string;
  readonly place: PlaceRequest;
}

/** A station in the database, or several with what each tells of the place. */
export type NightsSource = { readonly stationId: string } | { readonly plan: NightPlan };

/** A type and level on a spot, to be told of under several covers; the spot's own cover is not looked at. */
interface CoverOnSpot {
  readonly packUrl: string;
  readonly place: PlaceRequest;
  readonly tree: TreeState;
  readonly years: number;
  readonly typeId: string;
  readonly level: Level;
  readonly protection: ProtectionTexts;
}

export interface CoverPeriodsQuestion extends CoverOnSpot {
  /** Covers as lists of ids. */
  readonly covers: readonly (readonly string[])[];
}

/** The full answer on the bare spot, and the headline under each cover asked about. */
export interface CoverPeriods {
  readonly none: LevelAnswer;
  readonly headlines: readonly Headline[];
}

/** The least cover of these candidates that makes the loss rarer than once in so many winters. */
export interface LeastCoverQuestion extends CoverOnSpot {
  readonly candidates: readonly string[];
  readonly onceIn: number;
}

/** What only later parts of the page ask of the worker. */
export interface LaterPort {
  coverPeriods(question: CoverPeriodsQuestion): Promise<CoverPeriods>;
  leastCover(question: LeastCoverQuestion): Promise<LeastCoverAnswer>;
  nightsSource(question: NightsQuestion): Promise<NightsSource>;
  readings(question: ReadingsQuestion): Promise<ThreeReadings>;
  comparison(question: ComparisonQuestion): Promise<readonly ComparedPlace[]>;
}

/** Part of every question that goes through a place's nights one by one: how a tree is planted there. */
export interface LifeQuestion extends Protected {
  readonly packUrl: string;
  readonly place: PlaceRequest;
  /** As `RecordsPort.keptNights` gives them. */
  readonly nights: KeptNights;
  /** Its age, fruit load and hardening are not looked at: they change through a life. */
  readonly tree: TreeState;
  readonly planting: Planting;
}

export interface ChooseQuestion extends LifeQuestion {
  readonly wishes: Wishes;
}

/** Hears how much is done, 0-1. */
export type OnProgress = (done: number) => void;

/**
 * What goes through a place's nights one by one, in a worker of its own; `web/workers/life-client.ts` is the real one. A newer
 * question of a kind rejects the older one.
 */
export interface LifePort {
  /** Every type, without ranges. */
  life(question: LifeQuestion): Promise<LifeAnswer>;
  /** The same with ranges, which take a moment. */
  lifeRanges(question: LifeQuestion, onProgress: OnProgress): Promise<LifeAnswer>;
  year(question: LifeQuestion): Promise<YearAnswer>;
  choose(question: ChooseQuestion, onProgress: OnProgress): Promise<ChosenTypes>;
  /** Stops what is being worked out; its promise is rejected as overtaken. */
  cancel(kind: 'lifeRanges' | 'choose'): void;
}

/**
 * What works out surfaces: the same client with a worker of its own, since the first surface of a number of hours takes
 * seconds and a click on the map must not wait for it.
 */
export interface SurfacePort {
  surface(question: SurfaceQuestion): Promise<Surface>;
}

/** A result of a query in plain values. Dates are `YYYY-MM-DD`, unknown is `null`. */
export interface QueryResult {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number | boolean | null)[])[];
  /** There were more rows than the limit. */
  readonly truncated: boolean;
}

/** Nights with a hit: the place, hours from 0 to 24 as kept, and the level reached (penalties in it), °C. */
export interface HitNightsQuestion {
  readonly place: PlaceRequest;
  readonly hours: number;
  readonly limitC: number;
  readonly gainCalmC: number;
  readonly gainWindyC: number;
}

/** What later parts ask of one pack's database; `web/data/records-port.ts` makes the real one. Opened once, when first asked for. */
export interface RecordsPort {
  open(onProgress: (progress: LoadProgress) => void): Promise<void>;
  /** Columns date, winter, kind, basis, tmin_c, level_c, spell; between stations the nights are estimated, and `basis` says so. */
  hitNights(question: HitNightsQuestion): Promise<QueryResult>;
  /** Every night at or below 10 °C of a station, or as estimated between stations. */
  keptNights(place: PlaceRequest): Promise<KeptNights>;
  /** The reader's own statement; rejects with a plain sentence. */
  run(sql: string): Promise<QueryResult>;
  close(): void;
}
