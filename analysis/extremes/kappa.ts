import { logGamma } from '../math/gamma.ts';
import { minimiseNelderMead } from '../math/nelder-mead.ts';
import type { LMoments } from './l-moments.ts';

/**
 * Four-parameter kappa distribution (Hosking 1994, IBM Journal of Research and Development 38(3); Hosking and Wallis 1997,
 * appendix A.10). `h = 1` is the generalised Pareto, 0 the GEV, -1 the generalised logistic distribution.
 */
export interface Kappa {
  readonly location: number;
  readonly scale: number;
  readonly k: number;
  readonly h: number;
}

const TINY = 1e-9;

/** Value not exceeded with chance `p` (0 to 1): `location + scale/k (1 - ((1 - p^h)/h)^k)`. */
export function kappaQuantile(p: number, { location, scale, k, h }: Kappa): number {
  const logP = Math.log(p);
  const y = Math.abs(h) < TINY ? -logP : -Math.expm1(h * logP) / h;
  const logY = Math.log(y);
  return location + scale * (Math.abs(k) < TINY ? -logY : -Math.expm1(k * logY) / k);
}

/** Nearer to 0 than this `k` isn't used: the formulas divide by it. */
const SMALL_K = 1e-4;

/** L-moments of a kappa distribution with location 0 and scale 1, or null where they don't exist. */
export function unitKappaLMoments(k: number, h: number): LMoments | null {
  if (k <= -1 || (h < 0 && k * h <= -1)) return null;
  if (Math.abs(k) >= SMALL_K) return momentsFromFactors(k, h);
  const below = momentsFromFactors(-SMALL_K, h);
  const above = momentsFromFactors(SMALL_K, h);
  const between = (of: keyof LMoments): number =>
    below[of] + ((above[of] - below[of]) * (k + SMALL_K)) / (2 * SMALL_K);
  return {
    mean: between('mean'),
    scale: between('scale'),
    skewness: between('skewness'),
    kurtosis: between('kurtosis'),
  };
}

function momentsFromFactors(k: number, h: number): LMoments {
  const log1 = logMomentFactor(1, k, h);
  // The others relative to the first, so that none overflows where only ratios are asked for.
  const [g2, g3, g4] = [2, 3, 4].map((r) => Math.exp(logMomentFactor(r, k, h) - log1)) as [
    number,
    number,
    number,
  ];
  return {
    mean: -Math.expm1(log1) / k,
    scale: (Math.exp(log1) * (1 - g2)) / k,
    skewness: (-1 + 3 * g2 - 2 * g3) / (1 - g2),
    kurtosis: (1 - 6 * g2 + 10 * g3 - 5 * g4) / (1 - g2),
  };
}

/** Logarithm of `g_r`, with which the r-th probability-weighted moment is `(1 - g_r)/(r k)` (A.10 of the book). */
function logMomentFactor(r: number, k: number, h: number): number {
  const start = logGamma(1 + k);
  if (h === 0) return start - k * Math.log(r);
  const from = h > 0 ? r / h : -r / h - k;
  return start + Math.log(r) - (1 + k) * Math.log(Math.abs(h)) - logGammaRise(from, 1 + k);
}

/** Logarithm of `gamma(z + a)/gamma(z)`; by its series for large `z`, where the difference would lose its digits. */
function logGammaRise(z: number, a: number): number {
  if (z < 1000 * (1 + a * a)) return logGamma(z + a) - logGamma(z);
  const b = a * (a - 1);
  return a * Math.log(z) + (b / (2 * z)) * (1 - (2 * a - 1) / (6 * z) + b / (6 * z * z));
}

/**
 * The kappa distribution with given L-moments, and how it was found: `kappa`, all four hold; `generalised logistic`, the
 * L-kurtosis is above what any kappa of this skewness reaches, and `h = -1` comes nearest (Hosking and Wallis 1997, 5.2.3).
 * @throws RangeError when no distribution has these L-moments: the scale is not above 0, a ratio is out of bounds.
 */
export function fitKappa(moments: LMoments): { kappa: Kappa; basis: 'kappa' | 'generalised logistic' } {
  const { mean, scale, skewness, kurtosis } = moments;
  if (!(scale > 0)) throw new RangeError(`A kappa distribution needs values that differ: L-scale ${scale}.`);
  if (!(Math.abs(skewness) < 1 && kurtosis < 1 && kurtosis >= (5 * skewness * skewness - 1) / 4))
    throw new RangeError(`No distribution has L-skewness ${skewness} together with L-kurtosis ${kurtosis}.`);
  if (kurtosis >= (1 + 5 * skewness * skewness) / 6)
    return { kappa: scaled(-skewness, -1, mean, scale), basis: 'generalised logistic' };
  const miss = (x: Float64Array): number => {
    const unit = x[1]! > -1 ? unitKappaLMoments(x[0]!, x[1]!) : null;
    return unit ? (unit.skewness - skewness) ** 2 + (unit.kurtosis - kurtosis) ** 2 : Infinity;
  };
  let best: { readonly at: ArrayLike<number>; readonly value: number } = { at: [0, 0], value: Infinity };
  for (const h of [-0.5, 0.2, 1, 3]) {
    for (const k of [-0.3, 0.1, 0.6]) {
      if (miss(Float64Array.of(k, h)) === Infinity || best.value < 1e-16) continue;
      const found = minimiseNelderMead(miss, [k, h], [0.1, 0.2], 1e-18, 1500);
      if (found.value < best.value) best = found;
    }
  }
  if (!(best.value < 1e-10))
    throw new RangeError(
      `No kappa distribution found with L-skewness ${skewness} and L-kurtosis ${kurtosis}.`,
    );
  return { kappa: scaled(best.at[0]!, best.at[1]!, mean, scale), basis: 'kappa' };
}

function scaled(k: number, h: number, mean: number, lScale: number): Kappa {
  const unit = unitKappaLMoments(k, h);
  if (!unit) throw new RangeError(`A kappa distribution with k ${k} and h ${h} has no mean.`);
  const scale = lScale / unit.scale;
  return { location: mean - scale * unit.mean, scale, k, h };
}
