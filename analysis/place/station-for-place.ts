import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import { nearestStations, type Located, type StationNearby } from './nearest-stations.ts';

/** Beyond this a station says too little about a place to be offered as its record, km. */
export const MAX_STATION_KM = 100;
/** Winters from which a fit is made; a nearer station with fewer gives way to one with enough (design 3.5). */
const MIN_WINTERS_FOR_FIT = 20;

/**
 * The station whose record stands for a place that has none: the nearest with at least 20 complete winters, else the
 * nearest with any, else the nearest.
 * @throws InputError when no station lies within 100 km
 */
export function stationForPlace<S extends Located & { readonly winters: { readonly complete: number } }>(
  stations: readonly S[],
  place: { readonly lat: number; readonly lon: number },
): StationNearby<S> {
  const near = nearestStations(stations, place, stations.length, MAX_STATION_KM);
  const best =
    near.find(({ station }) => station.winters.complete >= MIN_WINTERS_FOR_FIT) ??
    near.find(({ station }) => station.winters.complete > 0) ??
    near.at(0);
  if (best) return best;
  const where = `${place.lat}, ${place.lon}`;
  const [nearest] = nearestStations(stations, place, 1, Infinity);
  if (!nearest) throw new InputError(t`the pack has no station`);
  throw new InputError(
    t`${where} is ${Math.round(nearest.distanceKm)} km from the nearest station (${nearest.station.id}); the limit is ${MAX_STATION_KM} km`,
  );
}
