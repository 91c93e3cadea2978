import type { DayTable } from './day-table.ts';
import type { Normals } from './season-normals.ts';

/** Longest run of bad days looked for. */
const LONGEST_RUN = 4;
/** How far off a missing day before or after a run may be replaced, days. */
const REACH = 2;

/** What speaks for and against one day's minimum. All scores are in robust standard deviations of the season. */
export interface LowEvidence {
  /** How far below the season's usual minimum. */
  readonly below: number;
  /** Rise from the run of days it belongs to, to the lower of its two sides, °C and in spreads of a daily change. */
  readonly spikeC: number;
  readonly spike: number;
  readonly runDays: number;
  /** Whether one side of the run is a gap in the record, so that only the other side speaks. */
  readonly oneSided: boolean;
  /** Whether all days of the run have the same value. */
  readonly runEqual: boolean;
  /** How far the maxima beside the night lie above what goes with such a minimum; NaN when no maximum is known. */
  readonly range: number;
  /** The strongest cold anomaly among the maxima beside it and the minima of the days around it; NaN if none is known. */
  readonly support: number;
}

/** Weighs the minimum at an index of the table; it must not be NaN. */
export function lowEvidence(table: DayTable, normals: Normals, at: number): LowEvidence {
  const { tminC, tmaxC, firstDay } = table;
  const value = tminC[at]!;
  const day = firstDay + at;
  const change = normals.tminChange.of(day);
  const changeSpread = Math.max(change.spreadBelow, change.spreadAbove);
  let best: Rise & { days: number } = { rise: 0, days: 0, equal: false, oneSided: false };
  for (let days = 1; days <= LONGEST_RUN; days += 1) {
    for (let start = at - days + 1; start <= at; start += 1) {
      const found = riseAround(tminC, start, start + days - 1);
      if (found.rise > best.rise + 1e-9) best = { ...found, days };
    }
  }
  const beside = [tmaxC[at - 1], tmaxC[at]].filter((v): v is number => v !== undefined && !Number.isNaN(v));
  const usualRange = normals.range.of(day);
  const range =
    beside.length > 0 ? (Math.min(...beside) - value - usualRange.median) / usualRange.spreadAbove : NaN;
  return {
    below: -normals.tmin.score(day, value),
    spikeC: best.rise,
    spike: best.rise / changeSpread,
    runDays: best.days,
    runEqual: best.equal,
    oneSided: best.oneSided,
    range,
    support: support(table, normals, at, best.days),
  };
}

interface Rise {
  readonly rise: number;
  readonly equal: boolean;
  readonly oneSided: boolean;
}

/**
 * Rise of the lower of both sides above the warmest day of the run from `start` to `end`. Where one side is a gap the
 * other one counts; 0 when both are gaps or the run isn't below them.
 */
function riseAround(values: Float64Array, start: number, end: number): Rise {
  let [warmest, coldest] = [-Infinity, Infinity];
  for (let at = start; at <= end; at += 1) {
    const value = values[at];
    if (value === undefined || Number.isNaN(value)) continue;
    if (value > warmest) warmest = value;
    if (value < coldest) coldest = value;
  }
  const [before, after] = [side(values, start, -1), side(values, end, 1)];
  const oneSided = Number.isNaN(before) !== Number.isNaN(after);
  const lower = Number.isNaN(before) ? after : Number.isNaN(after) ? before : Math.min(before, after);
  const rise = lower - warmest;
  return { rise: rise > 0 ? rise : 0, equal: warmest - coldest < 0.05, oneSided };
}

function side(values: Float64Array, from: number, step: -1 | 1): number {
  for (let reach = 1; reach <= REACH; reach += 1) {
    const value = values[from + step * reach];
    if (value !== undefined && !Number.isNaN(value)) return value;
  }
  return NaN;
}

function support(table: DayTable, normals: Normals, at: number, runDays: number): number {
  const { tminC, tmaxC, firstDay } = table;
  let strongest = NaN;
  const weigh = (score: number): void => {
    if (Number.isNaN(score)) return;
    strongest = Number.isNaN(strongest) ? -score : Math.max(strongest, -score);
  };
  for (const near of [at - 1, at]) {
    const value = tmaxC[near];
    if (value !== undefined) weigh(normals.tmax.score(firstDay + near, value));
  }
  // Days of the same short run don't support each other: two equal bad days are the case to find.
  const skip = Math.max(runDays, 1);
  for (let near = at - skip - 1; near <= at + skip + 1; near += 1) {
    const isRun = Math.abs(near - at) < skip && Math.abs((tminC[near] ?? NaN) - tminC[at]!) < 5;
    if (near === at || isRun || tminC[near] === undefined) continue;
    weigh(normals.tmin.score(firstDay + near, tminC[near]!));
  }
  return strongest;
}
