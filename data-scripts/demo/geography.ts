import { randomStream } from './random-stream.ts';
import { drawRiver, drawShore, segmentDistance, type LonLat } from './shoreline.ts';
import { ISLANDS, MAIN_SHORE } from './skeleton-shores.ts';
import { LAKES, RIVERS } from './skeleton-waters.ts';

/** The seed of the land, apart from the weather's so that a new weather keeps the map. */
const LAND_SEED = 1951;

/** A shape with its name. */
export interface NamedLine {
  readonly name: string;
  readonly points: readonly LonLat[];
}

/** Main island first, then the lesser ones; rings are not closed (the last point joins the first). */
export const LAND_RINGS: readonly NamedLine[] = [MAIN_SHORE, ...ISLANDS].map((shore) => ({
  name: shore.name,
  points: drawShore(shore, randomStream(LAND_SEED, `shore ${shore.name}`)),
}));

/** Lakes as rings that are not closed. */
export const LAKE_RINGS: readonly NamedLine[] = LAKES.map((shore) => ({
  name: shore.name,
  points: drawShore(shore, randomStream(LAND_SEED, `lake ${shore.name}`)),
}));

/** Rivers from source to mouth. */
export const RIVER_LINES: readonly NamedLine[] = RIVERS.map((river) => ({
  name: river.name,
  points: drawRiver(river, randomStream(LAND_SEED, `river ${river.name}`)),
}));

/** Whether a point lies on land (lakes count as land). */
export function isLand(lat: number, lon: number): boolean {
  return LAND_RINGS.some((ring) => ringContains(ring.points, lat, lon));
}

/** Distance in km from a point on land to the nearest sea shore; 0 on the sea. */
export function coastDistanceKm(lat: number, lon: number): number {
  if (!isLand(lat, lon)) return 0;
  return Math.min(...LAND_RINGS.map((ring) => lineDistanceKm(ring.points, lat, lon, true)));
}

/** Whether a ring that is not closed contains a point (even-odd rule). */
export function ringContains(ring: readonly LonLat[], lat: number, lon: number): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [xi, yi] = ring[i];
    const [xj, yj] = ring[j];
    if (yi > lat !== yj > lat && lon < ((xj - xi) * (lat - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

/** Distance in km from a point to a line, or to a ring when `closed`. */
export function lineDistanceKm(line: readonly LonLat[], lat: number, lon: number, closed: boolean): number {
  let best = Infinity;
  for (let i = closed ? 0 : 1; i < line.length; i++) {
    const from = line[(i + line.length - 1) % line.length];
    best = Math.min(best, segmentDistance(from, line[i], lat, lon).squaredKm);
  }
  return Math.sqrt(best);
}
