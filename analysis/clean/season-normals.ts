import type { DayTable } from './day-table.ts';

/** Seasons of about ten days in which distributions are gathered, each with its two neighbours. */
const SEASONS = 37;
const YEAR_DAYS = 365.2425;
const BIN_C = 0.2;
const LOWEST_C = -100;
const BINS = 900;
/** Fewest values from which a season's usual range is told. */
const FEWEST = 60;
/** Standard normal quantiles of 0.05 and of 0.84. */
const Z_05 = 1.645;

/** What is usual in one season, °C; NaN where the record is too short to tell. */
export interface Usual {
  readonly median: number;
  /** Robust spread below and above the median, in standard deviations of a normal curve with the same tail. */
  readonly spreadBelow: number;
  readonly spreadAbove: number;
}

/** Season of a day, from 0. Day 0 is a 1 January. */
export function seasonOf(day: number): number {
  const turn = day / YEAR_DAYS;
  return Math.min(SEASONS - 1, Math.floor((turn - Math.floor(turn)) * SEASONS));
}

/** The usual values of some daily quantity through the year, from a value of each day (NaN where unknown). */
export class SeasonNormals {
  private readonly usual: Usual[];

  constructor(firstDay: number, length: number, valueOf: (at: number) => number, leastSpread: number) {
    const counts = Array.from({ length: SEASONS }, () => new Uint32Array(BINS));
    for (let at = 0; at < length; at += 1) {
      const bin = Math.floor((valueOf(at) - LOWEST_C) / BIN_C);
      if (bin >= 0 && bin < BINS) counts[seasonOf(firstDay + at)]![bin]! += 1;
    }
    this.usual = counts.map((_, season) => {
      const around = [-1, 0, 1].map((step) => counts[(season + step + SEASONS) % SEASONS]!);
      return usualOf(around, leastSpread);
    });
  }

  of(day: number): Usual {
    return this.usual[seasonOf(day)]!;
  }

  /** How far below (negative) or above (positive) the usual a value lies, in robust standard deviations. */
  score(day: number, value: number): number {
    const { median, spreadBelow, spreadAbove } = this.of(day);
    return value < median ? (value - median) / spreadBelow : (value - median) / spreadAbove;
  }
}

function usualOf(counts: readonly Uint32Array[], leastSpread: number): Usual {
  const sum = new Uint32Array(BINS);
  let total = 0;
  for (const part of counts) {
    for (let bin = 0; bin < BINS; bin += 1) {
      sum[bin]! += part[bin]!;
      total += part[bin]!;
    }
  }
  if (total < FEWEST) return { median: NaN, spreadBelow: NaN, spreadAbove: NaN };
  const [low, median, high] = [0.05, 0.5, 0.95].map((share) => quantile(sum, total * share)) as [
    number,
    number,
    number,
  ];
  return {
    median,
    spreadBelow: Math.max(leastSpread, (median - low) / Z_05),
    spreadAbove: Math.max(leastSpread, (high - median) / Z_05),
  };
}

function quantile(sum: Uint32Array, rank: number): number {
  let seen = 0;
  for (let bin = 0; bin < BINS; bin += 1) {
    seen += sum[bin]!;
    if (seen >= rank) return LOWEST_C + (bin + 0.5) * BIN_C;
  }
  return NaN;
}

/** The normals that the rules for outliers need. */
export interface Normals {
  readonly tmin: SeasonNormals;
  readonly tmax: SeasonNormals;
  readonly tminChange: SeasonNormals;
  readonly tmaxChange: SeasonNormals;
  /** The smaller of the maxima on both sides of a night, minus its minimum. */
  readonly range: SeasonNormals;
}

/** Normals of a day table as it stands. */
export function normalsOf(table: DayTable): Normals {
  const { firstDay, length, tminC, tmaxC } = table;
  const make = (valueOf: (at: number) => number, least: number): SeasonNormals =>
    new SeasonNormals(firstDay, length, valueOf, least);
  return {
    tmin: make((at) => tminC[at]!, 1),
    tmax: make((at) => tmaxC[at]!, 1),
    tminChange: make((at) => tminC[at]! - tminC[at - 1]!, 0.7),
    tmaxChange: make((at) => tmaxC[at]! - tmaxC[at - 1]!, 0.7),
    range: make((at) => Math.min(tmaxC[at - 1]!, tmaxC[at]!) - tminC[at]!, 1),
  };
}
