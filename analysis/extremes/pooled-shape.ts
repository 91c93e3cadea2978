import { gevShapeFromLSkewness, largestShapeReaching } from './gev-l-moments.ts';
import { sampleLMoments } from './l-moments.ts';
import { criticalDiscordancy, discordancy } from './regional-homogeneity.ts';
import { negateMinima } from './winter-minimum.ts';

/** L-skewness of one station's negated winter values, and how many winters it comes from. */
export interface StationSkewness {
  readonly skewness: number;
  readonly winters: number;
  /** L-scale (°C) and L-kurtosis, by which a neighbour that differs from the others is found; without them all count. */
  readonly scale?: number;
  readonly kurtosis?: number;
}

/** A shape to fit with, how sure of it one can be, and where it came from. */
export interface ShapeEstimate {
  /** Hosking's k. */
  readonly k: number;
  /** Standard error of `k`: sampling of the skewness, and difference between stations. */
  readonly standardError: number;
  /** `pooled`: own and neighbours' records; `shrunk`: own record alone. */
  readonly basis: 'pooled' | 'shrunk';
}

/** Shapes outside are not believed for winter minima, whatever a short record says. */
export const SMALLEST_K = -0.2;
export const LARGEST_K = 0.3;

/**
 * What is believed of `k` before any record: the middle of the range above, and a spread that leaves the record most of
 * the say. Design choice; pooled over 60 long Spanish records of winter minima k is 0.09, on five long Gulf and
 * California records it runs from -0.03 to 0.22, and the handbook expects 0 to 0.3.
 */
export const PRIOR_K = 0.05;
export const PRIOR_K_SPREAD = 0.2;

/**
 * Neighbours share their cold winters, so their skewnesses err together: correlation about the cube of that of the
 * winter values (0.75 or so between neighbours). Design choice.
 */
export const SKEWNESS_CORRELATION = 0.4;

/**
 * How far the true shapes of neighbours may differ, as a standard deviation of k. What groups of nine stations spread in
 * L-skewness beyond a homogeneous group with the same correlation (Hosking and Wallis 1997, 4.3) is 0.06 to 0.08 in Spain, 0.04
 * in Trentino, nothing in the corn belt and the demo region (data-scripts/calibrate/README.md).
 */
export const NEIGHBOUR_K_SPREAD = 0.05;

/** Standard error of `k` from the L-skewness of `winters` values: `0.8/sqrt(n)`, by simulation for k in -0.1 to 0.3. */
export function sampleShapeError(winters: number): number {
  return 0.8 / Math.sqrt(winters);
}

/** Fewest winters whose L-skewness is worth pooling. */
const FEWEST_TO_POOL = 10;

/** A station's part in a pool, from its winter values in °C (NaN: no cold night); null with fewer than 10 values. */
export function stationSkewness(valuesC: ArrayLike<number>): StationSkewness | null {
  const negated = negateMinima(valuesC);
  if (negated.length < FEWEST_TO_POOL) return null;
  const { scale, skewness, kurtosis } = sampleLMoments(negated);
  return scale > 0 && Math.abs(skewness) < 1 ? { skewness, winters: negated.length, scale, kurtosis } : null;
}

/**
 * Shape for a station. The L-skewness is averaged over own and neighbours by length of record (Hosking and Wallis
 * 1997, regional average), turned into `k`, and that drawn towards the prior by how little the pool says (weights by
 * precision; a station on its own is a pool of one), then held to [-0.2, 0.3]. Neighbours that are discordant among
 * themselves take no part, see {@link concordant}.
 */
export function shapeFor(own: StationSkewness, neighbours: readonly StationSkewness[] = []): ShapeEstimate {
  return pooledShape([own, ...concordant(neighbours)], own.winters, neighbours.length > 0);
}

/** Shape for a place between stations, from theirs alone: none of the weight is the place's own. */
export function shapeAmong(neighbours: readonly StationSkewness[]): ShapeEstimate {
  return pooledShape(concordant(neighbours), 0, true);
}

/**
 * Neighbours without those whose L-scale, L-skewness and L-kurtosis together lie too far from the others' (Hosking and
 * Wallis 1997, 3.2): often a record with an error in it. With fewer than 5 none is.
 */
export function concordant(neighbours: readonly StationSkewness[]): readonly StationSkewness[] {
  const sites = neighbours.flatMap(({ winters, scale, skewness, kurtosis }) =>
    scale === undefined || kurtosis === undefined
      ? []
      : [{ values: winters, spread: scale, skewness, kurtosis }],
  );
  if (sites.length < neighbours.length) return neighbours;
  const critical = criticalDiscordancy(sites.length);
  const found = discordancy(sites);
  return neighbours.filter((_, i) => found[i]! <= critical);
}

function pooledShape(pool: readonly StationSkewness[], ownWinters: number, pooled: boolean): ShapeEstimate {
  let winters = 0;
  let skewness = 0;
  for (const station of pool) {
    winters += station.winters;
    skewness += station.winters * station.skewness;
  }
  const pooledK = gevShapeFromLSkewness(skewness / winters);
  const precision = 1 / pooledVariance(pool, winters, ownWinters);
  const priorPrecision = 1 / PRIOR_K_SPREAD ** 2;
  const k = (precision * pooledK + priorPrecision * PRIOR_K) / (precision + priorPrecision);
  return {
    k: held(k),
    standardError: 1 / Math.sqrt(precision + priorPrecision),
    basis: pooled ? 'pooled' : 'shrunk',
  };
}

/**
 * Variance of the pooled `k` as an estimate of one place's: sampling, every two stations correlated alike, and the
 * neighbours' true difference, which enters by their share of the weight.
 */
function pooledVariance(pool: readonly StationSkewness[], winters: number, ownWinters: number): number {
  let independent = 0;
  let together = 0;
  for (const station of pool) {
    const part = (station.winters / winters) * sampleShapeError(station.winters);
    independent += part * part;
    together += part;
  }
  const sampling = independent + SKEWNESS_CORRELATION * (together * together - independent);
  return sampling + (NEIGHBOUR_K_SPREAD * (1 - ownWinters / winters)) ** 2;
}

function held(k: number): number {
  return Math.min(LARGEST_K, Math.max(SMALLEST_K, k));
}

/**
 * `k`, lowered where needed so that the record's largest negated value stays possible: the fit's upper end must lie at
 * least a quarter of an L-scale beyond it. Closed form, since the upper end depends on mean, L-scale and `k` alone.
 */
export function shapeThatAllowsRecord(k: number, largest: number, mean: number, lScale: number): number {
  return Math.min(k, largestShapeReaching(largest + 0.25 * lScale, mean, lScale));
}
