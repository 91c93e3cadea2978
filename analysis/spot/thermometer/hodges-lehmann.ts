import { quantileType7Sorted } from '../../math/quantile.ts';
import { signedRankQuantile } from './signed-rank.ts';

/** A robust centre of values with the interval that holds it, in the values' unit. */
export interface RobustCentre {
  readonly centre: number;
  readonly low: number;
  readonly high: number;
  /** False where the values are too few for an interval of that confidence: then it runs over all of them. */
  readonly reached: boolean;
}

/**
 * Hodges and Lehmann's estimate: the median of all averages of two values (each with itself too), and the interval of
 * Wilcoxon's signed rank test turned round (Hollander and Wolfe, Nonparametric Statistical Methods, 3.2 and 3.3). Nothing
 * is assumed of the values' distribution but symmetry. The interval's ends are averages themselves, so ties only make it
 * more cautious. For 90 % it needs 5 values.
 * @throws RangeError without values.
 */
export function hodgesLehmann(values: readonly number[], confidence = 0.9): RobustCentre {
  const n = values.length;
  if (n === 0) throw new RangeError('A centre needs at least 1 value, got 0.');
  const averages = new Float64Array((n * (n + 1)) / 2);
  let next = 0;
  for (let i = 0; i < n; i++) for (let j = i; j < n; j++) averages[next++] = (values[i]! + values[j]!) / 2;
  averages.sort();
  const rank = signedRankQuantile((1 - confidence) / 2, n);
  const from = Math.max(rank, 1);
  return {
    centre: quantileType7Sorted(averages, 0.5),
    low: averages[from - 1]!,
    high: averages[averages.length - from]!,
    reached: rank > 0,
  };
}
