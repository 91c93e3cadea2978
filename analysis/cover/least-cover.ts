import type { LevelGainSpreads } from '../tree/level-gains.ts';
import { LEVELS, type Level } from '../tree/levels.ts';
import { combinations, gainsAsMuch, type Combination } from './combinations.ts';
import type { CoverId } from './cover-ids.ts';

/**
 * Return period of the loss under a cover's gains, in winters, Infinity for never, NaN where nothing is known: that is
 * never rare enough. The spot is the asker's to add.
 */
export type PeriodUnder = (gains: LevelGainSpreads, ids: readonly CoverId[]) => number;

export interface TriedCover extends Combination {
  readonly periodWinters: number;
}

export interface LeastCover {
  /** Least effort that makes the loss rarer than asked; `null` when nothing does. Without ids: no cover is needed. */
  readonly least: TriedCover | null;
  /** Longest period among those tried, the least effort of equals. The best there is when `least` is `null`. */
  readonly best: TriedCover;
  readonly tried: number;
  /** False when some cover that gains at least as much came out with a shorter period: separately fitted curves may cross. */
  readonly monotone: boolean;
}

export interface LeastCoverWish {
  /** The loss is to be rarer than once in so many winters. */
  readonly onceIn: number;
  /** Levels that the period depends on: covers that differ elsewhere only aren't tried. All, unless told. */
  readonly levels?: readonly Level[];
}

/** Rounding of periods isn't a crossing of curves. */
const PERIOD_TOLERANCE = 1e-9;

/**
 * The least cover, by effort, that makes a loss rarer than once in `onceIn` winters; it stops at the first that does.
 * @throws InputError for an unknown candidate; RangeError for a wish that is no number of winters
 */
export function leastCover(
  candidates: readonly string[],
  periodUnder: PeriodUnder,
  { onceIn, levels = LEVELS }: LeastCoverWish,
): LeastCover {
  if (!(onceIn >= 1)) throw new RangeError(`Once in how many winters must be 1 or more, not ${onceIn}.`);
  const tried: TriedCover[] = [];
  let least: TriedCover | null = null;
  for (const combination of combinations(candidates, levels)) {
    const one = { ...combination, periodWinters: periodUnder(combination.gains, combination.ids) };
    tried.push(one);
    if (one.periodWinters > onceIn) {
      least = one;
      break;
    }
  }
  const best = tried.reduce((a, b) => (b.periodWinters > a.periodWinters ? b : a));
  return { least, best, tried: tried.length, monotone: isMonotone(tried, levels) };
}

function isMonotone(tried: readonly TriedCover[], levels: readonly Level[]): boolean {
  return tried.every((a) =>
    tried.every(
      (b) =>
        !gainsAsMuch(a.gains, b.gains, levels) || a.periodWinters >= b.periodWinters * (1 - PERIOD_TOLERANCE),
    ),
  );
}
