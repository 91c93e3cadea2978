import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markCorners, markPath } from '../../../web/charts/mark-paths.ts';
import {
  classFill,
  LEGEND_CLASSES,
  PERIOD_CLASSES,
  periodClassOf,
} from '../../../web/charts/period-classes.ts';

const fitted = (period: number | null) => ({ period, low: null, basis: 'fitted' as const });

describe('classes of return periods', () => {
  it.each([
    [1, 'under2'],
    [1.99, 'under2'],
    [2, 'to5'],
    [4.99, 'to5'],
    [5, 'to10'],
    [10, 'to25'],
    [24.99, 'to25'],
    [25, 'to50'],
    [49.99, 'to50'],
    [50, 'over50'],
    [1e6, 'over50'],
    [Infinity, 'nodata'],
  ])('put 1 winter in %f into %s', (period, id) => {
    if (period === Infinity) expect(periodClassOf(fitted(null)).id).toBe(id);
    else expect(periodClassOf(fitted(period)).id).toBe(id);
  });

  it('leave no gap and no overlap: any period from 1 up has one class, the rarer never the colder colour', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        (a, b) => {
          const inside = PERIOD_CLASSES.filter(({ range }) => a >= range![0] && a < range![1]);
          expect(inside).toEqual([periodClassOf(fitted(a))]);
          if (a <= b)
            expect(periodClassOf(fitted(a)).ramp).toBeGreaterThanOrEqual(periodClassOf(fitted(b)).ramp);
        },
      ),
    );
  });

  it('take an open bound at its frequent end and claim nothing for a short record without a hit', () => {
    expect(periodClassOf({ period: null, low: 30, basis: 'beyond' }).id).toBe('to50');
    expect(periodClassOf({ period: 60, low: 30, basis: 'beyond' }).id).toBe('to50');
    expect(periodClassOf({ period: null, low: 4, basis: 'not seen' }).id).toBe('unseen');
    expect(periodClassOf(null).id).toBe('nodata');
  });

  it('differ in shape as well as in colour', () => {
    const shapes = LEGEND_CLASSES.map(({ shape }) => shape);
    expect(new Set(shapes).size).toBe(shapes.length);
    expect(new Set(PERIOD_CLASSES.map(classFill)).size).toBe(PERIOD_CLASSES.length);
    const outlines = LEGEND_CLASSES.filter(({ shape }) => shape !== 'ring' && shape !== 'hatched');
    expect(new Set(outlines.map(({ shape }) => markPath(shape, 6))).size).toBe(outlines.length);
  });

  it('draw marks of about equal size around their centre', () => {
    for (const { shape } of LEGEND_CLASSES) {
      const corners = markCorners(shape, 10);
      if (corners.length === 0) continue;
      const mean = corners.reduce(
        ([x, y], [cx, cy]) => [x + cx / corners.length, y + cy / corners.length],
        [0, 0],
      );
      expect(Math.hypot(mean[0], mean[1])).toBeLessThan(1e-9);
      for (const [x, y] of corners) expect(Math.hypot(x, y)).toBeLessThan(15);
    }
  });
});
