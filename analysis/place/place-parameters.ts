import type { PackPlaceErrors, PackPlaceModel } from '../records/pack.ts';
import type { Covariance } from './covariance.ts';

/** Correlation of standardised winter anomalies: `share * exp(-h / rangeKm)` between two places, 1 at one place. */
export interface AnomalyCorrelation {
  /** Part of an anomaly that neighbours share, 0-1. */
  readonly share: number;
  readonly rangeKm: number;
}

/** How winters vary over the land of a pack: fitted when the pack is built, written into `pack.json`. */
export interface PlaceParameters extends PackPlaceModel {
  /** Station mean about its trend, °C². */
  readonly mean: Covariance;
  /** Logarithm of the L-scale about its trend. */
  readonly logScale: Covariance;
  readonly anomaly: AnomalyCorrelation;
  /** False where there were too few stations to fit and the usual figures stand in. */
  readonly fitted: boolean;
}

/**
 * Errors met over errors promised where no stations were left out to tell: as promised; and where it is colder than thought,
 * winters vary more (-0.3 to -0.6 on all networks at hand).
 */
export const USUAL_ERRORS: PackPlaceErrors = { mean: 1, logScale: 1, correlation: -0.4 };

/**
 * Stand in where a network is too small to be fitted: between what the Spanish, the Trentino and the corn belt's networks
 * give (data-scripts/calibrate/README.md).
 */
export const USUAL_PARAMETERS: PlaceParameters = {
  mean: { kind: 'exponential', sill: 2.5, rangeKm: 200, nugget: 1 },
  logScale: { kind: 'exponential', sill: 0.03, rangeKm: 250, nugget: 0.008 },
  anomaly: { share: 0.8, rangeKm: 1000 },
  fitted: false,
};
