import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  drawableBox,
  graticuleLabel,
  graticuleLines,
  graticuleMarks,
  graticuleStep,
  grownBox,
} from '../../../web/map/graticule.ts';
import { isArrowKey, nearestInDirection, nearestPoint } from '../../../web/map/nearest-in-direction.ts';
import { mixColors } from '../../../web/map/palette.ts';
import { placeNames } from '../../../web/map/place-names.ts';
import { metresPerPixel, scaleBar } from '../../../web/map/scale-bar.ts';

describe('the graticule', () => {
  it('has a few lines at round degrees', () => {
    expect(graticuleStep(2.2)).toBe(0.5);
    expect(graticuleStep(25)).toBe(5);
    expect(graticuleMarks(-43.2, -41, 0.5)).toEqual([-43, -42.5, -42, -41.5, -41]);
    expect(graticuleMarks(30.2, 30.6, 0.1)).toEqual([30.2, 30.3, 30.4, 30.5, 30.6]);
    expect(graticuleLines([-1, -1, 1, 1], 1).features).toHaveLength(6);
  });
  it('is labelled in degrees and minutes with the side of the world', () => {
    expect(graticuleLabel(-42.5, 'E', 'W')).toBe('42° 30′ W');
    expect(graticuleLabel(31, 'N', 'S')).toBe('31° N');
    expect(graticuleLabel(0, 'N', 'S')).toBe('0°');
    expect(graticuleLabel(0.25, 'E', 'W')).toBe('0° 15′ E');
  });
  it('keeps a grown box within the map', () => {
    expect(grownBox([0, 80, 10, 85], 1)).toEqual([-10, 75, 20, 84]);
  });
  it('keeps it within once round the Earth, or the map would be held on its other side', () => {
    // California to Delhi.
    expect(grownBox([-122, 28, 78, 52], 0.5)).toEqual([-179.999, 16, 178, 64]);
    fc.assert(
      fc.property(fc.integer({ min: -180, max: 179 }), fc.integer({ min: 1, max: 360 }), (west, wide) => {
        const east = Math.min(180, west + wide);
        const [left, , right] = grownBox([west, 0, east, 1], 0.6);
        expect(right - left).toBeLessThan(360);
        expect(left).toBeLessThanOrEqual(Math.max(west, -179.999));
        expect(right).toBeGreaterThanOrEqual(Math.min(east, 179.999));
      }),
    );
  });
});

describe('the scale bar', () => {
  it('has the ground size of Mercator pixels', () => {
    // 512-px tiles: half of the 156,543.03 m a pixel at the equator that 256-px web maps state for zoom 0 (on the
    // larger equatorial radius, 0.1 % more).
    expect(metresPerPixel(0, 0)).toBeCloseTo(78_271.5 * (6_371_008.8 / 6_378_137), 0);
    expect(metresPerPixel(60, 3) / metresPerPixel(0, 3)).toBeCloseTo(0.5, 10);
  });
  it('is a round length no longer than allowed, in the unit shown', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 20_000, noNaN: true }),
        fc.constantFrom('F' as const, 'C' as const),
        (mPerPx, unit) => {
          const { px, label } = scaleBar(mPerPx, unit);
          expect(px).toBeLessThanOrEqual(110.01);
          expect(px).toBeGreaterThan(43);
          expect(label).toMatch(unit === 'F' ? /^(0\.0*)?[125]0*\u00a0mi$/ : /^(0\.0*)?[125]0*\u00a0km$/);
        },
      ),
    );
    expect(scaleBar(100, 'C')).toEqual({ px: 100, label: '10\u00a0km' });
  });
});

describe('the cursor among stations', () => {
  const points = [
    { id: 'home', x: 50, y: 50 },
    { id: 'right', x: 90, y: 55 },
    { id: 'far right', x: 140, y: 50 },
    { id: 'up', x: 52, y: 10 },
    { id: 'left down', x: 20, y: 75 },
  ];
  it('goes to the nearest that way', () => {
    expect(nearestInDirection(points, points[0], 'ArrowRight')?.id).toBe('right');
    expect(nearestInDirection(points, points[1], 'ArrowRight')?.id).toBe('far right');
    expect(nearestInDirection(points, points[0], 'ArrowUp')?.id).toBe('up');
    expect(nearestInDirection(points, points[0], 'ArrowLeft')?.id).toBe('left down');
    expect(nearestInDirection(points, points[2], 'ArrowRight')).toBeNull();
    expect(isArrowKey('ArrowUp') && !isArrowKey('Enter')).toBe(true);
  });
  it('always moves that way, never to itself, and reaches every station of any map in some order of keys', () => {
    const cloud = fc.uniqueArray(
      fc.record({ x: fc.integer({ min: 0, max: 400 }), y: fc.integer({ min: 0, max: 300 }) }),
      {
        minLength: 2,
        maxLength: 25,
        selector: ({ x, y }) => `${x},${y}`,
      },
    );
    fc.assert(
      fc.property(cloud, (raw) => {
        const stations = raw.map((point, i) => ({ id: String(i), ...point }));
        const reached = new Set(['0']);
        const queue = [stations[0]];
        while (queue.length > 0) {
          const from = queue.pop()!;
          for (const key of ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'] as const) {
            const next = nearestInDirection(stations, from, key);
            if (!next) continue;
            if (key === 'ArrowRight') expect(next.x).toBeGreaterThan(from.x);
            if (key === 'ArrowDown') expect(next.y).toBeGreaterThan(from.y);
            if (reached.has(next.id)) continue;
            reached.add(next.id);
            queue.push(next);
          }
        }
        expect(reached.size).toBeGreaterThan(1);
      }),
    );
  });
  it('finds the station under a pointer, or none', () => {
    expect(nearestPoint(points, { x: 88, y: 50 }, 16)?.id).toBe('right');
    expect(nearestPoint(points, { x: 0, y: 0 }, 16)).toBeNull();
  });
});

describe('colours and names', () => {
  it('mix', () => {
    expect(mixColors('rgb(0, 0, 0)', 'rgb(255, 255, 255)', 0.5)).toBe('rgb(128, 128, 128)');
    expect(mixColors('rgba(10, 20, 30, 0.5)', 'rgb(0 0 0)', 0)).toBe('rgb(10, 20, 30)');
    expect(mixColors('color(srgb 1 0 0)', 'rgb(0, 0, 0)', 0)).toBe('rgb(255, 0, 0)');
  });
  const square = (kind: string, name: string, size: number, at = 0) => ({
    type: 'Feature' as const,
    properties: { kind, name },
    geometry: {
      type: 'Polygon' as const,
      coordinates: [
        [
          [at, at],
          [at + size, at],
          [at + size, at + size],
          [at, at + size],
          [at, at],
        ],
      ],
    },
  });
  it('name each hill once at its largest outline, islands but not the mainland, and towns', () => {
    const land = {
      type: 'FeatureCollection' as const,
      features: [
        square('land', 'Mainland', 10),
        square('land', 'Islet', 0.5, 20),
        square('hill', 'Hills', 4, 2),
        square('hill', 'Hills', 1, 7),
      ],
    };
    const names = placeNames(land, [{ name: 'Town', lat: 1, lon: 2, rank: 1 }]).features;
    expect(names.map(({ properties }) => properties!.name)).toEqual(['Islet', 'Hills', 'Town']);
    expect(names[1].geometry.coordinates[0]).toBeCloseTo(4, 10);
    expect(placeNames(null, []).features).toEqual([]);
  });
  it('pass over outlines that clipping left empty', () => {
    const empty = {
      type: 'Feature' as const,
      properties: { kind: 'land' },
      geometry: { type: 'MultiPolygon' as const, coordinates: [[], [[]]] },
    };
    expect(placeNames({ type: 'FeatureCollection', features: [empty] }, []).features).toEqual([]);
  });
});

it('gives a pack of one station a box that can be drawn, and leaves others as they are', () => {
  expect(drawableBox([-90, 30, -90, 30])).toEqual([-90.5, 29.5, -89.5, 30.5]);
  expect(drawableBox([-10, 36, 3, 43])).toEqual([-10, 36, 3, 43]);
});
