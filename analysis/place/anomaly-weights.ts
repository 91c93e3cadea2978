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

/** Correlation of the anomalies of every two members, n x n by rows. */
export function anomalyCorrelations(
  { members, separationsKm }: StationNetwork,
  { share, rangeKm }: AnomalyCorrelation,
): Float64Array {
  const n = members.length;
  return separationsKm.map((km, at) => (at % (n + 1) === 0 ? 1 : share * Math.exp(-km / rangeKm)));
}

/**
 * Simple kriging weights of the members' standardised anomalies at a point, winter by winter, since stations come and go.
 * Expectation 0 and variance 1 are known (the anomalies are standardised), so no weight need add up to anything.
 * @param between the members' correlations, see {@link anomalyCorrelations}
 * @param separationsKm from the point to each member
 * @param leftOut a member that must not take part: the one that is estimated
 * @returns one entry a winter, `null` where no member has it
 */
export function anomalyWeights(
  network: StationNetwork,
  { share, rangeKm }: AnomalyCorrelation,
  between: Float64Array,
  separationsKm: ArrayLike<number>,
  leftOut = -1,
): (WinterWeights | null)[] {
  const count = network.labels.length;
  const near = Array.from(network.members, (_, i) => i)
    .filter((i) => i !== leftOut)
    .sort((a, b) => separationsKm[a] - separationsKm[b] || a - b)
    .slice(0, CANDIDATES);
  const shared = new Float64Array(network.members.length);
  for (const i of near) shared[i] = share * Math.exp(-separationsKm[i] / rangeKm);
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
      weights = simpleKriging(members, network, between, shared);
      known.set(pattern, weights);
    }
    result.push(weights);
  }
  return result;
}

function simpleKriging(
  members: readonly number[],
  { members: all }: StationNetwork,
  between: Float64Array,
  shared: ArrayLike<number>,
): WinterWeights {
  const m = members.length;
  const n = all.length;
  const matrix = new Float64Array(m * m);
  const right = new Float64Array(m);
  for (let a = 0; a < m; a++) {
    right[a] = shared[members[a]];
    for (let b = 0; b <= a; b++) matrix[a * m + b] = between[members[a] * n + members[b]];
  }
  cholesky(matrix, m, matrix);
  const weights = new Float64Array(m);
  solveCholesky(matrix, m, right, weights);
  let explained = 0;
  for (let a = 0; a < m; a++) explained += weights[a] * right[a];
  return { members, weights, explained };
}
