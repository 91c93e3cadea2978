import { CoastDistance, KM_PER_DEGREE, STEP_KM, type ShorePart } from './coast-distance.ts';
import type { LandRings } from './land-outlines.ts';

/** Room around the places within which shores are looked for first, and how much wider each time none was near enough, degrees. */
const FIRST_DEGREES = 2;
const WIDER = 4;
/** From here on all shores of the world are looked at. */
const WHOLE_DEGREES = 60;

interface Place {
  readonly lat: number;
  readonly lon: number;
}

/**
 * Distances in km from the places given to the nearest shore, just as {@link CoastDistance} measures them against all shores of
 * the world, at a tenth of the work for places near each other: pieces of shore far from all places are left out, and where
 * what was found isn't surely nearer than anything left out, more of them are taken in.
 */
export function shoresNear(rings: LandRings, places: readonly Place[]): (place: Place) => number {
  const found = new Map<string, number>();
  let open = places;
  for (let degrees = FIRST_DEGREES; open.length > 0; degrees *= WIDER) {
    const whole = degrees >= WHOLE_DEGREES;
    const coast = new CoastDistance(rings, whole ? null : partAround(open, degrees));
    open = open.filter((place) => {
      const km = coast.of(place);
      const sure = whole || km + 2 * STEP_KM < sureKm(place, degrees);
      if (sure) found.set(keyOf(place), km);
      return !sure;
    });
  }
  return (place) => {
    const km = found.get(keyOf(place));
    if (km === undefined) throw new Error(`${place.lat}, ${place.lon} is none of the places asked about.`);
    return km;
  };
}

/** The shores that meet the box around the places, so many degrees wider on each side. */
function partAround(places: readonly Place[], degrees: number): ShorePart {
  let [south, north] = [Infinity, -Infinity];
  for (const { lat } of places) [south, north] = [Math.min(south, lat), Math.max(north, lat)];
  // Seen from the first place, so that the antimeridian is nothing special.
  const from = places[0].lon;
  let [west, east] = [0, 0];
  for (const { lon } of places) {
    const away = turned(lon - from);
    [west, east] = [Math.min(west, away), Math.max(east, away)];
  }
  const middle = from + (west + east) / 2;
  const half = (east - west) / 2 + degrees;
  return {
    lowestLat: south,
    highestLat: north,
    counts: (pieceWest, pieceSouth, pieceEast, pieceNorth) => {
      if (pieceNorth < south - degrees || pieceSouth > north + degrees) return false;
      const pieceHalf = (pieceEast - pieceWest) / 2;
      return Math.abs(turned(pieceWest + pieceHalf - middle)) <= half + pieceHalf;
    },
  };
}

/** What is left out is farther from the place than this, km: beyond a parallel or a meridian so many degrees away. */
function sureKm({ lat }: Place, degrees: number): number {
  const radians = Math.PI / 180;
  const toMeridian = Math.asin(Math.cos(lat * radians) * Math.sin(degrees * radians)) / radians;
  return KM_PER_DEGREE * Math.min(degrees, toMeridian);
}

/** Degrees of longitude from -180 to 180. */
function turned(degrees: number): number {
  return ((((degrees + 180) % 360) + 360) % 360) - 180;
}

function keyOf({ lat, lon }: Place): string {
  return `${lat} ${lon}`;
}
