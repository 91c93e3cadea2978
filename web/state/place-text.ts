import { CORNERS_MAX, ELEVATION_MAX_M, ELEVATION_MIN_M, type Corner, type Place } from './chosen.ts';

/** Ids of stations: letters, figures, dots, hyphens, underscores. */
const ID = /^[\w.-]{1,64}$/;
/** A postcode or place name as people type it, and a height in metres behind a comma. */
const CODE = /^([\p{L}\p{N} .'-]{1,64})(?:,(-?\d{1,4}))?$/u;
const POINT = /^(-?\d{1,2}(?:\.\d{1,6})?),(-?\d{1,3}(?:\.\d{1,6})?)(?:,(-?\d{1,4}))?$/;
/** Corners of an area are told in steps of this many degrees, about 11 m. */
const GRAIN = 1e-4;

export const PLACE_KEYS = ['station', 'postcode', 'at'] as const;
export type PlaceKey = (typeof PLACE_KEYS)[number];

/** `{elevationM}` for text in range, `{}` without text, `null` for a height no land has. */
function readHeight(text: string | undefined): { elevationM?: number } | null {
  if (text === undefined) return {};
  const elevationM = Number(text);
  return elevationM >= ELEVATION_MIN_M && elevationM <= ELEVATION_MAX_M ? { elevationM } : null;
}

function onGlobe({ lat, lon }: Corner): boolean {
  return Math.abs(lat) <= 90 && Math.abs(lon) <= 180;
}

/** `station=ID`, `postcode=CODE[,HEIGHT_M]`, `at=LAT,LON[,HEIGHT_M]`; `null` when it makes no sense. */
export function readPlace(key: PlaceKey, text: string): Place | null {
  if (key === 'station') return ID.test(text) ? { by: 'station', id: text } : null;
  if (key === 'postcode') {
    const [, code, height] = CODE.exec(text) ?? [];
    const high = code === undefined ? null : readHeight(height);
    return high && { by: 'postcode', code, ...high };
  }
  const [, lat, lon, height] = POINT.exec(text) ?? [];
  const high = lat === undefined ? null : readHeight(height);
  const place = high && ({ by: 'point', lat: Number(lat), lon: Number(lon), ...high } as const);
  return place && onGlobe(place) ? place : null;
}

/** A place as a key of the query and its value. */
export function writePlace(place: Place): [PlaceKey, string] {
  if (place.by === 'station') return ['station', place.id];
  const height = place.elevationM === undefined ? '' : `,${place.elevationM}`;
  if (place.by === 'postcode') return ['postcode', place.code + height];
  return ['at', `${Number(place.lat.toFixed(4))},${Number(place.lon.toFixed(4))}${height}`];
}

/** A pinned place: `at:31.1,-42`, `postcode:SC 101`, `station:ID`. */
export function writePin(place: Place): string {
  return writePlace(place).join(':');
}

/** The way back; `null` when it makes no sense. */
export function readPin(text: string): Place | null {
  const cut = text.indexOf(':');
  const key = PLACE_KEYS.find((entry) => entry === text.slice(0, Math.max(0, cut)));
  return key ? readPlace(key, text.slice(cut + 1)) : null;
}

const inGrain = (degrees: number): number => Math.round(degrees / GRAIN);
const inDegrees = (steps: number): number => Number((steps * GRAIN).toFixed(4));

/** The first corner in degrees, then each step to the next in base 36: `31.1,-42_2s,0_0,-2s`. */
export function writeArea(corners: readonly Corner[]): string {
  const steps = corners.map(({ lat, lon }) => [inGrain(lat), inGrain(lon)]);
  return steps
    .map(([lat, lon], i) =>
      i === 0
        ? `${inDegrees(lat)},${inDegrees(lon)}`
        : `${(lat - steps[i - 1][0]).toString(36)},${(lon - steps[i - 1][1]).toString(36)}`,
    )
    .join('_');
}

/** The way back; `null` when it makes no sense. */
export function readArea(text: string): readonly Corner[] | null {
  const [first, ...steps] = text.split('_');
  const start = readPlace('at', first);
  if (start?.by !== 'point' || start.elevationM !== undefined) return null;
  if (steps.length < 2 || steps.length >= CORNERS_MAX) return null;
  let [lat, lon] = [inGrain(start.lat), inGrain(start.lon)];
  const corners: Corner[] = [{ lat: inDegrees(lat), lon: inDegrees(lon) }];
  for (const step of steps) {
    if (!/^-?[0-9a-z]{1,5},-?[0-9a-z]{1,5}$/.test(step)) return null;
    const [north, east] = step.split(',').map((part) => Number.parseInt(part, 36));
    lat += north;
    lon += east;
    corners.push({ lat: inDegrees(lat), lon: inDegrees(lon) });
  }
  return corners.every(onGlobe) ? corners : null;
}
