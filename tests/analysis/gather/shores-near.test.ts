import { beforeAll, describe, expect, it } from 'vitest';
import { CoastDistance } from '../../../analysis/gather/coast-distance.ts';
import { ringsOfLand, type LandRings } from '../../../analysis/gather/land-outlines.ts';
import { shoresNear } from '../../../analysis/gather/shores-near.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import { worldLand } from '../../../data-scripts/build/outlines.ts';

let rings: LandRings;
let all: CoastDistance;
beforeAll(() => {
  rings = ringsOfLand(worldLand());
  all = new CoastDistance(rings);
}, 60_000);

function expectSame(places: readonly { lat: number; lon: number }[]): void {
  const near = shoresNear(rings, places);
  for (const place of places) expect(near(place), `${place.lat}, ${place.lon}`).toBeCloseTo(all.of(place), 9);
}

describe('shores near places are those of the whole world', { timeout: 30_000 }, () => {
  const groups: Record<string, readonly [lat: number, lon: number][]> = {
    'at the sea and inland of one land': [
      [30, -90],
      [29.2, -81.1],
      [33.6, -84.4],
      [40.4, -3.7],
    ],
    'farther from the sea than anywhere': [[46.28, 86.67]],
    'hundreds of km inland, one beside the sea': [
      [39.1, -94.6],
      [51.1, -114],
      [41.9, 12.5],
    ],
    'in mid-ocean': [
      [31, -42],
      [-48.9, -123.4],
    ],
    'on both sides of the antimeridian': [
      [-17.8, 178],
      [-16.9, -179.9],
      [-36.9, 174.8],
      [67.5, -178],
      [67.5, 179.99],
    ],
    'near the poles': [
      [-89.5, 40],
      [82.5, -62.3],
      [78.2, 15.6],
      [89.9, 10],
    ],
    'all around the world': [
      [64.8, -147.7],
      [-33.9, 18.4],
      [35.7, 139.7],
      [-23.7, 133.9],
    ],
  };
  it.each(Object.entries(groups))('%s', (_, places) =>
    expectSame(places.map(([lat, lon]) => ({ lat, lon }))),
  );

  it('anywhere, for places near each other', () => {
    const random = seededRandom(375);
    for (let group = 0; group < 8; group++) {
      const [lat, lon] = [
        (180 * Math.asin(1.98 * random.uniform() - 0.99)) / Math.PI,
        360 * random.uniform() - 180,
      ];
      expectSame(
        Array.from({ length: 5 }, () => ({
          lat: Math.max(-90, Math.min(90, lat + 6 * random.uniform() - 3)),
          lon: lon + 8 * random.uniform() - 4,
        })),
      );
    }
  });

  it('refuses to tell of places it was not asked about', () => {
    expect(() => shoresNear(rings, [{ lat: 31, lon: -42 }])({ lat: 31, lon: -43 })).toThrow(
      'none of the places',
    );
  });
});
