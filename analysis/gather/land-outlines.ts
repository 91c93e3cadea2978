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

/**
 * A ring without leaps: where it steps over the antimeridian, longitudes run on beyond 180. A ring around a pole is closed by
 * way of the pole.
 */
function unrolled(ring: readonly Position[]): readonly Position[] {
  let turn = 0;
  let leaps = false;
  const points = ring.map(([lon, lat], i): Position => {
    const before = i === 0 ? lon : ring[i - 1][0];
    if (Math.abs(lon - before) > 180) {
      turn += lon < before ? 360 : -360;
      leaps = true;
    }
    return [lon + turn, lat];
  });
  if (!leaps) return ring;
  if (turn === 0) return points;
  const poleLat = points[0][1] < 0 ? -90 : 90;
  return [...points, [points.at(-1)![0], poleLat], [points[0][0], poleLat], points[0]];
}
