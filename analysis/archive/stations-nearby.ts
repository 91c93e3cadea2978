import { distanceKm } from '../place/distance.ts';
import type { LocatedStation } from '../records/station.ts';
import { elevationAt, type StationIndex } from './station-index.ts';
import { stationRank } from './station-rank.ts';

/** A station of the archive near a place, with what the lists tell of its record. How complete it is they don't tell. */
export interface NearbyStation extends LocatedStation {
  readonly distanceKm: number;
  /** Direction from the place to the station, degrees from north by east, 0 to 360. */
  readonly bearing: number;
  /** First and last year of minima. */
  readonly tmin: readonly [first: number, last: number];
  /** First and last year of maxima, null where there are none. */
  readonly tmax: readonly [first: number, last: number] | null;
  /** Years from the first to the last that has both minima and maxima; 0 where they never meet. */
  readonly sharedYears: number;
  /** Size of the record as far as years and elements tell, bytes: an estimate, rather too large. */
  readonly expectedBytes: number;
}

/** Length of a row of a record with its line end, such as `USW00012916,19600101,TMIN,-22,,,X,2400`. */
const ROW_BYTES = 36;
const KM_PER_DEGREE = 111.195;

/** Stations of the index within `km` of the place, near and long ones first (see `station-rank.ts`), ties by id. */
export function stationsNearby(
  index: StationIndex,
  place: { readonly lat: number; readonly lon: number },
  km: number,
): readonly NearbyStation[] {
  const [ids, names] = [index.ids.split('\n'), index.names.split('\n')];
  const reach = (km / KM_PER_DEGREE + 0.01) * 1e4;
  const found: NearbyStation[] = [];
  for (let at = 0; at < index.count; at++) {
    if (Math.abs(index.lat[at]! - place.lat * 1e4) > reach) continue;
    const [lat, lon] = [index.lat[at]! / 1e4, index.lon[at]! / 1e4];
    const away = distanceKm(place, { lat, lon });
    if (away > km) continue;
    const tmin = [index.tminFirst[at]!, index.tminLast[at]!] as const;
    const tmax = index.tmaxFirst[at]! > 0 ? ([index.tmaxFirst[at]!, index.tmaxLast[at]!] as const) : null;
    found.push({
      id: ids[at]!,
      name: names[at]!,
      lat,
      lon,
      elevationM: elevationAt(index, at),
      distanceKm: away,
      bearing: bearing(place, { lat, lon }),
      tmin,
      tmax,
      sharedYears: tmax ? Math.max(0, Math.min(tmin[1], tmax[1]) - Math.max(tmin[0], tmax[0]) + 1) : 0,
      expectedBytes: index.elementYears[at]! * 365 * ROW_BYTES,
    });
  }
  return found.sort((a, b) => rank(a) - rank(b) || (a.id < b.id ? -1 : 1));
}

function rank({ distanceKm, tmin }: NearbyStation): number {
  return stationRank(distanceKm, tmin[1] - tmin[0] + 1);
}

/** Direction of the great circle from one place to another, degrees from north by east, 0 to 360. */
function bearing(from: { lat: number; lon: number }, to: { lat: number; lon: number }): number {
  const radians = Math.PI / 180;
  const [phi1, phi2, turn] = [from.lat * radians, to.lat * radians, (to.lon - from.lon) * radians];
  const east = Math.sin(turn) * Math.cos(phi2);
  const north = Math.cos(phi1) * Math.sin(phi2) - Math.sin(phi1) * Math.cos(phi2) * Math.cos(turn);
  return (Math.atan2(east, north) / radians + 360) % 360;
}
