import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { bboxClip } from '@turf/turf';
import type { Feature, FeatureCollection, MultiPolygon, Polygon, Position } from 'geojson';
import { feature } from 'topojson-client';
import type { Topology } from 'topojson-specification';

/** Room around the stations in `land.json`, degrees. */
const MARGIN_DEGREES = 1.5;
/** Up to this box (sides in degrees multiplied) the map gets the finer outlines; beyond it they would weigh too much. */
const FINE_BOX = 450;

type Box = readonly [number, number, number, number];
type Scale = '10m' | '50m';

const read = new Map<Scale, Feature<MultiPolygon>>();

/** Land of the world at 1:10 or 1:50 million (Natural Earth by way of world-atlas, public domain). */
export function worldLand(scale: Scale = '10m'): Feature<MultiPolygon> {
  let land = read.get(scale);
  if (!land) {
    const file = createRequire(import.meta.url).resolve(`world-atlas/land-${scale}.json`);
    const topology = JSON.parse(readFileSync(file, 'utf8')) as Topology;
    const found = feature(topology, topology.objects.land);
    [land] = ('features' in found ? found.features : [found]) as Feature<MultiPolygon>[];
    read.set(scale, land);
  }
  return land;
}

/** Outlines for the map of a pack: fine ones for a region, plainer ones for a continent. */
export function landForMap(box: Box): FeatureCollection {
  const fine = (box[2] - box[0] + 2 * MARGIN_DEGREES) * (box[3] - box[1] + 2 * MARGIN_DEGREES) <= FINE_BOX;
  return clipLand(worldLand(fine ? '10m' : '50m'), box);
}

/** Land inside the box and a margin, for the map of a pack. */
export function clipLand(land: Feature<MultiPolygon>, [west, south, east, north]: Box): FeatureCollection {
  const box: [number, number, number, number] = [
    Math.max(-180, west - MARGIN_DEGREES),
    Math.max(-90, south - MARGIN_DEGREES),
    Math.min(180, east + MARGIN_DEGREES),
    Math.min(90, north + MARGIN_DEGREES),
  ];
  const near = land.geometry.coordinates.filter(([outer]) => meets(outer, box));
  const clipped = bboxClip({ type: 'MultiPolygon', coordinates: near }, box) as Feature<
    Polygon | MultiPolygon
  >;
  const { geometry } = clipped;
  const polygons = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  // Clipping leaves an empty polygon for each that lies outside the box.
  const coordinates = polygons.filter((rings) => rings.length > 0 && rings[0].length > 0);
  const features: Feature<MultiPolygon>[] =
    coordinates.length === 0
      ? []
      : [{ type: 'Feature', properties: { kind: 'land' }, geometry: { type: 'MultiPolygon', coordinates } }];
  return { type: 'FeatureCollection', features };
}

function meets(ring: readonly Position[], [west, south, east, north]: Box): boolean {
  let [w, s, e, n] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of ring) {
    w = Math.min(w, x);
    e = Math.max(e, x);
    s = Math.min(s, y);
    n = Math.max(n, y);
  }
  return w <= east && e >= west && s <= north && n >= south;
}
