import { randomStream } from './random-stream.ts';
import {
  drawRiver,
  drawShore,
  KM_PER_DEGREE_LAT,
  KM_PER_DEGREE_LON,
  segmentDistance,
  type LonLat,
} from './shoreline.ts';
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
  return isLand(lat, lon) ? shoreDistanceKm(lat, lon) : 0;
}

/** Distance in km from any point to the nearest sea shore. */
export function shoreDistanceKm(lat: number, lon: number): number {
  let best = Infinity;
  for (const { ring, from, to, box } of SHORE_PIECES) {
    if (boxSquaredKm(box, lat, lon) >= best) continue;
    for (let i = from; i < to; i++) {
      const before = ring[(i + ring.length - 1) % ring.length];
      best = Math.min(best, segmentDistance(before, ring[i], lat, lon).squaredKm);
    }
  }
  return Math.sqrt(best);
}

type Box = readonly [west: number, south: number, east: number, north: number];

/** Segments of a shore that are tried together, so that far ones are passed over by their box alone. */
const PIECE_SEGMENTS = 16;

const SHORE_PIECES = LAND_RINGS.flatMap(({ points: ring }) =>
  Array.from({ length: Math.ceil(ring.length / PIECE_SEGMENTS) }, (_, piece) => {
    const from = piece * PIECE_SEGMENTS;
    const to = Math.min(ring.length, from + PIECE_SEGMENTS);
    const held = [ring[(from + ring.length - 1) % ring.length], ...ring.slice(from, to)];
    const [lons, lats] = [held.map(([lon]) => lon), held.map(([, lat]) => lat)];
    const box: Box = [Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)];
    return { ring, from, to, box };
  }),
);

/** Square of the distance from a point to a box, km²; 0 inside. */
function boxSquaredKm([west, south, east, north]: Box, lat: number, lon: number): number {
  const x = Math.max(0, west - lon, lon - east) * KM_PER_DEGREE_LON;
  const y = Math.max(0, south - lat, lat - north) * KM_PER_DEGREE_LAT;
  return x * x + y * y;
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
