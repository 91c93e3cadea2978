import type { Evidence } from '../place/place-history.ts';
import type { Level } from '../tree/levels.ts';

/**
 * The answer for one place. Temperatures °C, gains and penalties °C differences, periods in winters, chances 0-1. What is
 * infinite or unknown is `null`. Intervals are 90 %. `assessmentJson` cuts it to what `assess --json` prints.
 */
export interface Assessment {
  readonly place: AssessedPlace;
  readonly winters: {
    /** Number of complete winters. */
    readonly used: number;
    /** First and last complete winter, `null` when there is none. */
    readonly first: number | null;
    readonly last: number | null;
    readonly left_out: readonly { readonly winter: number; readonly reason: string }[];
  };
  readonly history: readonly WinterHistory[];
  /** The same with what is gained at the graft, where that is more than in the air; else `null`. */
  readonly graft_history: readonly WinterHistory[] | null;
  readonly cold: readonly DepthDuration[];
  readonly types: readonly TypeAnswer[];
  /** Trend of the winters' coldest `S_4` with the gains chosen. */
  readonly trend: TrendAnswer | null;
  /** Where the tree stands and what is over it, in words; empty in the open without a cover. */
  readonly standing: string;
  /** What of spot and cover was left out, and why. */
  readonly standing_problems: readonly string[];
  /** Stations behind the winters with their share of the weight, heaviest first. */
  readonly evidence: readonly Evidence[];
  /** Plain sentences that must stand beside the answer. */
  readonly notes: readonly string[];
}

/** All of the answer but the curves of depth and duration, which take fits of seven more numbers of hours. */
export type Ranking = Omit<Assessment, 'cold'>;

export interface AssessedPlace {
  readonly label: string;
  readonly lat: number;
  readonly lon: number;
  readonly elevation_m: number | null;
  readonly basis: 'station' | 'history';
  readonly error_c?: number;
}

/** One winter's coldest sustained cold with the gains chosen, keyed by hours ("0" to "24"). */
export interface WinterHistory {
  readonly winter: number;
  readonly complete: boolean;
  readonly m_c: Readonly<Record<string, number | null>>;
}

/** Level that the air stays at or below for `hours` about once in `period_winters`; `null` beyond twice the record. */
export interface DepthDuration {
  readonly hours: number;
  readonly period_winters: number;
  readonly level_c: number | null;
  readonly low_c: number | null;
  readonly high_c: number | null;
}

export interface TypeAnswer {
  readonly id: string;
  readonly name: string;
  readonly use: string;
  readonly levels: readonly LevelAnswer[];
}

/** Return period with its 90 % range: `low` is the shorter period. */
export interface PeriodRange {
  readonly period: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

export interface Counted extends PeriodRange {
  /** Complete winters with at least one hit, of `winters` complete winters. */
  readonly hits: number;
  readonly winters: number;
  readonly hit_winters: readonly number[];
  /** Incomplete winters in which a hit was seen: listed, not counted. */
  readonly hit_incomplete: readonly number[];
}

export type HeadlineBasis = 'fitted' | 'counted' | 'beyond' | 'not seen';

export interface Headline extends PeriodRange {
  readonly basis: HeadlineBasis;
  /** False when the fitted period lies outside the count's interval. */
  readonly agrees: boolean;
}

/** One end of what spot and cover may add, and the headline it makes. */
export interface GainEnd {
  readonly gain_calm_c: number;
  readonly gain_windy_c: number;
  readonly headline: Headline;
}

export interface LevelAnswer {
  readonly level: Level;
  /** The type's own threshold for a mature, healthy, hardened tree. */
  readonly threshold_c: number;
  readonly hours: number;
  /** Penalties by cause; plus means hurt at a warmer temperature. */
  readonly penalties_c: Readonly<Record<string, number>>;
  readonly gain_calm_c: number;
  readonly gain_windy_c: number;
  readonly counted: Counted;
  readonly fitted: PeriodRange | null;
  readonly headline: Headline;
  /** What the range of the threshold itself does to the headline period. */
  readonly if_threshold: {
    readonly low: { readonly threshold_c: number; readonly period: number | null };
    readonly high: { readonly threshold_c: number; readonly period: number | null };
  };
  /** What the ends of the gain do to the headline period. */
  readonly if_gain: {
    readonly low: GainEnd;
    readonly high: GainEnd;
  };
  /** Count under the second reading: long cold hurts at warmer levels (a design choice). */
  readonly with_duration: { readonly hits: number; readonly period: number | null };
  readonly chance_in_years: {
    readonly years: number;
    readonly p: number | null;
    readonly low: number | null;
    readonly high: number | null;
  };
  /** Mean nights with a hit per complete winter; `null` when only the coldest night of each winter is known. */
  readonly nights_per_winter: number | null;
  /** Readings that stand beside the count and the fit on the page. */
  readonly beside: {
    /** Period by maximum likelihood at the same limit, a check of the fit; `null` without a fit or beyond its end. */
    readonly likelihood_period: number | null;
    /** Share of the record's windows of `chance_in_years.years` consecutive winters with a hit; `null`: no such window. */
    readonly window_share: number | null;
    readonly windows: number;
    /** The count over the last 30 winters of the record; `null` without a complete winter. */
    readonly recent: {
      readonly hits: number;
      readonly winters: number;
      readonly period: number | null;
      readonly first: number;
      readonly last: number;
    } | null;
  };
}

export interface TrendAnswer {
  readonly mann_kendall_z: number;
  readonly mann_kendall_p: number;
  /** Sen slope, °C per decade. */
  readonly sen_c_per_decade: number;
  /** Mean of the winters' coldest `S_4`, °C, over the whole record and over its last 30 complete winters. */
  readonly mean_all_c: number;
  readonly mean_last30_c: number | null;
  /** Location of the fit that moves with the winter, at the last winter against the middle of the record, °C. */
  readonly location_shift_c: number;
  /** Likelihood-ratio p value of the moving location. */
  readonly location_shift_p: number;
}
