import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chiSquareCdf, chiSquareQuantile } from '../../../analysis/math/chi-square.ts';
import { gamma, logGamma } from '../../../analysis/math/gamma.ts';
import { normalCdf, normalQuantile } from '../../../analysis/math/normal.ts';
import scipy from '../../reference/extremes/scipy-values.json' with { type: 'json' };

/** Largest relative difference allowed: SciPy and we both claim about 1e-15. */
const CLOSE = 1e-12;

function expectClose(actual: number, expected: number, relative = CLOSE): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
}

describe('normal and chi-square distributions against SciPy (scipy-values.json)', () => {
  test.each(scipy.normal_cdf)('normal cdf at %d', (x, p) => expectClose(normalCdf(x!), p!));
  test.each(scipy.normal_quantile)('normal quantile of %d', (p, x) =>
    expect(Math.abs(normalQuantile(p!) - x!)).toBeLessThan(1e-12 * (1 + Math.abs(x!))),
  );
  test.each(scipy.chi2_cdf)('chi-square cdf at %d with %d degrees', (x, d, p) =>
    expectClose(chiSquareCdf(x!, d!), p!),
  );
  test.each(scipy.chi2_quantile)('chi-square quantile of %d with %d degrees', (p, d, x) =>
    expectClose(chiSquareQuantile(p!, d!), x!, 1e-10),
  );
  test.each(scipy.gamma)('gamma of %d', (x, g, logG) => {
    expectClose(gamma(x!), g!);
    expect(Math.abs(logGamma(x!) - logG!)).toBeLessThan(1e-12 * (1 + Math.abs(logG!)));
  });
});

describe('properties', () => {
  test('the normal quantile undoes the cdf', () => {
    fc.assert(
      fc.property(fc.double({ min: -7, max: 5, noNaN: true }), (x) => {
        expect(normalQuantile(normalCdf(x))).toBeCloseTo(x, 8);
      }),
    );
  });
  test('the chi-square of 1 degree is a squared normal', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 5, noNaN: true }), (z) => {
        expect(chiSquareCdf(z * z, 1)).toBeCloseTo(1 - 2 * normalCdf(-z), 12);
      }),
    );
  });
});

test('chances outside their range are refused with the value', () => {
  expect(() => normalQuantile(1.2)).toThrow('must lie in 0 to 1, not 1.2');
  expect(() => chiSquareQuantile(1, 1)).toThrow('below 1, not 1');
  expect(() => chiSquareCdf(1, 0)).toThrow('above 0, not 0');
  expect([normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity]);
});
