import { expect, it } from 'vitest';
import { clipLand } from '../../../analysis/gather/clip-land.ts';
import { worldLand } from '../../../data-scripts/build/outlines.ts';

it('clips land to outlines without an empty polygon, and to nothing in mid-ocean', () => {
  const { features } = clipLand(worldLand(), [-90.3, 30, -90.3, 30]);
  expect(features).toHaveLength(1);
  const { geometry } = features[0];
  const polygons = geometry.type === 'MultiPolygon' ? geometry.coordinates : [];
  expect(polygons.length).toBeGreaterThan(0);
  for (const rings of polygons) expect(rings[0].length).toBeGreaterThanOrEqual(4);
  expect(clipLand(worldLand(), [-42, 31, -42, 31]).features).toEqual([]);
});
