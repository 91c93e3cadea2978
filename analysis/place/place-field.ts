import { expectedTrend, trendVariances, type TrendPrior } from './climate-trend.ts';
import type { Covariance } from './covariance.ts';
import { Kriging } from './kriging.ts';
import type { StationNetwork } from './station-network.ts';

/** A quantity known at stations and kriged about its trend. */
export class PlaceField {
  readonly #kriging: Kriging;
  readonly #surface: (separationsKm: ArrayLike<number>, row: ArrayLike<number>) => number;

  constructor(
    network: StationNetwork,
    rows: readonly Float64Array[],
    values: Float64Array,
    errorVariance: Float64Array,
    private readonly covariance: Covariance,
    private readonly priors: readonly TrendPrior[],
  ) {
    this.#kriging = new Kriging({
      distancesKm: network.separationsKm,
      trend: Float64Array.from(rows.flatMap((row) => [...row])),
      covariance,
      errorVariance,
      coefficientVariance: trendVariances(priors),
    });
    this.#surface = this.#kriging.surface(
      values.map((value, i) => value - expectedTrend(rows[i], priors)),
      'surface',
    );
  }

  at(separationsKm: ArrayLike<number>, row: Float64Array): number {
    return this.#surface(separationsKm, row) + expectedTrend(row, this.priors);
  }

  /** Expected square of the error at a place, its own peculiarity (the nugget) included. */
  variance(separationsKm: ArrayLike<number>, row: Float64Array): number {
    return this.#kriging.variance(separationsKm, row, 'surface') + this.covariance.nugget;
  }
}
