import { minimiseNewton, newtonWorkspace } from '../math/newton.ts';
import { invertPositiveDefinite } from '../math/positive-definite.ts';
import { colesShape, type Gev } from './gev.ts';
import { gevLikelihood, likelihoodPoint, type LikelihoodPoint } from './gev-likelihood.ts';
import { gevShapeFromLSkewness, gevWithShape } from './gev-l-moments.ts';
import { sampleLMoments } from './l-moments.ts';
import { shapeThatAllowsRecord } from './pooled-shape.ts';

/** A GEV fitted by maximum likelihood. */
export interface LikelihoodFit {
  readonly gev: Gev;
  readonly logLikelihood: number;
  /**
   * Covariance of location, scale and Hosking's k, by rows, from the observed information; null when that has no
   * inverse, as at the edge of what is possible.
   */
  readonly covariance: Float64Array | null;
  /** False when the search ended without a maximum inside: don't use the numbers. */
  readonly converged: boolean;
}

/** Fewest values for a fit by maximum likelihood. */
export const FEWEST_FOR_LIKELIHOOD = 10;

/**
 * Fits a GEV by maximum likelihood (Coles 2001, chapter 3), from the L-moment fit by Newton steps with exact second
 * derivatives.
 * @param values negated winter values, or maxima of any kind.
 * @throws RangeError with fewer than 10 values or when all are equal.
 */
export function fitGevByMaximumLikelihood(values: ArrayLike<number>): LikelihoodFit {
  const y = Float64Array.from(values);
  const x = startingParameters(y);
  const point = likelihoodPoint(3);
  const converged = maximise3(y, x, point);
  const sigma = Math.exp(x[1]!);
  return {
    gev: { location: x[0]!, scale: sigma, k: colesShape(x[2]!) },
    logLikelihood: -point.value,
    covariance: covarianceOf(point, sigma),
    converged,
  };
}

const work3 = newtonWorkspace(3);

function maximise3(y: Float64Array, x: Float64Array, point: LikelihoodPoint): boolean {
  return minimiseNewton((at) => gevLikelihood(y, null, at, point), x, point, work3);
}

/** Location, log scale and xi of the L-moment fit, its shape moved where a value would be impossible. */
export function startingParameters(y: Float64Array): Float64Array {
  if (y.length < FEWEST_FOR_LIKELIHOOD)
    throw new RangeError(
      `Maximum likelihood needs at least ${FEWEST_FOR_LIKELIHOOD} values, got ${y.length}.`,
    );
  const moments = sampleLMoments(y);
  if (!(moments.scale > 0))
    throw new RangeError('Maximum likelihood needs values that differ; all are equal.');
  const { mean, scale } = moments;
  let largest = -Infinity;
  let smallest = Infinity;
  for (const value of y) {
    if (value > largest) largest = value;
    if (value < smallest) smallest = value;
  }
  const skewed = Math.min(0.9, Math.max(-0.9, gevShapeFromLSkewness(moments.skewness)));
  let k = shapeThatAllowsRecord(skewed, largest, mean, scale);
  let gev = gevWithShape(mean, scale, k);
  // A heavy upper tail has a lower end, which the smallest value may lie below.
  while (k < 0 && smallest <= gev.location + gev.scale / k + 0.1 * gev.scale) {
    k = k < -0.01 ? k / 2 : 0;
    gev = gevWithShape(mean, scale, k);
  }
  return Float64Array.of(gev.location, Math.log(gev.scale), colesShape(k));
}

/** Inverse information in location, scale and k. At a maximum a change of variables only rescales it. */
function covarianceOf(point: LikelihoodPoint, sigma: number): Float64Array | null {
  const inverse = point.value === Infinity ? null : invertPositiveDefinite(point.hessian, 3);
  if (!inverse) return null;
  const factor = [1, sigma, -1];
  return inverse.map((c, i) => c * factor[Math.floor(i / 3)]! * factor[i % 3]!);
}

/** Standard errors of location, scale and k (or xi), null where there is no covariance. */
export function standardErrors(fit: LikelihoodFit): { location: number; scale: number; k: number } | null {
  const c = fit.covariance;
  return c && { location: Math.sqrt(c[0]!), scale: Math.sqrt(c[4]!), k: Math.sqrt(c[8]!) };
}
