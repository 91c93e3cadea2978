import { normalQuantile } from '../../math/normal.ts';
import { quantileType7Sorted } from '../../math/quantile.ts';

/** A robust slope with its interval, unit of `y` a unit of `x`. */
export interface RobustSlope {
  readonly slope: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Theil and Sen's slope: the median of the slopes between all pairs with different `x`, and the interval of Kendall's test
 * (Sen 1968, equation 2.6, which allows for ties in either). Points may come in any order.
 * @returns `null` where all `x` are the same.
 */
export function theilSen(x: readonly number[], y: readonly number[], confidence = 0.9): RobustSlope | null {
  const n = x.length;
  const found: number[] = [];
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      if (x[i] !== x[j]) found.push((y[j]! - y[i]!) / (x[j]! - x[i]!));
    }
  }
  if (found.length === 0) return null;
  const slopes = Float64Array.from(found).sort();
  const count = slopes.length;
  const variance = (n * (n - 1) * (2 * n + 5) - tiesOf(x) - tiesOf(y)) / 18;
  const reach = -normalQuantile((1 - confidence) / 2) * Math.sqrt(Math.max(0, variance));
  const last = Math.min(Math.round((count + reach) / 2), count - 1);
  const first = Math.max(Math.round((count - reach) / 2) - 1, 0);
  return { slope: quantileType7Sorted(slopes, 0.5), low: slopes[first]!, high: slopes[last]! };
}

function tiesOf(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  let ties = 0;
  for (const k of counts.values()) ties += k * (k - 1) * (2 * k + 5);
  return ties;
}
