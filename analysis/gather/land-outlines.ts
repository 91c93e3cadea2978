import type { Feature, FeatureCollection, MultiPolygon, Position } from 'geojson';

/** Rings of land or of holes in it, closed, degrees; a ring may run on beyond ±180 where it crosses the antimeridian. */
export type LandRings = readonly (readonly Position[])[];

/** The rings of the land in outlines for a map: features whose `properties.kind` is "land". */
export function ringsOfOutlines({ features }: FeatureCollection): LandRings {
  return features.flatMap(({ geometry, properties }) => {
    if (properties?.kind !== 'land') return [];
    if (geometry.type === 'Polygon') return geometry.coordinates.map(unrolled);
    return geometry.type === 'MultiPolygon' ? geometry.coordinates.flat().map(unrolled) : [];
  });
}

/** The rings of all land polygons. */
export function ringsOfLand({ geometry }: Feature<MultiPolygon>): LandRings {
  return geometry.coordinates.flat().map(unrolled);
}

/** West, south, east, north of a ring, degrees as the ring has them. */
type RingBox = readonly [west: number, south: number, east: number, north: number];
/** Kept as long as their rings: the world's have 400 000 points, which one look is enough for. */
const boxes = new WeakMap<readonly Position[], RingBox>();

/** The box around a ring. */
export function boxOfRing(ring: readonly Position[]): RingBox {
  let box = boxes.get(ring);
  if (!box) boxes.set(ring, (box = findBox(ring)));
  return box;
}

function findBox(ring: readonly Position[]): RingBox {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < ring.length; i++) {
    const point = ring[i];
    west = Math.min(west, point[0]);
    south = Math.min(south, point[1]);
    east = Math.max(east, point[0]);
    north = Math.max(north, point[1]);
  }
  return [west, south, east, north];
}

/**
 * A ring without leaps: where it steps over the antimeridian, longitudes run on beyond 180. A ring around a pole is closed by
 * way of the pole.
 */
function unrolled(ring: readonly Position[]): readonly Position[] {
  if (!leaps(ring)) return ring;
  let turn = 0;
  const points = ring.map(([lon, lat], i): Position => {
    const before = i === 0 ? lon : ring[i - 1][0];
    if (Math.abs(lon - before) > 180) turn += lon < before ? 360 : -360;
    return [lon + turn, lat];
  });
  if (turn === 0) return points;
  const poleLat = points[0][1] < 0 ? -90 : 90;
  return [...points, [points.at(-1)![0], poleLat], [points[0][0], poleLat], points[0]];
}

function leaps(ring: readonly Position[]): boolean {
  const [west, , east] = boxOfRing(ring);
  if (east - west <= 180) return false;
  return ring.some(([lon], i) => i > 0 && Math.abs(lon - ring[i - 1][0]) > 180);
}
