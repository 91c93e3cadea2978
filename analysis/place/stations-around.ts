import type { PackStation } from '../records/pack.ts';
import { tileCentre, tileOf } from '../records/winter-tile.ts';
import { distanceKm } from './distance.ts';
import { FEWEST_WINTERS_OF_MEMBER } from './station-network.ts';

/** A point is told of when a station that takes part lies this near, km. */
export const REACH_KM = 100;
/** Stations this far from the middle of a point's tile take part: reach of its corners and beyond, km. */
const AROUND_KM = 350;
/** At most so many, the nearest to the middle of the tile. */
const MOST_STATIONS = 120;

/**
 * The stations that tell about a point: those around its tile, in the order of their ids, so that all points of a tile
 * share one model. Stations across the equator have their winters in other months and take no part.
 */
export function stationsAround<S extends PackStation>(
  stations: readonly S[],
  point: { lat: number; lon: number },
): S[] {
  const centre = tileCentre(tileOf(point.lat, point.lon));
  const south = point.lat < 0;
  return stations
    .filter((station) => station.winters.complete >= FEWEST_WINTERS_OF_MEMBER && station.lat < 0 === south)
    .map((station) => ({ station, km: distanceKm(station, centre) }))
    .filter(({ km }) => km <= AROUND_KM)
    .sort((a, b) => a.km - b.km || (a.station.id < b.station.id ? -1 : 1))
    .slice(0, MOST_STATIONS)
    .map(({ station }) => station)
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}
