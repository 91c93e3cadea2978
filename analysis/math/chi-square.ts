import { logGamma } from './gamma.ts';
import { findRoot } from './root.ts';

/**
 * Chance that a chi-square variable with `degrees` degrees of freedom is at or below `x`: the regularised lower
 * incomplete gamma function by its series, or by its continued fraction in the upper tail.
 * @throws RangeError when `degrees` is not above 0.
 */
export function chiSquareCdf(x: number, degrees: number): number {
  if (!(degrees > 0)) throw new RangeError(`Degrees of freedom must be above 0, not ${degrees}.`);
  if (!(x > 0)) return 0;
  const a = degrees / 2;
  const half = x / 2;
  const front = Math.exp(a * Math.log(half) - half - logGamma(a));
  if (half < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let i = 1; term > sum * 1e-17; i++) {
      term *= half / (a + i);
      sum += term;
    }
    return front * sum;
  }
  let fraction = half + 400 - a;
  for (let i = 200; i > 0; i--)
    fraction = half + 2 * i - 1 - a - (i * (i - a)) / (fraction === 0 ? 1e-300 : fraction);
  return 1 - front / fraction;
}

/**
 * The `x` with `chiSquareCdf(x, degrees) = p`, for 0 <= p < 1.
 * @throws RangeError when `p` is outside [0, 1).
 */
export function chiSquareQuantile(p: number, degrees: number): number {
  if (!(p >= 0 && p < 1)) throw new RangeError(`A chance must lie in 0 to below 1, not ${p}.`);
  if (p === 0) return 0;
  let upper = degrees + 10;
  while (chiSquareCdf(upper, degrees) < p) upper *= 2;
  return findRoot((x) => chiSquareCdf(x, degrees) - p, 0, upper, 1e-14);
}
