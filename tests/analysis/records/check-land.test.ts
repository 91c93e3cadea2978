import { expect, it } from 'vitest';
import { checkLand } from '../../../analysis/records/check-land.ts';

const feature = (geometry: unknown): unknown => ({ type: 'Feature', properties: {}, geometry });
const collection = (...features: unknown[]): unknown => ({ type: 'FeatureCollection', features });

it('takes the shapes that outlines have', () => {
  const ring = [[0, 0], [1, 0], [0, 1], [0, 0]]; // prettier-ignore
  const land = collection(
    feature({ type: 'MultiPolygon', coordinates: [[ring], [ring, ring]] }),
    feature({ type: 'Polygon', coordinates: [ring] }),
    feature({ type: 'LineString', coordinates: ring }),
    feature({ type: 'Point', coordinates: [1, 2] }),
  );
  expect(checkLand(land, 'land.json')).toBe(land);
  expect(() => checkLand(collection(), 'land.json')).not.toThrow();
});

it('refuses what is none, naming file and feature', () => {
  for (const other of [null, [], {}, { type: 'FeatureCollection' }, 'land'])
    expect(() => checkLand(other, 'land.json')).toThrow(/^land\.json is no collection/);
  const line = feature({ type: 'LineString', coordinates: [[1, 2, 3], [4, 5]] }); // prettier-ignore
  for (const wrong of [
    null,
    { type: 'Feature' },
    feature(null),
    feature({ type: 'toString', coordinates: [1, 2] }),
    feature({ type: 'Point', coordinates: [1] }),
    feature({ type: 'Point', coordinates: [1, null] }),
    feature({ type: 'Polygon', coordinates: [[1, 2]] }),
    feature({ type: 'LineString', coordinates: [[[1, 2]]] }),
  ])
    expect(() => checkLand(collection(line, wrong), 'land.json')).toThrow(/^land\.json: feature 2 /);
});
