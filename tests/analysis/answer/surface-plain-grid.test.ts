import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainGrid } from '../../../analysis/answer/plain-grid.ts';
import { cellAt, coastKmAt, elevationAt } from '../../../analysis/records/grid.ts';
import type { PackStation } from '../../../analysis/records/pack.ts';

function stations(points: readonly (readonly [number, number])[]): PackStation[] {
  return points.map(([lat, lon], i) => ({
    id: `S${i}`,
    name: `Invented ${i}`,
    ...{ lat, lon, elevation_m: null, coast_km: null },
    winters: { complete: 40, first: 1960, last: 1999 },
    ...{ basis: 'daily' as const, tile: '' },
  }));
}

describe('a grid without elevations', () => {
  it('has about ten thousand cells, all land of unknown height, with every station inside', () => {
    const point = fc.tuple(
      fc.double({ min: -80, max: 80, noNaN: true }),
      fc.double({ min: -180, max: 180, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 30 }), (points) => {
        const grid = plainGrid(stations(points));
        const cells = grid.columns * grid.rows;
        expect(cells).toBeGreaterThan(5000);
        expect(cells).toBeLessThan(20_000);
        expect(grid.land.every((land) => land === 1)).toBe(true);
        for (const [lat, lon] of points) {
          expect(cellAt(grid, lat, lon)).not.toBeNull();
          expect(elevationAt(grid, lat, lon)).toBeNull();
          expect(coastKmAt(grid, lat, lon)).toBeNull();
        }
      }),
      { numRuns: 100, seed: 1 },
    );
  });

  it('across the antimeridian is as narrow as anywhere else', () => {
    const home = plainGrid(
      stations([
        [30, -1],
        [32, 1.5],
      ]),
    );
    const there = plainGrid(
      stations([
        [30, 179],
        [32, -178.5],
      ]),
    );
    expect([there.columns, there.rows]).toEqual([home.columns, home.rows]);
    expect(there.west - 180).toBeCloseTo(home.west, 9);
    expect(there.stepLonDeg).toBeCloseTo(home.stepLonDeg, 9);
  });
});
