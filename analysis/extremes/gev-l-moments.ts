import { EULER_GAMMA, gamma } from '../math/gamma.ts';
import type { Gev } from './gev.ts';
import type { LMoments } from './l-moments.ts';

const LN2 = Math.LN2;
const LN3 = Math.log(3);
const GUMBEL_BELOW = 1e-7;

/** L-skewness of a GEV of shape `k` (> -1): `2 (1 - 3^-k)/(1 - 2^-k) - 3` (Hosking and Wallis 1997). */
export function gevLSkewness(k: number): number {
  if (Math.abs(k) < GUMBEL_BELOW) return (2 * LN3) / LN2 - 3 - k * LN3 * (LN3 / LN2 - 1);
  return (2 * Math.expm1(-k * LN3)) / Math.expm1(-k * LN2) - 3;
}

/**
 * Shape `k` of the GEV with a given L-skewness, solved exactly: Hosking's rational approximation (S42) polished by
 * Newton steps on {@link gevLSkewness}.
 * @param skewness strictly between -1 and 1.
 * @throws RangeError otherwise.
 */
export function gevShapeFromLSkewness(skewness: number): number {
  if (!(skewness > -1 && skewness < 1))
    throw new RangeError(`An L-skewness must lie strictly between -1 and 1, not ${skewness}.`);
  let k = rationalStart(skewness);
  for (let i = 0; i < 20; i++) {
    const h = 1e-5;
    const slope = (gevLSkewness(k + h) - gevLSkewness(k - h)) / (2 * h);
    const step = (gevLSkewness(k) - skewness) / slope;
    k -= step;
    if (Math.abs(step) < 1e-13 * (1 + Math.abs(k))) break;
  }
  return k;
}

function rationalStart(t: number): number {
  if (t > 0) {
    const z = 1 - t;
    return (
      (-1 + z * (1.59921491 + z * (-0.48832213 + z * 0.01573152))) / (1 + z * (-0.64363929 + z * 0.08985247))
    );
  }
  if (t >= -0.8)
    return (
      (0.2837753 + t * (-1.21096399 + t * (-2.50728214 + t * (-1.13455566 - t * 0.07138022)))) /
      (1 + t * (2.06189696 + t * (1.31912239 + t * 0.25077104)))
    );
  // For large k the skewness is near -1 + 2 * 2^-k.
  return 1 - Math.log(1 + t) / LN2;
}

/** The GEV of shape `k` (> -1) whose mean and L-scale are given (S42). */
export function gevWithShape(mean: number, lScale: number, k: number): Gev {
  if (Math.abs(k) < GUMBEL_BELOW) {
    const scale = lScale / LN2;
    return { location: mean - EULER_GAMMA * scale, scale, k };
  }
  const g = gamma(1 + k);
  const scale = (lScale * k) / (-Math.expm1(-k * LN2) * g);
  return { location: mean - (scale * (1 - g)) / k, scale, k };
}

/**
 * The GEV with a sample's mean, L-scale and L-skewness.
 * @throws RangeError when the L-scale is not above 0 (all values equal).
 */
export function fitGevByLMoments(moments: LMoments): Gev {
  if (!(moments.scale > 0)) throw new RangeError(`A GEV needs values that differ: L-scale ${moments.scale}.`);
  return gevWithShape(moments.mean, moments.scale, gevShapeFromLSkewness(moments.skewness));
}

/**
 * Largest `k` for which the GEV with this mean and L-scale still reaches `y`: its upper end is
 * `mean + lScale/(1 - 2^-k)`, whatever the location. Infinity when even a far end stays beyond `y`.
 */
export function largestShapeReaching(y: number, mean: number, lScale: number): number {
  const share = lScale / (y - mean);
  return y <= mean || share >= 1 ? Infinity : -Math.log1p(-share) / LN2;
}
