import { minimiseNelderMead } from '../math/nelder-mead.ts';
import { logDeterminant } from '../math/positive-definite.ts';
import type { Covariance, CovarianceKind } from './covariance.ts';
import { stationCovariance } from './station-covariance.ts';
import { keptColumns } from './trend-columns.ts';
import { TrendFit } from './trend-fit.ts';

/** Values of stations, and what is known before the fit. Shapes as in `KrigingNetwork`. */
export interface CovarianceData {
  readonly distancesKm: Float64Array;
  readonly trend: Float64Array;
  readonly values: ArrayLike<number>;
  readonly errorVariance?: ArrayLike<number>;
  readonly coefficientVariance?: ArrayLike<number>;
}

export interface CovarianceFitOptions {
  readonly kind?: CovarianceKind;
  /** Ranges allowed, km. Default: from half the smallest distance above 0 to 3 times the largest. */
  readonly shortestKm?: number;
  readonly longestKm?: number;
  /** Weak expectation of the range: log-normal about `km` with this spread of its logarithm. */
  readonly expectedRange?: { readonly km: number; readonly logSpread: number };
  /** Weak expectation of the nugget's share of the variance: normal about `share`. */
  readonly expectedNugget?: { readonly share: number; readonly spread: number };
}

export interface CovarianceFit {
  readonly covariance: Covariance;
  /** Restricted log-likelihood of the values (no part of the expectations), constants included. */
  readonly logLikelihood: number;
  readonly evaluations: number;
  /** Stations less free trend columns: how much there was to fit by. */
  readonly degreesOfFreedom: number;
}

/** Fewest stations beyond the trend's free columns from which a covariance is fitted. */
export const FEWEST_DEGREES_OF_FREEDOM = 3;
const RANGES_TRIED = 7;
const NUGGET_SHARES_TRIED = [0, 0.15, 0.4, 0.75];
const MOST_EVALUATIONS = 300;

/**
 * Sill, range and nugget by restricted maximum likelihood (Patterson and Thompson 1971; Cressie 1993, section 2.6.1), which
 * takes the trend's uncertainty into account and needs no distance classes: far steadier than a variogram for networks
 * of 5 to 100 stations. A coarse grid over range and nugget's share, then Nelder and Mead. Without known errors and
 * priors the variance follows in closed form; otherwise it is a third unknown. Cost `O(n^3)` a trial, about 100 to 200 trials:
 * for many stations fit a sample of them.
 * @throws RangeError with fewer than 3 stations beyond the trend's columns.
 */
export function fitCovariance(data: CovarianceData, options: CovarianceFitOptions = {}): CovarianceFit {
  const n = data.values.length;
  const p = data.trend.length / n;
  const prior = Array.from({ length: p }, (_, j) => data.coefficientVariance?.[j] ?? Infinity);
  const kept = keptColumns(data.trend, n, prior);
  const free = kept.filter((j) => prior[j] === Infinity).length;
  if (n - free < FEWEST_DEGREES_OF_FREEDOM)
    throw new RangeError(`A covariance can't be fitted to ${n} stations with ${free} trend columns.`);
  const setting: Setting = {
    data,
    kind: options.kind ?? 'exponential',
    n,
    free,
    values: Float64Array.from(data.values),
    columns: kept.map((j) => Float64Array.from({ length: n }, (_, i) => data.trend[i * p + j]!)),
    prior: kept.map((j) => prior[j]!),
    scaleFree: kept.every((j) => prior[j] === Infinity) && !hasErrors(data.errorVariance, n),
  };
  const [shortest, longest] = rangeBounds(data.distancesKm, options);
  const penalty = (logRange: number, share: number): number => {
    const { expectedRange, expectedNugget } = options;
    let sum = 0;
    if (expectedRange) sum += ((logRange - Math.log(expectedRange.km)) / expectedRange.logSpread) ** 2;
    if (expectedNugget) sum += ((share - expectedNugget.share) / expectedNugget.spread) ** 2;
    return sum / 2;
  };
  const held = (logRange: number): number => Math.min(longest, Math.max(shortest, logRange));
  // Unknowns: logarithm of the range, the angle whose squared sine is the nugget's share, logarithm of the variance.
  const cost = (x: Float64Array): number => {
    const logRange = held(x[0]!);
    const share = Math.sin(x[1]!) ** 2;
    const variance = x.length > 2 ? Math.exp(x[2]!) : 1;
    const outside = x[0]! - logRange;
    return (
      -logLikelihood(setting, Math.exp(logRange), share, variance).value +
      penalty(logRange, share) +
      outside * outside
    );
  };
  let start: number[] = [];
  let least = Infinity;
  let evaluations = 0;
  const guess = setting.scaleFree ? [] : [Math.log(spreadOf(setting))];
  for (let i = 0; i < RANGES_TRIED; i++) {
    for (const share of NUGGET_SHARES_TRIED) {
      const logRange = shortest + ((longest - shortest) * i) / (RANGES_TRIED - 1);
      const x = [logRange, Math.asin(Math.sqrt(share)), ...guess];
      const value = cost(Float64Array.from(x));
      evaluations++;
      if (value < least) [least, start] = [value, x];
    }
  }
  if (start.length === 0) throw new RangeError(`No covariance fits the values of these ${n} stations.`);
  const step = [(longest - shortest) / RANGES_TRIED, 0.2, 0.5].slice(0, start.length);
  const found = minimiseNelderMead(cost, start, step, 1e-9, MOST_EVALUATIONS);
  const rangeKm = Math.exp(held(found.at[0]!));
  const share = Math.sin(found.at[1]!) ** 2;
  const trial = found.at.length > 2 ? Math.exp(found.at[2]!) : 1;
  const { value, variance } = logLikelihood(setting, rangeKm, share, trial);
  return {
    covariance: { kind: setting.kind, sill: variance * (1 - share), rangeKm, nugget: variance * share },
    logLikelihood: value,
    evaluations: evaluations + found.evaluations,
    degreesOfFreedom: n - free,
  };
}

interface Setting {
  readonly data: CovarianceData;
  readonly kind: CovarianceKind;
  readonly n: number;
  readonly free: number;
  readonly values: Float64Array;
  readonly columns: readonly Float64Array[];
  readonly prior: readonly number[];
  /** True when all variances grow together, so that the best variance follows from the rest. */
  readonly scaleFree: boolean;
}

/** Restricted log-likelihood, and the variance it is for: the best one when that is free, else the one given. */
function logLikelihood(
  setting: Setting,
  rangeKm: number,
  share: number,
  given: number,
): { value: number; variance: number } {
  const { data, kind, n, free, values, columns, prior, scaleFree } = setting;
  const covariance = { kind, sill: given * (1 - share), rangeKm, nugget: given * share };
  const errors = scaleFree ? undefined : data.errorVariance;
  let fit: TrendFit;
  try {
    fit = new TrendFit(stationCovariance(covariance, data.distancesKm, n, errors), n, columns, prior);
  } catch {
    return { value: -Infinity, variance: given };
  }
  let determinants = logDeterminant(fit.factor, n) + logDeterminant(fit.normalFactor, columns.length);
  for (const variance of prior) if (variance < Infinity) determinants += Math.log(variance);
  const squares = fit.squareSum(values);
  const freedom = n - free;
  if (!scaleFree)
    return {
      value: -0.5 * (freedom * Math.log(2 * Math.PI) + determinants + squares),
      variance: given,
    };
  const variance = squares / freedom;
  return {
    value: -0.5 * (freedom * (Math.log(2 * Math.PI * Math.max(variance, 1e-300)) + 1) + determinants),
    variance,
  };
}

function rangeBounds(
  distancesKm: Float64Array,
  { shortestKm, longestKm }: CovarianceFitOptions,
): [number, number] {
  let near = Infinity;
  let far = 0;
  for (const h of distancesKm) {
    if (h > 0 && h < near) near = h;
    if (h > far) far = h;
  }
  if (far === 0) near = far = 1;
  const shortest = shortestKm ?? near / 2;
  return [Math.log(shortest), Math.log(Math.max(shortest, longestKm ?? 3 * far))];
}

function hasErrors(errorVariance: ArrayLike<number> | undefined, n: number): boolean {
  for (let i = 0; i < n; i++) if ((errorVariance?.[i] ?? 0) > 0) return true;
  return false;
}

/** Mean square of what ordinary least squares leaves: a first guess of the variance. */
function spreadOf({ n, free, values, columns, prior }: Setting): number {
  const identity = new Float64Array(n * n);
  for (let i = 0; i < n; i++) identity[i * n + i] = 1;
  return Math.max(1e-12, new TrendFit(identity, n, columns, prior).squareSum(values) / (n - free));
}
