import { expect, it } from 'vitest';
import { clipLand, scaleForMap } from '../../../analysis/gather/clip-land.ts';
import { boxOf } from '../../../analysis/gather/pack-box.ts';

it('gives a region the finer outlines and a continent the coarser ones', () => {
  const newOrleans = { lat: 29.95, lon: -90.07 };
  const miami = { lat: 25.76, lon: -80.19 };
  const sanDiego = { lat: 32.72, lon: -117.16 };
  const boston = { lat: 42.36, lon: -71.06 };
  expect(scaleForMap(boxOf([newOrleans]))).toBe('10m');
  expect(scaleForMap(boxOf([newOrleans, miami]))).toBe('10m');
  expect(scaleForMap(boxOf([sanDiego, boston]))).toBe('50m');
});

it('keeps land within a degree and a half of the stations, and no other', () => {
  const square = (west: number, south: number, size: number) => [
    [
      [west, south],
      [west + size, south],
      [west + size, south + size],
      [west, south + size],
      [west, south],
    ],
  ];
  const land = {
    type: 'Feature' as const,
    properties: {},
    geometry: { type: 'MultiPolygon' as const, coordinates: [square(-10, 40, 20), square(60, 0, 1)] },
  };
  const { features } = clipLand(land, [0, 50, 1, 51]);
  const corners = features.flatMap(({ geometry }) =>
    geometry.type === 'MultiPolygon' ? geometry.coordinates.flat(2) : [],
  );
  expect(features.map(({ properties }) => properties)).toEqual([{ kind: 'land' }]);
  expect(new Set(corners.map(([lon]) => lon))).toEqual(new Set([-1.5, 2.5]));
  expect(new Set(corners.map(([, lat]) => lat))).toEqual(new Set([48.5, 52.5]));
  expect(clipLand(land, [100, -60, 101, -59]).features).toEqual([]);
});
