import { bboxClip } from '@turf/turf';
import type { Feature, FeatureCollection, MultiPolygon, Polygon, Position } from 'geojson';
import { boxOfRing } from './land-outlines.ts';
import type { PackBox } from './pack-box.ts';

/** Room around the stations in `land.json`, degrees. */
const MARGIN_DEGREES = 1.5;
/** Up to this box (sides in degrees multiplied) the map gets the finer outlines; beyond it they would weigh too much. */
const FINE_BOX = 450;

/** Scale of the world's outlines that suits a pack's map: 1:10 million for a region, 1:50 million for a continent. */
export function scaleForMap(box: PackBox): '10m' | '50m' {
  const area = (box[2] - box[0] + 2 * MARGIN_DEGREES) * (box[3] - box[1] + 2 * MARGIN_DEGREES);
  return area <= FINE_BOX ? '10m' : '50m';
}

/** Land inside the box and a margin, for the map of a pack. */
export function clipLand(
  land: Feature<MultiPolygon>,
  [west, south, east, north]: PackBox,
): FeatureCollection {
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

function meets(ring: readonly Position[], [west, south, east, north]: PackBox): boolean {
  const [w, s, e, n] = boxOfRing(ring);
  return w <= east && e >= west && s <= north && n >= south;
}
