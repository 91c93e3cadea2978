import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  CLOSEST,
  fromMap,
  HEIGHT,
  kmOnMap,
  pathOf,
  toMap,
  turned,
  WIDTH,
  type MapView,
} from '../../../../../web/views/records/archive/place-map.ts';

const view = fc.record({
  lat: fc.double({ min: -88, max: 88, noNaN: true }),
  lon: fc.double({ min: -180, max: 180, noNaN: true }),
  level: fc.integer({ min: 0, max: CLOSEST }),
});
const spot = fc.record({
  x: fc.integer({ min: 1, max: WIDTH - 1 }),
  y: fc.integer({ min: 1, max: HEIGHT - 1 }),
});

describe('the map of places', () => {
  it('gives the place of a point and the point of a place, the one the inverse of the other', () => {
    fc.assert(
      fc.property(view, spot, (shown, { x, y }) => {
        const { lat, lon } = fromMap(shown, x, y);
        const east = (WIDTH / 2 / kmOnMap(shown, 111.195)) * 2;
        // Where the map reaches over a pole or more than once around, a point has no place of its own.
        if (Math.abs(lat) === 90 || (shown.level > 0 && Math.abs(shown.lat) > 60 && east > 100)) return;
        const back = toMap(shown, lat, lon);
        expect(back.x).toBeCloseTo(x, 6);
        expect(back.y).toBeCloseTo(y, 6);
      }),
      { numRuns: 300 },
    );
  });

  it('shows the whole world first, and a place in the middle when closer', () => {
    const world: MapView = { lat: 50, lon: 100, level: 0 };
    expect(toMap(world, 90, -180)).toEqual({ x: 0, y: 0 });
    expect(toMap(world, -90, 180)).toEqual({ x: WIDTH, y: HEIGHT });
    expect(toMap({ lat: 50, lon: 179, level: 3 }, 50, 179)).toEqual({ x: WIDTH / 2, y: HEIGHT / 2 });
    // Two degrees east over the 180th meridian lie to the right.
    expect(toMap({ lat: 50, lon: 179, level: 3 }, 50, -179).x).toBeGreaterThan(WIDTH / 2);
  });

  it('draws only outlines that show, once on each side of the 180th meridian, closed where they are land', () => {
    const box = (west: number): { points: [number, number][]; box: [number, number, number, number] } => ({
      points: [
        [west, 0],
        [west + 2, 0],
        [west + 2, 2],
        [west, 0],
      ],
      box: [west, 0, west + 2, 2],
    });
    const near = pathOf([box(179)], { lat: 1, lon: -179, level: 3 }, true);
    expect(near.match(/M/g)).toHaveLength(1);
    expect(near).toMatch(/^M(\d+\.\d) .*Z$/);
    expect(pathOf([box(0)], { lat: 1, lon: -179, level: 3 }, true)).toBe('');
    expect(pathOf([box(0)], { lat: 1, lon: 0, level: 3 }, false)).not.toContain('Z');
  });

  it('turns longitudes into their range', () => {
    expect([-180, 180, 181, -181, 540].map(turned)).toEqual([-180, 180, -179, 179, -180]);
  });
});
