import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { bboxClip } from '@turf/turf';
import type { Feature, FeatureCollection, MultiPolygon, Polygon, Position } from 'geojson';
import { around } from 'geokdbush';
import KDBush from 'kdbush';
import { feature } from 'topojson-client';
import type { Topology } from 'topojson-specification';
import { distanceKm } from '../../analysis/place/distance.ts';

/** Longest step between the points that stand for the coast, km: the error of a coast distance stays below half of it. */
const COAST_STEP_KM = 4;
/** Room around the stations in `land.json`, degrees. */
const MARGIN_DEGREES = 1.5;

type Box = readonly [number, number, number, number];

/** Land of the world at 1:50 million (Natural Earth by way of world-atlas, public domain). */
export function worldLand(): Feature<MultiPolygon> {
  const file = createRequire(import.meta.url).resolve('world-atlas/land-50m.json');
  const topology = JSON.parse(readFileSync(file, 'utf8')) as Topology;
  const land = feature(topology, topology.objects.land);
  const [whole] = 'features' in land ? land.features : [land];
  return whole as Feature<MultiPolygon>;
}

/** Land inside the box and a margin, for the map of a pack. */
export function clipLand(land: Feature<MultiPolygon>, [west, south, east, north]: Box): FeatureCollection {
  const box: [number, number, number, number] = [
    Math.max(-180, west - MARGIN_DEGREES),
    Math.max(-90, south - MARGIN_DEGREES),
    Math.min(180, east + MARGIN_DEGREES),
    Math.min(90, north + MARGIN_DEGREES),
  ];
  const { geometry } = bboxClip(land, box) as Feature<Polygon | MultiPolygon>;
  const polygons = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  // Clipping leaves an empty polygon for each that lies outside the box.
  const coordinates = polygons.filter((rings) => rings.length > 0 && rings[0].length > 0);
  const features: Feature<MultiPolygon>[] =
    coordinates.length === 0
      ? []
      : [{ type: 'Feature', properties: { kind: 'land' }, geometry: { type: 'MultiPolygon', coordinates } }];
  return { type: 'FeatureCollection', features };
}

/** Distance in km from a place to the nearest shore, for places anywhere on Earth. */
export function coastDistances(
  shores: readonly Position[][],
): (place: { lat: number; lon: number }) => number {
  const points = shores.flatMap(densified);
  const index = new KDBush(points.length);
  for (const [lon, lat] of points) index.add(lon, lat);
  index.finish();
  return ({ lat, lon }) => {
    const [nearest] = around(index, lon, lat, 1);
    return distanceKm({ lat, lon }, { lat: points[nearest][1], lon: points[nearest][0] });
  };
}

/** The rings of all land polygons. */
export function shoresOf(land: Feature<MultiPolygon>): Position[][] {
  return land.geometry.coordinates.flat();
}

function densified(ring: Position[]): Position[] {
  return ring.flatMap((point, i) => {
    const next = ring[i + 1];
    if (!next || Math.abs(next[0] - point[0]) > 180) return [point];
    const steps = Math.max(1, Math.ceil(distanceKm(at(point), at(next)) / COAST_STEP_KM));
    return Array.from({ length: steps }, (_, s) => [
      point[0] + ((next[0] - point[0]) * s) / steps,
      point[1] + ((next[1] - point[1]) * s) / steps,
    ]);
  });
}

function at([lon, lat]: Position): { lat: number; lon: number } {
  return { lat, lon };
}
