import type { PlaceRequest } from '../../analysis/answer/find-subject.ts';
import { t } from '../../analysis/language/t.ts';
import { nearestStations, type StationNearby } from '../../analysis/place/nearest-stations.ts';
import { MAX_STATION_KM, stationForPlace } from '../../analysis/place/station-for-place.ts';
import type { PackStation } from '../../analysis/records/pack.ts';
import type { OpenPack } from '../data/open-pack.ts';
import { formatPoint } from '../format/numbers.ts';
import type { Place } from './chosen.ts';
import { locateCode, locateStation } from './find-place.ts';

/** A place of the reader with the station that stands for it. */
export interface ResolvedPlace {
  readonly kind: 'station' | 'postcode' | 'point';
  readonly label: string;
  readonly lat: number;
  readonly lon: number;
  readonly station: PackStation;
  /** From the place to that station, km; 0 when the place is the station. */
  readonly distanceKm: number;
  /** The stations around, nearest first, the chosen one among them. */
  readonly nearby: readonly StationNearby<PackStation>[];
  /** What to ask the worker about. */
  readonly request: PlaceRequest;
}

export type PlaceResolution =
  | { readonly found: ResolvedPlace; readonly problem: null }
  | { readonly found: null; readonly problem: string };

const NEARBY_SHOWN = 6;

function around(
  pack: OpenPack,
  kind: ResolvedPlace['kind'],
  spot: { readonly label: string; readonly lat: number; readonly lon: number },
  fixed: PackStation | null,
  elevationM: number | null = null,
): PlaceResolution {
  const nearby = nearestStations(pack.stations, spot, NEARBY_SHOWN, MAX_STATION_KM);
  if (fixed === null && nearby.length === 0) {
    const [nearest] = nearestStations(pack.stations, spot, 1, Infinity);
    return {
      found: null,
      problem: t`${spot.label} is ${Math.round(nearest.distanceKm)} km from the nearest station of this pack; beyond ${MAX_STATION_KM} km a station says too little.`,
    };
  }
  const chosen = fixed ? { station: fixed, distanceKm: 0 } : stationForPlace(pack.stations, spot);
  const listed = nearby.some(({ station }) => station.id === chosen.station.id)
    ? nearby
    : [...nearby, chosen];
  const request: PlaceRequest = fixed
    ? { by: 'station', id: fixed.id }
    : { by: 'point', ...spot, elevationM };
  return { found: { kind, ...spot, ...chosen, nearby: listed, request }, problem: null };
}

/** The place the page starts with: the first town if the pack names any, else the station with the most winters. */
export function defaultPlace(pack: OpenPack): Place {
  const [town] = [...pack.places.towns].sort((a, b) => a.rank - b.rank);
  if (town) return { by: 'postcode', code: town.name };
  const longest = pack.stations.reduce((best, station) =>
    station.winters.complete > best.winters.complete ? station : best,
  );
  return { by: 'station', id: longest.id };
}

/** Find the station for a place, or say in one sentence why there is none. */
export function resolvePlace(place: Place, pack: OpenPack): PlaceResolution {
  if (place.by === 'station') {
    const station = locateStation(place.id, pack.stations);
    if (!station) return { found: null, problem: t`There is no station “${place.id}” in this pack.` };
    return around(pack, 'station', { label: station.name, lat: station.lat, lon: station.lon }, station);
  }
  if (place.by === 'point') {
    const { lat, lon } = place;
    return around(pack, 'point', { label: formatPoint(lat, lon), lat, lon }, null, place.elevationM);
  }
  const spot = locateCode(place.code, pack.places);
  if (!spot)
    return { found: null, problem: t`“${place.code}” is not among the postcodes and towns of this pack.` };
  return around(pack, 'postcode', spot, null, place.elevationM);
}
