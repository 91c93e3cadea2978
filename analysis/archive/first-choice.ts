import { INDEX_MIN_YEARS } from './station-index.ts';
import type { NearbyStation } from './stations-nearby.ts';

/** Quarters of the compass that the first choice looks into. */
const QUARTERS = 4;

/**
 * Ids of the stations ticked at first, at most `most`. Only stations whose minima and maxima share 20 years or more are
 * taken, in the order given (near and long ones first): the first of each quarter of the compass (north, east, south,
 * west), so that the place lies among them, and then the first of the rest.
 */
export function firstChoice(stations: readonly NearbyStation[], most: number): ReadonlySet<string> {
  const good = stations.filter(({ sharedYears }) => sharedYears >= INDEX_MIN_YEARS);
  const ofQuarter = new Map<number, NearbyStation>();
  for (const station of good) {
    const quarter = quarterOf(station.bearing);
    if (!ofQuarter.has(quarter)) ofQuarter.set(quarter, station);
  }
  const around = [...ofQuarter.values()];
  const rest = good.filter((station) => !around.includes(station));
  return new Set([...around, ...rest].slice(0, most).map(({ id }) => id));
}

/** 0 north (315 to 45 degrees), 1 east, 2 south, 3 west. */
function quarterOf(bearing: number): number {
  return Math.floor(((bearing + 360 / QUARTERS / 2) % 360) / (360 / QUARTERS));
}
