import { expect, it } from 'vitest';
import { CoastDistance } from '../../../analysis/gather/coast-distance.ts';
import { ringsOfLand } from '../../../analysis/gather/land-outlines.ts';
import { boxOf } from '../../../analysis/gather/pack-box.ts';
import { shoresNear } from '../../../analysis/gather/shores-near.ts';
import { worldLand } from '../../../data-scripts/build/outlines.ts';

it('finds the shores that all land of the world has, near and far, on land and sea, at the antimeridian too', () => {
  const all = new CoastDistance(ringsOfLand(worldLand()));
  const boxes = [
    [
      { lat: 30, lon: -90 },
      { lat: 29.2, lon: -81.1 },
    ],
    [
      { lat: 40.4, lon: -3.7 },
      { lat: 36.7, lon: -4.4 },
    ],
    [{ lat: 48, lon: 85 }],
    [{ lat: 31, lon: -42 }],
    [
      { lat: -17.8, lon: 178 },
      { lat: -36.9, lon: 174.8 },
    ],
    [{ lat: 64.8, lon: -147.7 }],
  ];
  for (const places of boxes) {
    const near = shoresNear(worldLand(), boxOf(places));
    for (const place of places) expect(near(place)).toBeCloseTo(all.of(place), 9);
  }
});
