import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { invertPositiveDefinite } from '../../../analysis/math/positive-definite.ts';
import { quantileType7, quantileType7InPlace, quantileType7Sorted } from '../../../analysis/math/quantile.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import scipy from '../../reference/extremes/scipy-values.json' with { type: 'json' };

describe('quantile, type 7', () => {
  test('NumPy values (scipy-values.json)', () => {
    const { values, p_q } = scipy.quantile_type7;
    for (const [p, q] of p_q) expect(quantileType7(values, p!)).toBeCloseTo(q!, 12);
  });
  test('in place gives what sorting gives', () => {
    const values = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 1, maxLength: 80 });
    fc.assert(
      fc.property(values, fc.double({ min: 0, max: 1, noNaN: true }), (list, p) => {
        const sorted = Float64Array.from(list).sort();
        const inPlace = Float64Array.from(list);
        expect(quantileType7InPlace(inPlace, p)).toBe(quantileType7Sorted(sorted, p));
        expect(inPlace.sort()).toEqual(sorted);
      }),
    );
  });
  test('infinite values give no NaN', () => {
    expect(quantileType7InPlace(Float64Array.of(1, Infinity, Infinity), 0.9)).toBe(Infinity);
    expect(quantileType7([-Infinity, -Infinity, 2], 0.2)).toBe(-Infinity);
  });
  test('nothing to take a quantile of', () => {
    expect(() => quantileType7([], 0.5)).toThrow('at least 1 value, got 0');
    expect(() => quantileType7([1], 1.1)).toThrow('0 to 1, not 1.1');
  });
});

describe('seeded random', () => {
  test('the same seed gives the same stream, another seed another', () => {
    const stream = (seed: number) => {
      const random = seededRandom(seed);
      return Array.from({ length: 50 }, () => [random.uniform(), random.normal(), random.index(7)]);
    };
    expect(stream(11)).toEqual(stream(11));
    expect(stream(11)).not.toEqual(stream(12));
  });
  test('uniforms are flat and normals have mean 0, variance 1, tails as they should', () => {
    const random = seededRandom(5);
    const n = 60_000;
    const bins = new Array<number>(20).fill(0);
    let sum = 0;
    let squares = 0;
    let beyond2 = 0;
    for (let i = 0; i < n; i++) {
      bins[Math.floor(random.uniform() * 20)]!++;
      const z = random.normal();
      sum += z;
      squares += z * z;
      if (Math.abs(z) > 2) beyond2++;
    }
    const chi2 = bins.reduce((total, seen) => total + (seen - n / 20) ** 2 / (n / 20), 0);
    expect(chi2).toBeLessThan(43.8); // 99.9 % point with 19 degrees of freedom
    expect(Math.abs(sum / n)).toBeLessThan(4 / Math.sqrt(n));
    expect(Math.abs(squares / n - 1)).toBeLessThan(4 * Math.sqrt(2 / n));
    expect(beyond2 / n).toBeCloseTo(0.0455, 2);
  });
  test('the first numbers of neighbouring seeds are as flat as any', () => {
    for (const skip of [0, 1, 2, 5]) {
      const bins = new Array<number>(20).fill(0);
      let product = 0;
      let before = 0;
      for (let seed = 0; seed < 4000; seed++) {
        const random = seededRandom(seed);
        for (let i = 0; i < skip; i++) random.uniform();
        const u = random.uniform();
        bins[Math.floor(u * 20)]!++;
        product += (u - 0.5) * before;
        before = u - 0.5;
      }
      const chi2 = bins.reduce((total, seen) => total + (seen - 200) ** 2 / 200, 0);
      expect(chi2).toBeLessThan(43.8);
      // Correlation of one seed's number with the next seed's, four standard errors.
      expect(Math.abs((12 * product) / 4000)).toBeLessThan(4 / Math.sqrt(4000));
    }
  });
});

test('inverse of a positive definite matrix times the matrix is one; others have none', () => {
  const matrix = Float64Array.of(4, 1, 0.5, 1, 3, -0.2, 0.5, -0.2, 2);
  const inverse = invertPositiveDefinite(matrix, 3)!;
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++) {
      let sum = 0;
      for (let m = 0; m < 3; m++) sum += matrix[3 * i + m]! * inverse[3 * m + j]!;
      expect(sum).toBeCloseTo(i === j ? 1 : 0, 14);
    }
  expect(invertPositiveDefinite(Float64Array.of(1, 2, 2, 1), 2)).toBeNull();
});
