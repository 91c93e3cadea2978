import type { Feature, MultiPolygon } from 'geojson';
import { clipLand } from './clip-land.ts';
import { CoastDistance } from './coast-distance.ts';
import { ringsOfLand, ringsOfOutlines } from './land-outlines.ts';
import { widened, type PackBox } from './pack-box.ts';

/** Room around the box within which shores are looked for first, degrees. */
const NEAR_DEGREES = 10;
const KM_PER_DEGREE = 111.195;

/**
 * Distances in km from places in a box to the nearest shore of the world, as {@link CoastDistance} gives them for all its land,
 * but made of the land around the box alone where that is sure to hold the nearest shore: a tenth of the work.
 */
export function shoresNear(
  land: Feature<MultiPolygon>,
  box: PackBox,
): (place: { readonly lat: number; readonly lon: number }) => number {
  let all: CoastDistance | null = null;
  const ofAll = (): CoastDistance => (all ??= new CoastDistance(ringsOfLand(land)));
  const around = widened(box, NEAR_DEGREES);
  const [west, south, east, north] = around;
  // Beyond the antimeridian and about the poles land goes on where clipping ends.
  if (west < -178 || east > 178 || south < -80 || north > 80) return (place) => ofAll().of(place);
  const near = new CoastDistance(ringsOfOutlines(clipLand(land, around)));
  const steepest = Math.cos((Math.max(Math.abs(south), Math.abs(north)) * Math.PI) / 180);
  // Nearer than this, what was found is a shore and not the edge where the land was cut off.
  const sureKm = NEAR_DEGREES * KM_PER_DEGREE * steepest;
  return (place) => {
    const km = near.of(place);
    return km < sureKm ? km : ofAll().of(place);
  };
}
