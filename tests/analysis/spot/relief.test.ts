import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { relativeHeightM } from '../../../analysis/spot/relief.ts';
import type { PlanPoint, Relief, Yard } from '../../../analysis/spot/yard.ts';

const FLAT: Pick<Yard, 'widthM' | 'depthM' | 'slope' | 'things'> = {
  ...{ widthM: 40, depthM: 30, slope: null },
  things: [],
};

function hollow(byM: number, radiusM: number, at: PlanPoint = [10, 10]): Relief {
  return { kind: 'hollow', id: 'h', at, byM, radiusM };
}

function slope(towardsDeg: number, percent: number): Yard['slope'] {
  return { towardsDeg, percent, position: 'middle' };
}

describe('an even slope', () => {
  test('is at 0 in the middle of the plot and falls towards its bearing', () => {
    const yard = { ...FLAT, slope: slope(90, 10) };
    expect(relativeHeightM(yard, [20, 15])).toBe(0);
    expect(relativeHeightM(yard, [40, 3])).toBeCloseTo(-2, 12);
    expect(relativeHeightM(yard, [0, 28])).toBeCloseTo(2, 12);
    expect(relativeHeightM({ ...FLAT, slope: slope(180, 10) }, [7, 0])).toBeCloseTo(-1.5, 12);
    expect(relativeHeightM({ ...FLAT, slope: slope(315, 5) }, [10, 25])).toBeCloseTo(-Math.SQRT2 / 2, 12);
  });

  test('flat ground is 0 everywhere', () => {
    expect(relativeHeightM(FLAT, [3, 28])).toBe(0);
  });
});

describe('hollows and rises', () => {
  test('all of the depth in the middle, half at half of the radius, nothing from the radius on', () => {
    const yard = { ...FLAT, things: [hollow(1.6, 6)] };
    expect(relativeHeightM(yard, [10, 10])).toBeCloseTo(-1.6, 12);
    expect(relativeHeightM(yard, [13, 10])).toBeCloseTo(-0.8, 12);
    expect(relativeHeightM(yard, [10, 16])).toBe(0);
    expect(relativeHeightM(yard, [30, 20])).toBe(0);
    expect(relativeHeightM({ ...FLAT, things: [{ ...hollow(1.6, 6), kind: 'rise' }] }, [13, 10])).toBeCloseTo(
      0.8,
      12,
    );
  });

  test('smooth at its rim and in its middle', () => {
    const yard = { ...FLAT, things: [hollow(2, 5)] };
    const across = (eastM: number) => relativeHeightM(yard, [eastM, 10]);
    expect(Math.abs(across(10.01) - across(10)) / 0.01).toBeLessThan(0.01);
    expect(Math.abs(across(15) - across(14.99)) / 0.01).toBeLessThan(0.01);
  });

  test('they add to the slope and to each other', () => {
    const slant = slope(200, 7);
    const dip = hollow(1, 8);
    const both = relativeHeightM(
      { ...FLAT, slope: slant, things: [dip, hollow(0.5, 4, [12, 10])] },
      [11, 11],
    );
    const alone = [
      relativeHeightM({ ...FLAT, slope: slant }, [11, 11]),
      relativeHeightM({ ...FLAT, things: [dip] }, [11, 11]),
      relativeHeightM({ ...FLAT, things: [hollow(0.5, 4, [12, 10])] }, [11, 11]),
    ];
    expect(both).toBeCloseTo(alone[0]! + alone[1]! + alone[2]!, 12);
  });

  const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  test('deeper is never higher, nearer the middle is never higher', () => {
    fc.assert(
      fc.property(
        metres(0.1, 40),
        metres(0, 10),
        metres(0.1, 60),
        metres(0, 40),
        metres(0, 10),
        (byM, more, radiusM, away, step) => {
          const at = (deepM: number, awayM: number) =>
            relativeHeightM({ ...FLAT, things: [hollow(deepM, radiusM)] }, [10 + awayM, 10]);
          expect(at(byM + more, away)).toBeLessThanOrEqual(at(byM, away));
          expect(at(byM, away)).toBeLessThanOrEqual(at(byM, away + step));
        },
      ),
    );
  });
});
