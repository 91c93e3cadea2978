import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { LocatedStation, Station } from '../records/station.ts';
import { distanceKm } from '../place/distance.ts';

/** Two files may place a station this far apart before it is taken for a conflict, km. */
const SAME_PLACE_KM = 5;

/** Puts together what files and the station list say of each station; the list wins. */
export class StationRegister {
  readonly #seen = new Map<string, Station>();

  constructor(private readonly listed: ReadonlyMap<string, Station>) {}

  /** @throws InputError when two files place one station far apart and the list doesn't settle it */
  note(station: Station, file: string): void {
    const known = this.#seen.get(station.id);
    if (!known) {
      this.#seen.set(station.id, station);
      return;
    }
    const settled = this.listed.get(station.id)?.lat != null;
    if (!settled && isLocated(known) && isLocated(station)) {
      const apart = distanceKm(known, station);
      if (apart > SAME_PLACE_KM) {
        throw new InputError(
          t`${file}: station ${station.id} lies at ${station.lat}, ${station.lon} but at ${known.lat}, ${known.lon} in an earlier file, ${Math.round(apart)} km away; the limit is ${SAME_PLACE_KM} km, settle it by a list of stations.`,
        );
      }
    }
    this.#seen.set(station.id, merged(known, station));
  }

  /** The station with coordinates, `null` when nobody told them. */
  located(id: string): LocatedStation | null {
    const station = merged(this.listed.get(id), this.#seen.get(id)!);
    return isLocated(station) ? station : null;
  }

  /** Sentence when the list moves a station away from where its file puts it. */
  moved(id: string): string | null {
    const [listed, seen] = [this.listed.get(id), this.#seen.get(id)];
    if (!listed || !seen || !isLocated(listed) || !isLocated(seen)) return null;
    const apart = distanceKm(listed, seen);
    if (apart <= SAME_PLACE_KM) return null;
    return t`Station ${id}: the station list puts it ${Math.round(apart)} km from where its file says (${seen.lat}, ${seen.lon}); the list was followed.`;
  }
}

function merged(first: Station | undefined, second: Station): Station {
  if (!first) return second;
  return {
    id: second.id,
    name: first.name || second.name || second.id,
    lat: first.lat ?? second.lat,
    lon: first.lon ?? second.lon,
    elevationM: first.elevationM ?? second.elevationM,
  };
}

function isLocated(station: Station): station is LocatedStation {
  return station.lat !== null && station.lon !== null;
}
