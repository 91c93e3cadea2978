import { cholesky, solveCholesky } from '../math/positive-definite.ts';
import type { AnomalyCorrelation } from './place-parameters.ts';
import type { StationNetwork } from './station-network.ts';

/** How one winter's anomaly at a point is put together. */
export interface WinterWeights {
  /** Members that had the winter complete. */
  readonly members: readonly number[];
  readonly weights: Float64Array;
  /** Part of the anomaly's variance that these members explain, 0-1. */
  readonly explained: number;
}

/** Members near a point of which the nearest with the winter complete are used, and how many of them. */
const CANDIDATES = 24;
const USED = 12;

/**
 * Simple kriging weights of the members' standardised anomalies at a point, winter by winter, since stations come and go.
 * Expectation 0 and variance 1 are known (the anomalies are standardised), so no weight need add up to anything.
 * @param separationsKm from the point to each member
 * @param leftOut a member that must not take part: the one that is estimated
 * @returns one entry a winter, `null` where no member has it
 */
export function anomalyWeights(
  network: StationNetwork,
  correlation: AnomalyCorrelation,
  separationsKm: ArrayLike<number>,
  leftOut = -1,
): (WinterWeights | null)[] {
  const count = network.labels.length;
  const near = Array.from(network.members, (_, i) => i)
    .filter((i) => i !== leftOut)
    .sort((a, b) => separationsKm[a] - separationsKm[b] || a - b)
    .slice(0, CANDIDATES);
  const known = new Map<number, WinterWeights>();
  const result: (WinterWeights | null)[] = [];
  for (let w = 0; w < count; w++) {
    let pattern = 0;
    let used = 0;
    for (let c = 0; c < near.length && used < USED; c++) {
      if (!network.complete[near[c] * count + w]) continue;
      pattern |= 1 << c;
      used++;
    }
    if (used === 0) {
      result.push(null);
      continue;
    }
    let weights = known.get(pattern);
    if (!weights) {
      const members = near.filter((_, c) => pattern & (1 << c));
      weights = simpleKriging(members, network, correlation, separationsKm);
      known.set(pattern, weights);
    }
    result.push(weights);
  }
  return result;
}

function simpleKriging(
  members: readonly number[],
  { separationsKm: between, members: all }: StationNetwork,
  { share, rangeKm }: AnomalyCorrelation,
  separationsKm: ArrayLike<number>,
): WinterWeights {
  const m = members.length;
  const matrix = new Float64Array(m * m);
  const shared = new Float64Array(m);
  for (let a = 0; a < m; a++) {
    shared[a] = share * Math.exp(-separationsKm[members[a]] / rangeKm);
    for (let b = 0; b < a; b++)
      matrix[a * m + b] = matrix[b * m + a] =
        share * Math.exp(-between[members[a] * all.length + members[b]] / rangeKm);
    matrix[a * m + a] = 1;
  }
  const factor = new Float64Array(m * m);
  cholesky(matrix, m, factor);
  const weights = new Float64Array(m);
  solveCholesky(factor, m, shared, weights);
  let explained = 0;
  for (let a = 0; a < m; a++) explained += weights[a] * shared[a];
  return { members, weights, explained };
}
