import { distanceKm } from './distance.ts';

export interface Located {
  readonly id: string;
  readonly lat: number;
  readonly lon: number;
}

export interface StationNearby<S extends Located> {
  readonly station: S;
  readonly distanceKm: number;
}

/** Stations by distance from a place, nearest first, ties by id; at most `most` of them, none beyond `withinKm`. */
export function nearestStations<S extends Located>(
  stations: readonly S[],
  place: { readonly lat: number; readonly lon: number },
  most: number,
  withinKm: number,
): StationNearby<S>[] {
  return stations
    .map((station) => ({ station, distanceKm: distanceKm(place, station) }))
    .filter((nearby) => nearby.distanceKm <= withinKm)
    .sort((a, b) => a.distanceKm - b.distanceKm || (a.station.id < b.station.id ? -1 : 1))
    .slice(0, most);
}
