import type { Feature, FeatureCollection, Position } from 'geojson';
import { LAKE_RINGS, LAND_RINGS, RIVER_LINES } from './geography.ts';
import { hillOutlines } from './hill-outlines.ts';
import { simplified, type LonLat } from './shoreline.ts';

/** Shores: the distance to the coast is measured on them too. */
const SHORE_TOLERANCE_KM = 0.22;
/** Hills and rivers, which are only looked at: half a pixel where the whole land fills a screen. */
const INLAND_TOLERANCE_KM = 0.35;

/**
 * The map of the invented land as GeoJSON: `properties.kind` is "land", "hill" (with `elevation_m`), "water" or "river",
 * in drawing order; coordinates to 4 decimals, outer rings counter-clockwise and closed.
 */
export function landMap(): FeatureCollection {
  const features: Feature[] = [
    ...LAND_RINGS.map(({ name, points }) => area('land', name, points)),
    ...hillOutlines().map(({ name, elevationM, points }) =>
      area('hill', name, points, { elevation_m: elevationM }),
    ),
    ...RIVER_LINES.map(({ name, points }): Feature => ({
      type: 'Feature',
      properties: { kind: 'river', name, invented: true },
      geometry: { type: 'LineString', coordinates: simplified(points, INLAND_TOLERANCE_KM).map(rounded) },
    })),
    ...LAKE_RINGS.map(({ name, points }) => area('water', name, points)),
  ];
  return { type: 'FeatureCollection', features };
}

function area(kind: string, name: string, ring: readonly LonLat[], extra: object = {}): Feature {
  const points = signedArea(ring) < 0 ? ring.toReversed() : ring;
  const tolerance = kind === 'land' ? SHORE_TOLERANCE_KM : INLAND_TOLERANCE_KM;
  const coordinates = simplified([...points, points[0]], tolerance).map(rounded);
  return {
    type: 'Feature',
    properties: { kind, name, ...extra, invented: true },
    geometry: { type: 'Polygon', coordinates: [coordinates] },
  };
}

function signedArea(ring: readonly LonLat[]): number {
  return ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length];
    return sum + x * nextY - nextX * y;
  }, 0);
}

/** A thousandth of a degree, about 0.1 km: no finer than the tolerance of the lines. */
function rounded([lon, lat]: LonLat): Position {
  return [Math.round(lon * 1e3) / 1e3, Math.round(lat * 1e3) / 1e3];
}
