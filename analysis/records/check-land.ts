import type { FeatureCollection } from 'geojson';
import { t } from '../language/t.ts';
import { InputError } from './input-error.ts';

/** How deep lists lie in the coordinates of each shape that outlines may have; 0 is a point's own list. */
const DEPTHS: Readonly<Record<string, number>> = {
  Point: 0,
  MultiPoint: 1,
  LineString: 1,
  MultiLineString: 2,
  Polygon: 2,
  MultiPolygon: 3,
};

/**
 * Checks a parsed `land.json`: GeoJSON features whose shapes have finite degrees.
 * @throws InputError naming the file and the feature
 */
export function checkLand(value: unknown, file: string): FeatureCollection {
  const { type, features } = (value ?? {}) as Partial<FeatureCollection>;
  if (type !== 'FeatureCollection' || !Array.isArray(features))
    throw new InputError(t`${file} is no collection of GeoJSON features.`);
  const wrong = features.findIndex((feature: unknown) => !isFeature(feature));
  if (wrong >= 0) throw new InputError(t`${file}: feature ${wrong + 1} is not as it should be.`);
  return value as FeatureCollection;
}

function isFeature(value: unknown): boolean {
  const { type, geometry } = (value ?? {}) as { type?: unknown; geometry?: unknown };
  const { type: shape, coordinates } = (geometry ?? {}) as { type?: unknown; coordinates?: unknown };
  if (type !== 'Feature' || typeof shape !== 'string' || !Object.hasOwn(DEPTHS, shape)) return false;
  return isNested(coordinates, DEPTHS[shape]!);
}

function isNested(value: unknown, depth: number): boolean {
  if (!Array.isArray(value)) return false;
  return depth === 0
    ? value.length >= 2 && value.every(Number.isFinite)
    : value.every((inner) => isNested(inner, depth - 1));
}
