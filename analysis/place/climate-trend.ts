import { heightAroundM } from './height-around.ts';
import type { Site } from './site.ts';

/** Distance over which the sea's warmth wears off to 1/e, km. Between 10 and 30 the Spanish network can't choose. */
export const COAST_REACH_KM = 20;

/** What is believed of the trend before any station is seen: coefficient and standard deviation of a column of {@link trendRow}. */
export interface TrendPrior {
  readonly mean: number;
  readonly spread: number;
}

/**
 * Trend of a station's mean winter value, °C. Height: the standard atmosphere's -6.5 °C/km (ISO 2533); sea and latitude
 * are design choices, wide enough that a network of ten stations or more finds its own. Slopes are milder than hollows of
 * their height: by 3.2 °C a kilometre on the Trentino network (standard error 0.9), by 1.6 on the Spanish (2.1).
 */
export const MEAN_TREND: readonly TrendPrior[] = [
  { mean: 0, spread: Infinity },
  { mean: -6.5, spread: 2 },
  { mean: 2, spread: 3 },
  { mean: -0.8, spread: 0.4 },
  { mean: 2, spread: 2 },
];

/** Trend of the logarithm of the L-scale: none expected. */
export const SCALE_TREND: readonly TrendPrior[] = [
  { mean: 0, spread: Infinity },
  { mean: 0, spread: 0.15 },
  { mean: 0, spread: 0.3 },
  { mean: 0, spread: 0.05 },
  { mean: 0, spread: 0.1 },
];

/**
 * The trend's columns at a site, in order: constant, height in km, nearness of the sea (0-1), degrees towards the pole, height
 * above the stations around in km.
 * @param origin latitude counted from, and the height taken where a site's own is unknown
 * @param stations whose heights tell whether the site lies high or low in its surroundings
 */
export function trendRow(
  site: Site,
  origin: { readonly lat: number; readonly elevationM: number },
  stations: readonly Site[],
): Float64Array {
  return Float64Array.of(
    1,
    (site.elevationM ?? origin.elevationM) / 1000,
    site.coastKm === null ? 0 : Math.exp(-site.coastKm / COAST_REACH_KM),
    Math.abs(site.lat) - Math.abs(origin.lat),
    heightAroundM(site, stations) / 1000,
  );
}

/** The part of a value that the priors alone expect. */
export function expectedTrend(row: Float64Array, priors: readonly TrendPrior[]): number {
  return priors.reduce((sum, prior, j) => sum + prior.mean * row[j], 0);
}

/** Variances of the coefficients about their expectation, as kriging takes them. */
export function trendVariances(priors: readonly TrendPrior[]): number[] {
  return priors.map((prior) => prior.spread ** 2);
}
