/** How correlation falls with distance: see {@link correlationAt}. */
export type CovarianceKind = 'exponential' | 'spherical';

/**
 * Covariance of a quantity between two places, by distance alone (isotropic, second-order stationary). A plain object, so
 * that it can be stored and sent to a worker. Variances are in the square of the quantity's unit.
 */
export interface Covariance {
  readonly kind: CovarianceKind;
  /** Variance of the part that neighbours share (geostatistics: partial sill), at least 0. */
  readonly sill: number;
  /** Range parameter, km, above 0: the spherical kind is uncorrelated from there on, the exponential at 5 % at 3 ranges. */
  readonly rangeKm: number;
  /** Variance of what no neighbour shows: variation between stations closer than any two are, at least 0. */
  readonly nugget: number;
}

/**
 * Correlation of the shared part at distance `h`: exponential `exp(-h/r)`; spherical `1 - 1.5 h/r + 0.5 (h/r)^3` within
 * `r`, 0 beyond (Cressie 1993, Statistics for Spatial Data, section 2.3.1; Webster and Oliver 2007, Geostatistics for
 * Environmental Scientists, chapter 5). Both are valid on the plane. On the sphere too, with great-circle distances
 * (Gneiting 2013, Bernoulli 19(4)).
 */
export function correlationAt(kind: CovarianceKind, hKm: number, rangeKm: number): number {
  const share = hKm / rangeKm;
  if (kind === 'exponential') return Math.exp(-share);
  return share < 1 ? 1 - share * (1.5 - 0.5 * share * share) : 0;
}

/** Covariance of the shared part at distance `h`; the nugget is no part of it, not even at 0. */
export function sharedCovariance(covariance: Covariance, hKm: number): number {
  return covariance.sill * correlationAt(covariance.kind, hKm, covariance.rangeKm);
}

/** Half the mean squared difference of two places `h` apart: 0 at `h = 0`, else nugget plus the sill's lost part. */
export function semivariance(covariance: Covariance, hKm: number): number {
  if (hKm === 0) return 0;
  const { kind, sill, rangeKm, nugget } = covariance;
  return nugget + sill * (1 - correlationAt(kind, hKm, rangeKm));
}

/** @throws RangeError when a variance is negative, the range is not above 0, or either is not finite. */
export function checkCovariance({ sill, rangeKm, nugget }: Covariance): void {
  if (!(sill >= 0 && sill < Infinity)) throw new RangeError(`A sill must be 0 or more, not ${sill}.`);
  if (!(nugget >= 0 && nugget < Infinity)) throw new RangeError(`A nugget must be 0 or more, not ${nugget}.`);
  if (!(rangeKm > 0 && rangeKm < Infinity))
    throw new RangeError(`A range must be above 0 km, not ${rangeKm}.`);
}
