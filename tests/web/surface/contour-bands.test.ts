import fc from 'fast-check';
import type { Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import { contourBands, landRings } from '../../../web/surface/contour-bands.ts';
import { classOf } from '../../../web/surface/read-cell.ts';
import { surfacePlan } from '../../../web/surface/surface-plan.ts';
import { tellingCells } from '../../../web/surface/telling-cells.ts';
import { madeSurface, type MadeCell } from './made-surface.ts';

/** Even-odd rule, as the map fills. */
function inside(rings: readonly (readonly Position[])[], lon: number, lat: number): boolean {
  let crossings = 0;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [[x1, y1], [x2, y2]] = [ring[j], ring[i]];
      if (y1 > lat !== y2 > lat && lon < x1 + ((lat - y1) / (y2 - y1)) * (x2 - x1)) crossings++;
    }
  }
  return crossings % 2 === 1;
}

describe('bands', () => {
  it('run where the logarithm of the period crosses the edge', () => {
    // ln T grows by 0.5 a column from ln 2, so T = 10 lies ln(5) / 0.5 = 3.2189 columns east of the first centre.
    const surface = madeSurface(8, 5, (column) => 2 * Math.exp(column / 2));
    const bands = contourBands(surfacePlan({ mode: 'periods', surface }));
    const ten = bands.find(({ edge }) => edge === 10)!;
    const middle = ten.rings[0].filter(([, lat]) => Math.abs(lat - 31.2) < 1e-9).map(([lon]) => lon);
    expect(Math.min(...middle)).toBeCloseTo(-42 + 0.1 * (Math.log(5) / 0.5), 5);
  });

  it('hold exactly the cells of their class and of all beyond', () => {
    const cell = fc.oneof(
      { weight: 6, arbitrary: fc.double({ min: 1.01, max: 500, noNaN: true }) },
      { weight: 1, arbitrary: fc.constant(Infinity) },
      { weight: 1, arbitrary: fc.constant<MadeCell>('far') },
    );
    fc.assert(
      fc.property(fc.array(cell, { minLength: 42, maxLength: 42 }), (cells) => {
        const surface = madeSurface(7, 6, (column, row) => cells[row * 7 + column]);
        const view = { mode: 'periods', surface } as const;
        const bands = contourBands(surfacePlan(view));
        for (let i = 0; i < 42; i++) {
          const [lon, lat] = [-42 + 0.1 * (i % 7), 31 + 0.1 * Math.floor(i / 7)];
          // Edges that run through a centre belong to either side.
          const near = Math.min(...bands.map(({ edge }) => Math.abs((edge ?? 140) / surface.periods[i] - 1)));
          if (near < 1e-3) continue;
          const painted = bands.filter(({ rings }) => inside(rings, lon + 1e-7, lat + 1e-7)).at(-1);
          expect(painted?.paintClass.id ?? 'under2').toBe(classOf(view, i).id);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('the shore', () => {
  const surface = madeSurface(9, 1, (column) => (column === 0 ? 5 : column === 8 ? 'far' : 'sea'));
  it('is told by land up to two cells off, and the open sea by none', () => {
    expect([...tellingCells(surface).telling]).toEqual([0, 0, 0, -1, -1, -1, 8, 8, 8]);
  });
  it('carries the hatching of land out of reach, and no answer farther than two cells', () => {
    const { overlays } = surfacePlan({ mode: 'periods', surface });
    const missing = overlays.find(({ paintClass }) => paintClass.id === 'nodata')!;
    expect([...missing.field].map((value) => value > 0)).toEqual([
      ...[false, false, false],
      ...[true, true, true],
      ...[true, true, true],
    ]);
  });
  it('is drawn from the cells where a pack has no outlines', () => {
    const island = madeSurface(5, 5, (column, row) => (column === 2 && row === 2 ? 9 : 'sea'));
    const rings = landRings(island);
    expect(inside(rings, -41.8, 31.2)).toBe(true);
    expect(inside(rings, -41.6, 31.2)).toBe(false);
  });
  it('without any answer is hatched throughout', () => {
    const plan = surfacePlan({ mode: 'periods', surface: madeSurface(3, 3, () => 'far') });
    const missing = plan.overlays.find(({ paintClass }) => paintClass.id === 'nodata')!;
    expect([...missing.field].every((value) => value > 0)).toBe(true);
    expect(contourBands(plan).find(({ paintClass }) => paintClass.id === 'nodata')!.rings.length).toBe(1);
  });
});
