import { median } from 'd3-array';

/** One winter's value on the trend chart. */
export interface TrendPoint {
  readonly winter: number;
  readonly valueC: number | null;
  readonly complete: boolean;
}

/** Straight line in °C by its two ends, `null` when there is nothing to draw it through. */
export interface TrendSegment {
  readonly from: readonly [winter: number, levelC: number];
  readonly to: readonly [winter: number, levelC: number];
}

/** How many winters make "the last 30". */
export const RECENT_WINTERS = 30;

/** Complete winters with a value: what the statistics saw. */
export function usedPoints(points: readonly TrendPoint[]): (TrendPoint & { valueC: number })[] {
  return points.filter(
    (point): point is TrendPoint & { valueC: number } => point.complete && point.valueC !== null,
  );
}

/**
 * Sen's line: the given slope through the median of the residual intercepts, over the complete winters.
 * @param senCPerDecade slope, °C per decade.
 */
export function senSegment(points: readonly TrendPoint[], senCPerDecade: number): TrendSegment | null {
  const used = usedPoints(points);
  if (used.length < 2) return null;
  const slope = senCPerDecade / 10;
  const intercept = median(used, ({ winter, valueC }) => valueC - slope * winter)!;
  const [first, last] = [used[0].winter, used[used.length - 1].winter];
  return { from: [first, intercept + slope * first], to: [last, intercept + slope * last] };
}

/** First and last winter of the last 30 complete ones; `null` with fewer than 30. */
export function recentSpan(points: readonly TrendPoint[]): [first: number, last: number] | null {
  const used = usedPoints(points);
  if (used.length < RECENT_WINTERS) return null;
  return [used[used.length - RECENT_WINTERS].winter, used[used.length - 1].winter];
}
