import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { sustainedOnCurve } from '../../../analysis/night/curve-sustained.ts';
import { SUSTAINED_COUNT } from '../../../analysis/records/nights.ts';
import { anyCurve, bruteSustained, curveOf, steepestStepC, type CurveFigures } from './curves.ts';

const STEP_H = 1 / 20;

function sustained(figures: CurveFigures): Float64Array {
  const out = new Float64Array(SUSTAINED_COUNT);
  sustainedOnCurve(curveOf(figures), out);
  return out;
}

describe('sustained cold of the curve', () => {
  it('equals the search over all windows of a fine grid, for calm nights, fronts, rising nights and polar light', () => {
    fc.assert(
      fc.property(anyCurve, (figures) => {
        const curve = curveOf(figures);
        const brute = bruteSustained(curve, STEP_H);
        const allowed = steepestStepC(curve, STEP_H) + 0.003;
        const found = sustained(figures);
        brute.forEach((level, k) => expect(Math.abs(found[k + 1] - level)).toBeLessThan(allowed));
      }),
      { numRuns: 150 },
    );
  });

  it('never falls with the duration', () => {
    fc.assert(
      fc.property(anyCurve, (figures) => {
        const found = sustained(figures);
        for (let j = 2; j < SUSTAINED_COUNT; j++)
          expect(found[j]).toBeGreaterThanOrEqual(found[j - 1] - 0.002);
      }),
    );
  });

  it('moves by as much as all temperatures move', () => {
    fc.assert(
      fc.property(anyCurve, fc.double({ min: -15, max: 15, noNaN: true }), (figures, shift) => {
        const moved = Object.fromEntries(
          Object.entries(figures).map(([key, value]) => [key, key === 'dayLength' ? value : value + shift]),
        );
        const [a, b] = [sustained(figures), sustained(moved as unknown as CurveFigures)];
        for (let j = 0; j < SUSTAINED_COUNT; j++) expect(Math.abs(b[j] - a[j] - shift)).toBeLessThan(0.005);
      }),
    );
  });

  it('is the one temperature of a constant day', () => {
    const still = { tmaxTwoBefore: 3, tminBefore: 3, tmaxBefore: 3, tmin: 3, tmaxAfter: 3, tminAfter: 3 };
    for (const level of sustained({ dayLength: 10, ...still })) expect(level).toBeCloseTo(3, 2);
  });
});
