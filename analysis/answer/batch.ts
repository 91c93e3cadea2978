import type { Level } from '../tree/levels.ts';
import { OPEN_ADVICE, type OpenAdvice } from './advice.ts';
import type { HeadlineBasis } from './assessment.ts';

/** The most that is read of one file. */
export const BATCH_LIMITS = { rows: 20_000, bytes: 10_000_000 } as const;

/**
 * Draws behind every range of a batch; a single answer has 1,000. Periods and counts come without draws and are the same. Of
 * the ends of ranges half lie within 4 % of the full answer's, nine in ten within 8 %; a bound ("1 in N or rarer") far beyond
 * the record was 59 % off in the worst case (`tests/analysis/answer/batch-answer.test.ts` holds all of it).
 */
export const BATCH_DRAWS = 400;

/** Levels told in a batch. */
export const BATCH_LEVELS = ['fruit', 'leaf', 'kill'] as const satisfies readonly Level[];
export type BatchLevel = (typeof BATCH_LEVELS)[number];

/** A row of the file as it was understood, not yet looked up. */
export interface BatchAsk {
  /** Line of the file it begins on, from 1. */
  readonly line: number;
  /** The reader's own name of the place and number of the customer, `''` where there is none. */
  readonly label: string;
  readonly customer: string;
  readonly where:
    | { readonly by: 'postcode'; readonly code: string }
    | { readonly by: 'point'; readonly lat: number; readonly lon: number };
  /** As the row has it; `null`: left to the pack's grid. */
  readonly elevationM: number | null;
}

/** A row that can't be answered, and why, in a few words. */
export interface BadRow {
  readonly line: number;
  readonly reason: string;
  /** What the row held, shortened. */
  readonly text: string;
}

/** A row with its place. */
export interface BatchRow {
  readonly line: number;
  readonly label: string;
  readonly customer: string;
  /** `''` for a point. */
  readonly postcode: string;
  /** Index of its place among {@link BatchPlace}s. */
  readonly place: number;
}

/** A place asked about, once however many rows ask. */
export interface BatchPlace {
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number | null;
}

/** What is told of one place. Types in the order asked, levels as in {@link BATCH_LEVELS}. */
export interface BatchAnswer {
  readonly problem: null;
  readonly basis: 'station' | 'history';
  /** The station whose winters these are, or the one that weighs most in them, and how far it is. */
  readonly station: string;
  readonly stationKm: number;
  /** Of the site the answer is for, metres; NaN where not known. */
  readonly elevationM: number;
  /** Error of the level of estimated winters, °C; 0 at a station. */
  readonly errorC: number;
  /** Complete winters. */
  readonly winters: number;
  /** First and last of them; 0 when there is none. */
  readonly first: number;
  readonly last: number;
  /** Period, low and high of each type and level in turn, winters; NaN where a headline has none. */
  readonly periods: Float64Array;
  /** Index into {@link BATCH_BASES} of each type and level. */
  readonly bases: Uint8Array;
  /** Index into {@link BATCH_ADVICE} of each type. */
  readonly advice: Uint8Array;
}

/** A place that nothing can be told about, and why. */
export interface BatchRefusal {
  readonly problem: string;
}

export const BATCH_BASES = [
  'fitted',
  'counted',
  'beyond',
  'not seen',
] as const satisfies readonly HeadlineBasis[];

/** Classes as they are numbered in an answer; the last: too few winters to advise. */
export const BATCH_ADVICE = [...OPEN_ADVICE, null] as const;

/** One period of an answer; `period` and `high` are `null` where a headline has none. */
export interface BatchPeriod {
  readonly period: number | null;
  readonly low: number;
  readonly high: number | null;
  readonly basis: HeadlineBasis;
}

/** The period of a type (by its index) at a level. */
export function batchPeriod({ periods, bases }: BatchAnswer, type: number, level: BatchLevel): BatchPeriod {
  const at = type * BATCH_LEVELS.length + BATCH_LEVELS.indexOf(level);
  const [period, low, high] = periods.subarray(3 * at, 3 * at + 3);
  return { period: orNull(period), low, high: orNull(high), basis: BATCH_BASES[bases[at]] };
}

/** The class of a type, by its index. */
export function batchAdvice({ advice }: BatchAnswer, type: number): OpenAdvice | null {
  return BATCH_ADVICE[advice[type]];
}

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
