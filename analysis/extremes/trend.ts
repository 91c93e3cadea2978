import { normalCdf } from '../math/normal.ts';
import { quantileType7InPlace } from '../math/quantile.ts';
import { countedPeriod, countHits, type Counted } from './counted.ts';

/** Result of the Mann-Kendall test. */
export interface MannKendall {
  /** Later-minus-earlier pairs that rise, minus those that fall. */
  readonly s: number;
  readonly variance: number;
  /** Standardised with the continuity step of 1; 0 when nothing can be told (`s` 0 or all values equal). */
  readonly z: number;
  /** Two-sided chance of so strong a trend without one. */
  readonly p: number;
}

const FEWEST_FOR_TREND = 4;

/**
 * Mann-Kendall test for a trend in values in order of time, variance corrected for ties (Mann 1945, Kendall 1975).
 * @throws RangeError with fewer than 4 values.
 */
export function mannKendall(values: ArrayLike<number>): MannKendall {
  const n = values.length;
  needValues(n);
  let s = 0;
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) s += Math.sign(values[j]! - values[i]!);
  let ties = 0;
  const ascending = Float64Array.from(values).sort();
  for (let i = 0, j = 0; i < n; i = j) {
    while (j < n && ascending[j] === ascending[i]) j++;
    const t = j - i;
    ties += t * (t - 1) * (2 * t + 5);
  }
  const variance = (n * (n - 1) * (2 * n + 5) - ties) / 18;
  const z = variance > 0 ? (s - Math.sign(s)) / Math.sqrt(variance) : 0;
  return { s, variance, z, p: Math.min(1, 2 * normalCdf(-Math.abs(z))) };
}

/**
 * Sen's slope: the median of all pairwise slopes, in the values' unit a winter (Sen 1968).
 * @param times when each value was, strictly increasing; one apart when left out.
 * @throws RangeError with fewer than 4 values, or times of another length or not increasing.
 */
export function senSlope(values: ArrayLike<number>, times?: ArrayLike<number>): number {
  const n = values.length;
  needValues(n);
  if (times && times.length !== n) throw new RangeError(`${n} values need ${n} times, got ${times.length}.`);
  const slopes = new Float64Array((n * (n - 1)) / 2);
  let next = 0;
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const span = times ? times[j]! - times[i]! : j - i;
      if (!(span > 0)) throw new RangeError(`Times must increase: ${times![i]} is followed by ${times![j]}.`);
      slopes[next++] = (values[j]! - values[i]!) / span;
    }
  return quantileType7InPlace(slopes, 0.5);
}

function needValues(n: number): void {
  if (n < FEWEST_FOR_TREND)
    throw new RangeError(`A trend needs at least ${FEWEST_FOR_TREND} values, got ${n}.`);
}

/** Winters that count as recent. */
export const RECENT_WINTERS = 30;

/** The count over the last winters of the record, to stand beside the whole. */
export interface RecentCount extends Counted {
  readonly firstWinter: number;
  readonly lastWinter: number;
}

/**
 * Counts hits in the last `span` calendar winters up to the last complete one; winters of that stretch that are not
 * complete are simply absent from n.
 * @param winters labels of complete winters, increasing. @param valuesC their values, NaN for no cold night.
 * @returns null without any complete winter.
 */
export function recentCount(
  winters: ArrayLike<number>,
  valuesC: ArrayLike<number>,
  thresholdC: number,
  span = RECENT_WINTERS,
): RecentCount | null {
  const last = winters.length - 1;
  if (last < 0) return null;
  const lastWinter = winters[last]!;
  let start = last;
  while (start > 0 && winters[start - 1]! > lastWinter - span) start--;
  const recent = Array.from({ length: last - start + 1 }, (_, i) => valuesC[start + i]!);
  const counted = countedPeriod(countHits(recent, thresholdC), recent.length);
  return { ...counted, firstWinter: winters[start]!, lastWinter };
}
