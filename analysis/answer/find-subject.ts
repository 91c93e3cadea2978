import { nearestStations } from '../place/nearest-stations.ts';
import { stationForPlace } from '../place/station-for-place.ts';
import { InputError } from '../records/input-error.ts';
import type { PackStation } from '../records/pack.ts';
import type { WinterTable } from '../records/winters.ts';
import type { Subject } from './subject.ts';

/** Stations whose skewness helps to fix the shape of a fit: at most so many, none farther (km). */
const POOLED_NEIGHBOURS = 8;
const POOLED_WITHIN_KM = 150;

/** What someone asks about: a station, or a point with a name of its own. */
export type PlaceRequest =
  | { readonly by: 'station'; readonly id: string }
  | {
      readonly by: 'point';
      readonly label: string;
      readonly lat: number;
      readonly lon: number;
      readonly elevationM: number | null;
    };

/** Where the winters of a pack's stations come from: files for a command, tiles over HTTP for the page. */
export interface WinterSource {
  readonly stations: readonly PackStation[];
  winters(station: PackStation): Promise<WinterTable>;
}

/**
 * The subject of an answer, and the station whose nights are its nights. A point is answered from the nearest station with a long record, and the notes say so.
 * @throws InputError when the station is unknown or no station is near enough
 */
export async function findSubject(
  source: WinterSource,
  request: PlaceRequest,
): Promise<{ readonly subject: Subject; readonly stationId: string }> {
  const { station, notes } = standIn(source.stations, request);
  const others = source.stations.filter((other) => other.id !== station.id);
  const near = nearestStations(others, station, POOLED_NEIGHBOURS, POOLED_WITHIN_KM);
  const [winters, ...neighbours] = await Promise.all(
    [station, ...near.map((neighbour) => neighbour.station)].map((entry) => source.winters(entry)),
  );
  const label = request.by === 'station' ? station.name : `${request.label}: station ${station.name}`;
  const subject = {
    place: {
      label,
      lat: station.lat,
      lon: station.lon,
      elevation_m: station.elevation_m,
      basis: 'station' as const,
    },
    winters,
    neighbours,
    notes,
  };
  return { subject, stationId: station.id };
}

function standIn(
  stations: readonly PackStation[],
  request: PlaceRequest,
): { station: PackStation; notes: readonly string[] } {
  if (request.by === 'station') {
    const station = stations.find((entry) => entry.id === request.id);
    if (!station) {
      throw new InputError(
        `station "${request.id}" is not in the pack, which has ${stations.length} stations`,
      );
    }
    return { station, notes: [] };
  }
  const { station, distanceKm } = stationForPlace(stations, request);
  const away = `${distanceKm < 10 ? distanceKm.toFixed(1) : Math.round(distanceKm)} km away`;
  const height =
    request.elevationM !== null && station.elevation_m !== null
      ? ` and ${heightWords(request.elevationM - station.elevation_m)}`
      : '';
  return {
    station,
    notes: [
      `These are the winters of station ${station.name}, ${away}${height}, not of ${request.label} itself: ` +
        `expect a difference of 1 to 2 °C on a calm night, more in hollows, near water or in a town.`,
    ],
  };
}

function heightWords(differenceM: number): string {
  const metres = Math.round(Math.abs(differenceM));
  if (metres < 5) return 'at about the same height';
  return differenceM > 0 ? `${metres} m lower than the point` : `${metres} m higher than the point`;
}
