import { solveLower, solveUpper } from '../math/positive-definite.ts';
import { checkCovariance, correlationAt, type Covariance } from './covariance.ts';
import { stationCovariance } from './station-covariance.ts';
import { keptColumns } from './trend-columns.ts';
import { dot, TrendFit } from './trend-fit.ts';

/** Stations, how they vary together, and what the trend depends on. */
export interface KrigingNetwork {
  /** Distances between the stations, km, n x n by rows. */
  readonly distancesKm: Float64Array;
  /** What the trend depends on, n x p by rows; column 0 all 1 for ordinary kriging. */
  readonly trend: Float64Array;
  readonly covariance: Covariance;
  /** Known variance of each station's error (a mean of few winters is less sure), beside the nugget; 0 if absent. */
  readonly errorVariance?: ArrayLike<number>;
  /** Prior variance of each of the p coefficients about 0; Infinity (the default) where nothing is known. */
  readonly coefficientVariance?: ArrayLike<number>;
}

/**
 * What is estimated: `place`, the true value at the point, with the nugget as real variation from place to place (known
 * only right on a single station); or `surface`, the smooth part that neighbours share, to which the nugget is noise.
 */
export type KrigingTarget = 'place' | 'surface';

/** Leave-one-out results, one a station: what is found there by the others. */
export interface LeftOut {
  /** Observed minus estimated; NaN where a station can't be estimated without itself (it alone carries a trend column). */
  readonly residuals: Float64Array;
  /** Expected square of that difference, with nugget and the station's own error; Infinity where there is no estimate. */
  readonly variances: Float64Array;
}

/** Nearer than this is on the station, km. */
const ON_STATION_KM = 1e-6;

/**
 * Universal kriging: the best linear unbiased estimate of a value at a point from the values of stations, with a linear
 * trend whose coefficients come from the same data (Cressie 1993, section 3.4; ordinary kriging when the trend is a constant).
 * Built once for a network in `O(n^3)`, then `O(n^2)` a point for weights and variance, `O(n)` a point for one set of values.
 *
 * - Without nugget and error it is exact at stations. With a nugget and target `place` it is exact too, but jumps there.
 * - Trend columns that the network can't bear are dropped, see {@link keptColumns}.
 * - Coincident stations are allowed, see {@link stationCovariance}.
 */
export class Kriging {
  readonly size: number;
  /** Columns of the trend in use; the others have the coefficient 0. */
  readonly keptColumns: readonly number[];
  private readonly fit: TrendFit;
  private readonly covariance: Covariance;
  private readonly columnCount: number;
  private readonly own: Float64Array;
  private readonly scratch: Float64Array;

  /** @throws RangeError when sizes don't match, a variance is negative or there is no station. */
  constructor(network: KrigingNetwork) {
    const { distancesKm, trend, covariance, errorVariance, coefficientVariance } = network;
    const n = Math.round(Math.sqrt(distancesKm.length));
    if (n === 0 || n * n !== distancesKm.length)
      throw new RangeError(
        `Distances must be a square of at least one station, not ${distancesKm.length} numbers.`,
      );
    const p = trend.length / n;
    if (!Number.isInteger(p) || p === 0)
      throw new RangeError(`A trend of ${trend.length} numbers doesn't fit ${n} stations.`);
    checkCovariance(covariance);
    for (let i = 0; errorVariance && i < n; i++)
      if (!(errorVariance[i]! >= 0))
        throw new RangeError(`Station ${i}: error variance ${errorVariance[i]}.`);
    this.size = n;
    this.columnCount = p;
    this.covariance = covariance;
    const prior = Array.from({ length: p }, (_, j) => coefficientVariance?.[j] ?? Infinity);
    this.keptColumns = keptColumns(trend, n, prior);
    this.fit = new TrendFit(
      stationCovariance(covariance, distancesKm, n, errorVariance),
      n,
      this.keptColumns.map((j) => Float64Array.from({ length: n }, (_, i) => trend[i * p + j]!)),
      this.keptColumns.map((j) => prior[j]!),
    );
    this.own = new Float64Array(n);
    this.scratch = new Float64Array(n);
  }

  /**
   * Weights of the stations' values in the estimate at a point. They add up to 1 when the trend has a free constant.
   * @param distancesKm from the point to each station, n.
   * @param trendRow the trend's columns at the point, p.
   */
  weights(
    distancesKm: ArrayLike<number>,
    trendRow: ArrayLike<number>,
    target: KrigingTarget = 'place',
  ): Float64Array {
    const whitened = this.whitenedShared(distancesKm, target).slice();
    this.fit.addTrend(whitened, this.trendGap(whitened, trendRow).multipliers, 1);
    solveUpper(this.fit.factor, this.size, whitened, whitened);
    return whitened;
  }

  /** Estimate at a point from one set of station values, by {@link weights}. */
  estimate(
    values: ArrayLike<number>,
    distancesKm: ArrayLike<number>,
    trendRow: ArrayLike<number>,
    target: KrigingTarget = 'place',
  ): number {
    const weights = this.weights(distancesKm, trendRow, target);
    let sum = 0;
    for (let i = 0; i < this.size; i++) sum += weights[i]! * values[i]!;
    return sum;
  }

  /** Expected square of estimate minus truth at a point, at least 0: kriging variance with the trend's own uncertainty. */
  variance(
    distancesKm: ArrayLike<number>,
    trendRow: ArrayLike<number>,
    target: KrigingTarget = 'place',
  ): number {
    const whitened = this.whitenedShared(distancesKm, target);
    const { gap, multipliers } = this.trendGap(whitened, trendRow);
    const { sill, nugget } = this.covariance;
    const whole = target === 'place' ? sill + nugget : sill;
    return Math.max(0, whole - dot(whitened, whitened) + dot(gap, multipliers));
  }

  /** The estimate as a function of the point, for many points and one set of station values: `O(n)` a point. */
  surface(
    values: ArrayLike<number>,
    target: KrigingTarget = 'place',
  ): (distancesKm: ArrayLike<number>, trendRow: ArrayLike<number>) => number {
    const data = Float64Array.from(values);
    const coefficients = this.fit.coefficients(data);
    const dual = this.fit.dualWeights(data);
    return (distancesKm, trendRow) => {
      let sum = dot(dual, this.shared(distancesKm, target));
      for (let j = 0; j < coefficients.length; j++) sum += coefficients[j]! * trendRow[this.keptColumns[j]!]!;
      return sum;
    };
  }

  /** Trend coefficients by generalised least squares, p; 0 for columns that were dropped. */
  coefficients(values: ArrayLike<number>): Float64Array {
    const all = new Float64Array(this.columnCount);
    this.fit.coefficients(Float64Array.from(values)).forEach((b, j) => {
      all[this.keptColumns[j]!] = b;
    });
    return all;
  }

  /**
   * What the other stations say of each, without building n networks (Dubrule 1983, Mathematical Geology 15(6)): with
   * `Q = C^-1 - C^-1 X M^-1 X' C^-1` the difference is `(Q z)_i / Q_ii` and its variance `1 / Q_ii`. The covariance stays
   * as it is, the trend is found without the station.
   */
  leaveOneOut(values: ArrayLike<number>): LeftOut {
    const n = this.size;
    const residuals = this.fit.dualWeights(Float64Array.from(values));
    const variances = new Float64Array(n);
    const unit = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      unit.fill(0);
      unit[i] = 1;
      solveLower(this.fit.factor, n, unit, unit);
      const alone = dot(unit, unit);
      const along = this.fit.alongTrend(unit);
      const precision = alone - dot(along, this.fit.solveNormal(along.slice()));
      const known = precision > 1e-9 * alone;
      residuals[i] = known ? residuals[i]! / precision : NaN;
      variances[i] = known ? 1 / precision : Infinity;
    }
    return { residuals, variances };
  }

  /** Covariance of the point's target with each station. */
  private shared(distancesKm: ArrayLike<number>, target: KrigingTarget): Float64Array {
    const { kind, sill, rangeKm, nugget } = this.covariance;
    let on = -1;
    let count = 0;
    for (let i = 0; i < this.size; i++) {
      const h = distancesKm[i]!;
      this.own[i] = sill * correlationAt(kind, h, rangeKm);
      if (h > ON_STATION_KM) continue;
      on = i;
      count++;
    }
    // Of several stations at the point none can say that its own nugget is the point's.
    if (target === 'place' && count === 1) this.own[on]! += nugget;
    return this.own;
  }

  private whitenedShared(distancesKm: ArrayLike<number>, target: KrigingTarget): Float64Array {
    solveLower(this.fit.factor, this.size, this.shared(distancesKm, target), this.scratch);
    return this.scratch;
  }

  /** What the stations' shared part leaves of the point's trend row, and the multipliers that make up for it. */
  private trendGap(
    whitened: Float64Array,
    trendRow: ArrayLike<number>,
  ): { gap: Float64Array; multipliers: Float64Array } {
    const gap = this.fit.alongTrend(whitened);
    for (let j = 0; j < gap.length; j++) gap[j] = trendRow[this.keptColumns[j]!]! - gap[j]!;
    return { gap, multipliers: this.fit.solveNormal(gap.slice()) };
  }
}
