import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  colesShape,
  gevCdf,
  gevQuantile,
  gevReturnLevel,
  gevReturnPeriod,
  gevSurvival,
  gevSurvivals,
  gevUpperEnd,
} from '../../../analysis/extremes/gev.ts';
import scipy from '../../reference/extremes/scipy-values.json' with { type: 'json' };

describe('against scipy.stats.genextreme (scipy-values.json)', () => {
  test.each(scipy.gev)('at %d: location %d, scale %d, k %d', (y, location, scale, k, cdf, sf) => {
    const gev = { location: location!, scale: scale!, k: k! };
    // SciPy's own rounding at k = 1e-6 is about 1e-11.
    expect(Math.abs(gevCdf(y!, gev) - cdf!)).toBeLessThanOrEqual(1e-10 * cdf!);
    expect(Math.abs(gevSurvival(y!, gev) - sf!)).toBeLessThanOrEqual(1e-10 * sf!);
  });
  test.each(scipy.gev_quantile)('quantile %d: location %d, scale %d, k %d', (p, location, scale, k, y) => {
    expect(gevQuantile(p!, { location: location!, scale: scale!, k: k! })).toBeCloseTo(y!, 9);
  });
});

const gevs = fc.record({
  location: fc.double({ min: -20, max: 20, noNaN: true }),
  scale: fc.double({ min: 0.1, max: 10, noNaN: true }),
  k: fc.oneof(
    fc.double({ min: -0.4, max: 0.5, noNaN: true }),
    fc.double({ min: -1e-5, max: 1e-5, noNaN: true }),
  ),
});

describe('properties', () => {
  test('return level and return period undo each other', () => {
    fc.assert(
      fc.property(gevs, fc.double({ min: 1.01, max: 2000, noNaN: true }), (gev, period) => {
        const back = gevReturnPeriod(gevReturnLevel(period, gev), gev);
        expect(Math.abs(back / period - 1)).toBeLessThan(1e-7);
      }),
    );
  });
  test('survival falls and cdf + survival = 1', () => {
    fc.assert(
      fc.property(gevs, fc.double({ min: -40, max: 40, noNaN: true }), (gev, y) => {
        expect(gevCdf(y, gev) + gevSurvival(y, gev)).toBeCloseTo(1, 12);
        expect(gevSurvival(y + 0.5, gev)).toBeLessThanOrEqual(gevSurvival(y, gev));
      }),
    );
  });
  test('the fast array form agrees with the plain one', () => {
    fc.assert(
      fc.property(gevs, fc.double({ min: -40, max: 60, noNaN: true }), (gev, y) => {
        const one = (x: number) => Float64Array.of(x);
        const out = new Float64Array(1);
        gevSurvivals(y, one(gev.location), one(gev.scale), one(gev.k), out);
        const plain = gevSurvival(y, gev);
        expect(Math.abs(out[0]! - plain)).toBeLessThanOrEqual(1e-9 * plain);
      }),
    );
  });
  test('k runs through 0 without a jump', () => {
    for (const y of [-2, 0.3, 2, 6]) {
      const at = (k: number) => gevSurvival(y, { location: 0, scale: 1, k });
      for (const k of [1e-4, 1e-6, 1e-9])
        for (const sign of [1, -1]) expect(Math.abs(at(sign * k) / at(0) - 1)).toBeLessThan(40 * k);
    }
  });
});

test('past the ends: chance 0 and 1, period Infinity and 1', () => {
  const bounded = { location: 0, scale: 1, k: 0.25 };
  expect(gevUpperEnd(bounded)).toBe(4);
  expect(gevSurvival(4, bounded)).toBe(0);
  expect(gevReturnPeriod(4.5, bounded)).toBe(Infinity);
  const heavy = { location: 0, scale: 1, k: -0.25 };
  expect(gevUpperEnd(heavy)).toBe(Infinity);
  expect(gevSurvival(-5, heavy)).toBe(1);
  expect(gevReturnPeriod(-5, heavy)).toBe(1);
});

test('the sign of the shape turns once', () => {
  expect([colesShape(0.2), colesShape(-0.1), colesShape(0)]).toEqual([-0.2, 0.1, 0]);
});

test('chances and periods out of range are refused', () => {
  const gev = { location: 0, scale: 1, k: 0 };
  expect(() => gevQuantile(1, gev)).toThrow('strictly between 0 and 1, not 1');
  expect(() => gevReturnLevel(1, gev)).toThrow('above 1, not 1');
});
