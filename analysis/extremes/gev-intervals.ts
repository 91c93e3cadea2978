import { chiSquareQuantile } from '../math/chi-square.ts';
import { minimiseNelderMead } from '../math/nelder-mead.ts';
import { normalQuantile } from '../math/normal.ts';
import { findRoot } from '../math/root.ts';
import { gevReturnLevel, gevStandardised } from './gev.ts';
import { gevLikelihood, likelihoodPoint } from './gev-likelihood.ts';
import type { LikelihoodFit } from './gev-maximum-likelihood.ts';

/** An estimate with the interval it was asked for. */
export interface Interval {
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
}

/** Variance of the level of return period `period` by the delta method (Coles 2001, 3.3.3). */
export function returnLevelVariance(fit: LikelihoodFit, period: number): number {
  if (!fit.covariance) throw new RangeError('This fit has no covariance, so no delta interval.');
  const g = -Math.log(-Math.log1p(-1 / period));
  const { scale, k } = fit.gev;
  const byK =
    Math.abs(k * g) < 1e-4
      ? -g * g * (0.5 - k * g * (1 / 3 - (k * g) / 8))
      : (g * Math.exp(-k * g) - gevStandardised(g, k)) / k;
  const slope = [1, gevStandardised(g, k), scale * byK];
  let variance = 0;
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++) variance += slope[i]! * slope[j]! * fit.covariance[3 * i + j]!;
  return variance;
}

/** Symmetric interval of a return level; too short and too symmetric for long periods, where the profile is better. */
export function deltaInterval(fit: LikelihoodFit, period: number, level = 0.9): Interval {
  const estimate = gevReturnLevel(period, fit.gev);
  const half = normalQuantile((1 + level) / 2) * Math.sqrt(returnLevelVariance(fit, period));
  return { estimate, low: estimate - half, high: estimate + half };
}

/**
 * Profile-likelihood interval of a return level (Coles 2001, 3.3.4): the levels for which the best log-likelihood of
 * the rest lies within half a chi-square quantile of the maximum.
 */
export function profileReturnLevel(
  values: ArrayLike<number>,
  fit: LikelihoodFit,
  period: number,
  level = 0.9,
): Interval {
  const g = -Math.log(-Math.log1p(-1 / period));
  return profile(
    values,
    fit,
    level,
    gevReturnLevel(period, fit.gev),
    Math.sqrt(returnLevelVariance(fit, period)),
    {
      start: [Math.log(fit.gev.scale), -fit.gev.k],
      step: [0.1, 0.05],
      place: (fixed, free, full) => {
        full[0] = fixed - Math.exp(free[0]!) * gevStandardised(g, -free[1]!);
        full[1] = free[0]!;
        full[2] = free[1]!;
      },
    },
  );
}

/** Profile-likelihood interval of Hosking's k. */
export function profileShape(values: ArrayLike<number>, fit: LikelihoodFit, level = 0.9): Interval {
  if (!fit.covariance) throw new RangeError('This fit has no covariance, so no first step for a profile.');
  const { location, scale, k } = fit.gev;
  return profile(values, fit, level, k, Math.sqrt(fit.covariance[8]!), {
    start: [location, Math.log(scale)],
    step: [0.1 * scale, 0.1],
    place: (fixed, free, full) => {
      full[0] = free[0]!;
      full[1] = free[1]!;
      full[2] = -fixed;
    },
  });
}

interface Profiled {
  readonly start: readonly number[];
  readonly step: readonly number[];
  /** Writes location, log scale and xi from the fixed quantity and the two that are free. */
  place(fixed: number, free: Float64Array, full: Float64Array): void;
}

function profile(
  values: ArrayLike<number>,
  fit: LikelihoodFit,
  level: number,
  estimate: number,
  standardError: number,
  { start, step, place }: Profiled,
): Interval {
  const y = Float64Array.from(values);
  const point = likelihoodPoint(3);
  const full = new Float64Array(3);
  const allowed = -fit.logLikelihood + chiSquareQuantile(level, 1) / 2;
  const side = (direction: number): number => {
    let near: ArrayLike<number> = start;
    const excess = (fixed: number): number => {
      const evaluate = (free: Float64Array): number => {
        place(fixed, free, full);
        return gevLikelihood(y, null, full, point);
      };
      let from = near;
      if (evaluate(Float64Array.from(from)) === Infinity) from = start;
      if (evaluate(Float64Array.from(from)) === Infinity) return Number.MAX_VALUE;
      const best = minimiseNelderMead(evaluate, from, step, 1e-12);
      near = best.at;
      return best.value - allowed;
    };
    let inside = estimate;
    let outside = estimate + direction * standardError;
    for (let i = 0; excess(outside) < 0; i++) {
      if (i > 200) return direction * Infinity;
      inside = outside;
      outside += 0.5 * direction * standardError;
    }
    return findRoot(excess, inside, outside, 1e-9);
  };
  return { estimate, low: side(-1), high: side(1) };
}
