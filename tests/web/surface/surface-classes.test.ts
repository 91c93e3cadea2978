import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { periodClassOf } from '../../../web/charts/period-classes.ts';
import { classIndex, PERIOD_SCALE, RATIO_SCALE } from '../../../web/surface/paint-classes.ts';
import { classOf } from '../../../web/surface/read-cell.ts';
import { landShares, periodRatio, reaches } from '../../../web/surface/surface-view.ts';
import { madeSurface } from './made-surface.ts';

const period = fc.double({ min: 1, max: 2000, noNaN: true });

describe('the classes of areas', () => {
  it('are those of the marks, so that a colour means the same on both', () => {
    fc.assert(
      fc.property(period, (winters) => {
        const mark = periodClassOf({ period: winters, low: null, basis: 'fitted' });
        const area = PERIOD_SCALE.classes[classIndex(PERIOD_SCALE, winters)];
        expect(area.id).toBe(mark.id);
        expect(area.fill).toEqual({ ramp: 'cold', step: mark.ramp });
      }),
    );
  });
  it('have a class of their own beyond twice the record and none on the sea', () => {
    const surface = madeSurface(4, 1, (column) => [7, 141, Infinity, 'far' as const][column], 140);
    const view = { mode: 'periods', surface } as const;
    expect([0, 1, 2, 3].map((cell) => classOf(view, cell).id)).toEqual([
      'to10',
      'beyond',
      'beyond',
      'nodata',
    ]);
  });
});

describe('a difference', () => {
  it('turned round is its mirror image', () => {
    const cells = fc.array(fc.oneof(period, fc.constant(Infinity)), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(cells, cells, (a, b) => {
        const [first, second] = [madeSurface(6, 1, (c) => a[c], 90), madeSurface(6, 1, (c) => b[c], 140)];
        for (let cell = 0; cell < 6; cell++) {
          const ratio = periodRatio(first, second, cell);
          const turned = periodRatio(second, first, cell);
          if (ratio === null) expect(turned).toBeNull();
          else expect(ratio * turned!).toBeCloseTo(1, 12);
        }
      }),
    );
  });
  it('is cold where the first is hit more often, warm where less, and says how much', () => {
    const [often, rare] = [madeSurface(1, 1, () => 4), madeSurface(1, 1, () => 12)];
    const oftener = classOf({ mode: 'difference', surface: often, against: rare }, 0);
    const rarer = classOf({ mode: 'difference', surface: rare, against: often }, 0);
    expect([oftener.fill.ramp, oftener.label]).toEqual(['cold', '2 to 4 times as often']);
    expect([rarer.fill.ramp, rarer.label]).toEqual(['warm', '2 to 4 times as rarely']);
  });
  it('has a scale of two equal sides', () => {
    const { edges, classes } = RATIO_SCALE;
    edges.forEach((edge, i) => expect(edge * edges[edges.length - 1 - i]).toBeCloseTo(1, 12));
    expect(classes.map(({ fill }) => fill.ramp)).toEqual([
      'cold',
      'cold',
      'cold',
      'land',
      'warm',
      'warm',
      'warm',
    ]);
  });
  it('cuts both where the shorter record ends, and says nothing where both are rarer', () => {
    const short = madeSurface(2, 1, (c) => [300, 30][c], 60);
    const long = madeSurface(2, 1, (c) => [100, 120][c], 140);
    expect(periodRatio(short, long, 0)).toBeNull();
    expect(periodRatio(short, long, 1)).toBeCloseTo(30 / 60, 12);
  });
});

describe('where it could be grown', () => {
  it('asks for a period at least so long, and is silent where the record is too short', () => {
    const surface = madeSurface(3, 1, (c) => [24.9, 25, Infinity][c], 40);
    expect([0, 1, 2].map((cell) => reaches(surface, cell, 25))).toEqual([false, true, true]);
    expect(reaches(surface, 2, 50)).toBeNull();
  });
  it('sums up the land by area, the sea left out', () => {
    const surface = madeSurface(4, 1, (c) => [50, 5, 'far' as const, 'sea' as const][c]);
    expect(landShares(surface, 25).reached).toBeCloseTo(1 / 3, 12);
    expect(landShares(surface, 25).unknown).toBeCloseTo(1 / 3, 12);
    // Two rows: a cell counts by the cosine of its latitude.
    const tall = { ...madeSurface(1, 2, (_, row) => [50, 5][row]), south: 0, stepLatDeg: 60 };
    expect(landShares(tall, 25).reached).toBeCloseTo(1 / 1.5, 12);
  });
});
