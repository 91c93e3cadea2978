import type { Counted } from './counted.ts';
import { FEWEST_WINTERS_TO_FIT } from './fit-winters.ts';
import type { PeriodRange } from './period-range.ts';

/** The one number said first, in winters; null where nothing can be said. */
export interface Headline {
  /** "About 1 winter in `period`"; "rarer than about 1 in `period`" when `beyond`; null when `not seen`. */
  readonly period: number | null;
  /** Shortest period in the 90 % range. When `not seen`: "could be as often as 1 in `low`". */
  readonly low: number;
  readonly high: number | null;
  readonly basis: 'fitted' | 'counted' | 'beyond' | 'not seen';
  /** False when the fitted period lies outside the count's range: say so beside it. */
  readonly agrees: boolean;
}

/** How much a record's length allows: nothing but counts, a curve with a warning, a curve. */
export type RecordLength = 'counts only' | 'short' | 'enough';

/** Fewer complete winters than this carry a warning. */
export const FEWEST_WINTERS_WITHOUT_WARNING = 30;

/** The rule of design 3.5: under 20 winters counts only, 20 to 29 a curve with a warning. */
export function recordLength(winters: number): RecordLength {
  if (winters < FEWEST_WINTERS_TO_FIT) return 'counts only';
  return winters < FEWEST_WINTERS_WITHOUT_WARNING ? 'short' : 'enough';
}

/** Longest period claimed from `winters` winters: twice the record. */
export function longestClaim(winters: number): number {
  return 2 * winters;
}

/**
 * Chooses between count and fit (design 3.5).
 *
 * - No fit, a fit that only repeats the count (no curve could be drawn), or fewer than 20 winters: the count; with no
 *   hit, "not seen", with the count's `low`.
 * - A fitted period within twice the record is the headline. Where the count says far more often than that (fit beyond
 *   the count's range), the fit stays the headline but its range reaches down to the counted period, so that the colder
 *   answer is inside the range as well as beside it.
 * - A fitted period beyond twice the record: the lower end of its range, never more than twice the record, and, when hits were
 *   seen, never rarer than the count itself. It is then "rarer than about 1 in", without an upper end.
 *
 * @param counted count at the same threshold and winters.
 * @param fitted the fit's period there, made monotone if needed; null where nothing was fitted.
 */
export function headline(counted: Counted, fitted: PeriodRange | null, winters: number): Headline {
  if (fitted === null || recordLength(winters) === 'counts only') return fromCount(counted);
  if (fitted.period === counted.period && fitted.low === counted.low) return fromCount(counted);
  const agrees = fitted.period >= counted.low && fitted.period <= counted.high;
  const rarerThanCount = fitted.period > counted.high;
  if (fitted.period > longestClaim(winters)) {
    const low = Math.min(fitted.low, longestClaim(winters), counted.period);
    return { period: low, low, high: null, basis: 'beyond', agrees };
  }
  const low = rarerThanCount ? Math.min(fitted.low, counted.period) : fitted.low;
  return { period: fitted.period, low, high: finite(fitted.high), basis: 'fitted', agrees };
}

function fromCount(counted: Counted): Headline {
  if (counted.hits === 0)
    return { period: null, low: counted.low, high: null, basis: 'not seen', agrees: true };
  return {
    period: counted.period,
    low: counted.low,
    high: finite(counted.high),
    basis: 'counted',
    agrees: true,
  };
}

function finite(period: number): number | null {
  return Number.isFinite(period) ? period : null;
}
