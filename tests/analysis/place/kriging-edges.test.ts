import { describe, expect, test } from 'vitest';
import { semivariance, type Covariance } from '../../../analysis/place/covariance.ts';
import { Kriging } from '../../../analysis/place/kriging.ts';
import { constant, planeDistances, trendOf } from './planes.ts';

describe('edges of kriging', () => {
  const covariance: Covariance = { kind: 'exponential', sill: 2, rangeKm: 50, nugget: 0 };

  test('one station: its value everywhere, less sure with distance', () => {
    const kriging = new Kriging({
      distancesKm: Float64Array.of(0),
      trend: Float64Array.of(1, 340),
      covariance,
    });
    expect(kriging.keptColumns).toEqual([0]);
    expect(kriging.estimate([-4], [80], [1, 900])).toBeCloseTo(-4, 12);
    // Variance of a difference of two places is twice the semivariance.
    expect(kriging.variance([80], [1, 900])).toBeCloseTo(2 * semivariance(covariance, 80), 12);
    const left = kriging.leaveOneOut([-4]);
    expect(left.residuals[0]).toBeNaN();
    expect(left.variances[0]).toBe(Infinity);
  });

  test('two stations at one place that disagree: their mean, and none of them exactly', () => {
    const kriging = new Kriging({ distancesKm: new Float64Array(4), trend: constant(2), covariance });
    expect(kriging.estimate([-4, -6], [0, 0], [1])).toBeCloseTo(-5, 6);
    expect(kriging.estimate([-4, -6], [30, 30], [1])).toBeCloseTo(-5, 6);
  });

  test('a network that knows of no variation takes the plain mean', () => {
    const flat = { ...covariance, sill: 0 };
    const kriging = new Kriging({
      distancesKm: planeDistances([0, 10, 50], [0, 0, 9]),
      trend: constant(3),
      covariance: flat,
    });
    expect(kriging.estimate([1, 2, 6], [5, 5, 40], [1])).toBeCloseTo(3, 9);
    expect(kriging.variance([5, 5, 40], [1])).toBeLessThan(1e-9);
  });

  test('columns the network cannot bear are dropped from the right, repeats first', () => {
    const x = [0, 40, 90, 130];
    const y = [0, 10, 5, 30];
    const level = [12, 12, 12, 12];
    const kriging = new Kriging({
      distancesKm: planeDistances(x, y),
      trend: trendOf(4, level, x, y, [1, 0, 0, 1]),
      covariance,
    });
    expect(kriging.keptColumns).toEqual([0, 2, 3]);
    expect([...kriging.coefficients([1, 2, 3, 4])].map((b) => b === 0)).toEqual([
      false,
      true,
      false,
      false,
      true,
    ]);
  });

  test('a station that alone carries a column cannot be estimated without itself', () => {
    const x = [0, 40, 90, 130, 160];
    const kriging = new Kriging({
      distancesKm: planeDistances(x, x),
      trend: trendOf(5, [0, 0, 0, 0, 700]),
      covariance,
    });
    const { residuals, variances } = kriging.leaveOneOut([1, 2, 3, 4, 5]);
    expect(variances[4]).toBe(Infinity);
    expect(residuals[4]).toBeNaN();
    expect([...variances].slice(0, 4).every(Number.isFinite)).toBe(true);
  });

  test('what makes no sense is refused', () => {
    const distancesKm = planeDistances([0, 1], [0, 1]);
    const trend = constant(2);
    expect(() => new Kriging({ distancesKm: new Float64Array(3), trend, covariance })).toThrow('square');
    expect(() => new Kriging({ distancesKm, trend: new Float64Array(3), covariance })).toThrow('2 stations');
    expect(() => new Kriging({ distancesKm, trend, covariance: { ...covariance, sill: -1 } })).toThrow(
      'sill',
    );
    expect(() => new Kriging({ distancesKm, trend, covariance: { ...covariance, rangeKm: 0 } })).toThrow(
      'range',
    );
    expect(() => new Kriging({ distancesKm, trend, covariance, errorVariance: [0, -1] })).toThrow(
      'Station 1',
    );
  });
});
