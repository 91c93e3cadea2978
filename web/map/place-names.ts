import type { Feature, FeatureCollection, Point, Position } from 'geojson';

/** A town as `places.json` has it; rank 1 is the most important. */
export interface MapTown {
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
  readonly rank: number;
}

/** Centre and area of a ring, degrees and square degrees (only compared with each other). */
function ringCentre(ring: readonly Position[]): { centre: Position; area: number } {
  let [twice, x, y] = [0, 0, 0];
  const [x0, y0] = ring[0];
  for (let i = 0; i + 1 < ring.length; i++) {
    const [ax, ay] = [ring[i][0] - x0, ring[i][1] - y0];
    const [bx, by] = [ring[i + 1][0] - x0, ring[i + 1][1] - y0];
    const cross = ax * by - bx * ay;
    twice += cross;
    x += (ax + bx) * cross;
    y += (ay + by) * cross;
  }
  if (twice === 0) return { centre: ring[0], area: 0 };
  return { centre: [x0 + x / (3 * twice), y0 + y / (3 * twice)], area: Math.abs(twice) / 2 };
}

/** Outlines cut to a pack's box may be empty: such a ring is left out. */
function outerRings({ geometry }: Feature): Position[][] {
  const polygons =
    geometry.type === 'Polygon'
      ? [geometry.coordinates]
      : geometry.type === 'MultiPolygon'
        ? geometry.coordinates
        : [];
  return polygons.flatMap(([outer]) => (outer && outer.length > 0 ? [outer] : []));
}

/** Land larger than this share of the largest land is a mainland and goes without a name. */
const ISLAND_SHARE = 0.02;

/**
 * Names to set on the map as points: towns, one name for all outlines of a hill or lake (at its largest), small islands.
 * The name of a mainland is left out: it would sit under everything. Rivers are named along their lines.
 */
export function placeNames(
  land: FeatureCollection | null,
  towns: readonly MapTown[],
): FeatureCollection<Point> {
  const largest = new Map<string, { kind: string; name: string; centre: Position; area: number }>();
  let mainland = 0;
  for (const feature of land?.features ?? []) {
    const { kind, name } = feature.properties ?? {};
    for (const ring of outerRings(feature)) {
      const { centre, area } = ringCentre(ring);
      if (kind === 'land') mainland = Math.max(mainland, area);
      if (!name || !['land', 'hill', 'water'].includes(kind)) continue;
      const key = `${kind}/${name}`;
      if ((largest.get(key)?.area ?? -1) < area) largest.set(key, { kind, name, centre, area });
    }
  }
  const natural = [...largest.values()]
    .filter(({ kind, area }) => kind !== 'land' || area < ISLAND_SHARE * mainland)
    .map(({ kind, name, centre }) => named(kind === 'land' ? 'island' : kind, name, 9, centre));
  return {
    type: 'FeatureCollection',
    features: [...natural, ...towns.map(({ name, lat, lon, rank }) => named('town', name, rank, [lon, lat]))],
  };
}

function named(kind: string, name: string, rank: number, coordinates: Position): Feature<Point> {
  return { type: 'Feature', properties: { kind, name, rank }, geometry: { type: 'Point', coordinates } };
}
