import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { correlationAt, semivariance, type Covariance } from '../../../analysis/place/covariance.ts';
import { fitCovariance } from '../../../analysis/place/fit-covariance.ts';
import { Kriging } from '../../../analysis/place/kriging.ts';
import { empiricalVariogram, fitVariogram } from '../../../analysis/place/variogram.ts';
import { cholesky } from '../../../analysis/math/positive-definite.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import gstat from '../../reference/place/gstat-values.json' with { type: 'json' };
import { constant, planeDistances, trendOf } from './planes.ts';

const { xKm, yKm, zinc, dist } = gstat.meuse;
const distancesKm = planeDistances(xKm, yKm);
const logZinc = zinc.map(Math.log);

describe('gstat on the zinc of the river Meuse', () => {
  const expected = gstat.variogram;
  const bins = empiricalVariogram(distancesKm, logZinc, expected.cutoffKm / 16, expected.cutoffKm);

  test('empirical semivariogram', () => {
    expect(bins.map((bin) => bin.pairs)).toEqual(expected.pairs);
    bins.forEach((bin, i) => {
      expect(bin.meanKm).toBeCloseTo(expected.meanKm[i]!, 9);
      expect(bin.semivariance).toBeCloseTo(expected.semivariance[i]!, 9);
    });
  });

  for (const kind of ['spherical', 'exponential'] as const)
    test(`${kind} fit: no worse than gstat's, and the same within 0.2 %`, () => {
      const { nugget, sill, rangeKm, error } = expected[kind];
      const fit = fitVariogram(bins, kind);
      expect(fit.error).toBeLessThan(error * 1.000001);
      expect(fit.error / error).toBeCloseTo(1, 4);
      expect(Math.abs(fit.covariance.sill / sill - 1)).toBeLessThan(0.002);
      expect(Math.abs(fit.covariance.rangeKm / rangeKm - 1)).toBeLessThan(0.002);
      expect(Math.abs(fit.covariance.nugget / nugget - 1)).toBeLessThan(0.002);
    });
});

describe('restricted maximum likelihood: gls of nlme', () => {
  for (const kind of ['exponential', 'spherical'] as const)
    test(kind, () => {
      const expected = gstat.reml[kind];
      const data = { distancesKm, trend: trendOf(155, dist.map(Math.sqrt)), values: logZinc };
      const fit = fitCovariance(data, { kind });
      const { sill, nugget, rangeKm } = fit.covariance;
      expect(fit.logLikelihood).toBeGreaterThan(expected.logLikelihood - 1e-4);
      expect(fit.logLikelihood).toBeCloseTo(expected.logLikelihood, 4);
      expect(rangeKm / expected.rangeKm).toBeCloseTo(1, 4);
      expect(nugget / (sill + nugget)).toBeCloseTo(expected.nuggetShare, 4);
      expect(sill + nugget).toBeCloseTo(expected.variance, 4);
      const kriging = new Kriging({ ...data, covariance: fit.covariance });
      kriging.coefficients(logZinc).forEach((b, j) => expect(b).toBeCloseTo(expected.coefficients[j]!, 4));
    });
});

/** Values at `n` points of a square of 300 km with a known covariance, trend -0.006 an elevation unit, and errors. */
function simulated(seed: number, n: number, { sill, rangeKm, nugget }: Omit<Covariance, 'kind'>) {
  const random = seededRandom(seed);
  const draw = (top: number) => Array.from({ length: n }, () => random.uniform() * top);
  const x = draw(300);
  const y = draw(300);
  const elevationM = draw(1000);
  const errorVariance = draw(1);
  const distances = planeDistances(x, y);
  const matrix = distances.map((h) => sill * correlationAt('exponential', h, rangeKm));
  for (let i = 0; i < n; i++) matrix[i * n + i]! += nugget + errorVariance[i]!;
  const factor = new Float64Array(n * n);
  cholesky(matrix, n, factor);
  const noise = Array.from({ length: n }, () => random.normal());
  const values = elevationM.map((e, i) => {
    let sum = -4 - 0.006 * e;
    for (let j = 0; j <= i; j++) sum += factor[i * n + j]! * noise[j]!;
    return sum;
  });
  return { distancesKm: distances, trend: trendOf(n, elevationM), values, errorVariance };
}

describe('restricted maximum likelihood, by simulation and by properties', () => {
  test('known errors are not taken for variation: total variance unbiased, and far too large without them', () => {
    const truth = { sill: 1.5, rangeKm: 40, nugget: 0.2 };
    let told = 0;
    let untold = 0;
    const runs = 30;
    for (let seed = 1; seed <= runs; seed++) {
      const { errorVariance, ...data } = simulated(seed, 50, truth);
      const a = fitCovariance({ ...data, errorVariance }).covariance;
      const b = fitCovariance(data).covariance;
      told += (a.sill + a.nugget) / runs;
      untold += (b.sill + b.nugget) / runs;
    }
    // Standard error of the mean of 30 such variances is about 0.07; the mean error variance is 0.5.
    expect(Math.abs(told - 1.7)).toBeLessThan(0.2);
    expect(untold).toBeGreaterThan(2.0);
  });

  test('with errors all zero the closed form and the search for the variance agree', () => {
    const { errorVariance, ...data } = simulated(3, 40, { sill: 1, rangeKm: 60, nugget: 0.1 });
    const closed = fitCovariance(data);
    const searched = fitCovariance({ ...data, errorVariance: errorVariance.map(() => 1e-12) });
    expect(searched.logLikelihood).toBeCloseTo(closed.logLikelihood, 4);
    expect(searched.covariance.sill).toBeCloseTo(closed.covariance.sill, 2);
  });

  test('the likelihood is that of the contrasts: no trend moves it', () => {
    const { trend, values, distancesKm } = simulated(5, 30, { sill: 1, rangeKm: 60, nugget: 0.1 });
    const moved = values.map((v, i) => v + 100 - 0.03 * trend[2 * i + 1]!);
    const a = fitCovariance({ trend, values, distancesKm });
    const b = fitCovariance({ trend, values: moved, distancesKm });
    expect(b.logLikelihood).toBeCloseTo(a.logLikelihood, 6);
  });

  test('an expectation decides where the data say little, and little where they say much', () => {
    const few = simulated(8, 6, { sill: 1, rangeKm: 60, nugget: 0 });
    const many = simulated(8, 150, { sill: 1, rangeKm: 60, nugget: 0 });
    const expected = {
      expectedRange: { km: 100, logSpread: 0.3 },
      expectedNugget: { share: 0.2, spread: 0.1 },
    };
    const of = (data: typeof few) => fitCovariance(data, expected).covariance;
    expect(Math.abs(Math.log(of(few).rangeKm / 100))).toBeLessThan(0.2);
    const free = fitCovariance(many).covariance;
    expect(Math.abs(Math.log(of(many).rangeKm / 100))).toBeLessThan(
      Math.abs(Math.log(free.rangeKm / 100)) + 1e-6,
    );
  });

  test('coincident stations, equal values, too few stations', () => {
    const x = [0, 0, 0, 50, 90, 120];
    const distances = planeDistances(x, [0, 0, 0, 10, 20, 5]);
    const fit = fitCovariance({ distancesKm: distances, trend: constant(6), values: [1, 2, 1.5, 4, 2, 3] });
    for (const value of Object.values(fit.covariance)) expect(value).not.toBeNaN();
    expect(fit.covariance.nugget).toBeGreaterThan(0.05);
    const equal = fitCovariance({ distancesKm: distances, trend: constant(6), values: [2, 2, 2, 2, 2, 2] });
    expect(equal.covariance.sill + equal.covariance.nugget).toBeLessThan(1e-6);
    const kriging = new Kriging({ distancesKm: distances, trend: constant(6), covariance: equal.covariance });
    expect(kriging.estimate([2, 2, 2, 2, 2, 2], [30, 30, 30, 30, 60, 90], [1])).toBeCloseTo(2, 9);
    expect(() =>
      fitCovariance({
        distancesKm: planeDistances([0, 1, 2], [0, 0, 0]),
        trend: constant(3),
        values: [1, 2, 3],
      }),
    ).toThrow('3 stations with 1 trend columns');
  });
});

describe('variogram fit', () => {
  test('finds the model a variogram was drawn from', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('exponential' as const, 'spherical' as const),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.5, max: 5, noNaN: true }),
        fc.double({ min: 20, max: 90, noNaN: true }),
        (kind, nugget, sill, rangeKm) => {
          const model = { kind, nugget, sill, rangeKm };
          const bins = Array.from({ length: 15 }, (_, i) => ({
            pairs: 50 + i,
            meanKm: 5 + 10 * i,
            semivariance: semivariance(model, 5 + 10 * i),
          }));
          const { covariance } = fitVariogram(bins, kind);
          expect(covariance.rangeKm / rangeKm).toBeCloseTo(1, 3);
          expect(covariance.sill).toBeCloseTo(sill, 2);
          expect(covariance.nugget).toBeCloseTo(nugget, 2);
        },
      ),
    );
  });

  test('never a negative part, whatever the bins', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 9, noNaN: true }), { minLength: 3, maxLength: 12 }),
        (list) => {
          const bins = list.map((semivariance, i) => ({ pairs: 9, meanKm: 10 * (i + 1), semivariance }));
          const { covariance, error } = fitVariogram(bins, 'exponential');
          expect(covariance.sill).toBeGreaterThanOrEqual(0);
          expect(covariance.nugget).toBeGreaterThanOrEqual(0);
          expect(error).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  test('too few classes, and classes that make no sense', () => {
    expect(() => fitVariogram([{ pairs: 3, meanKm: 5, semivariance: 1 }], 'spherical')).toThrow('got 1');
    expect(() => empiricalVariogram(distancesKm, logZinc, 0, 10)).toThrow('0 km');
    const bins = empiricalVariogram(planeDistances([0, 0, 5], [0, 0, 0]), [1, 3, 4], 2, 10);
    // Pairs: at one place (difference 2), and twice 5 km apart (differences 1 and 3).
    expect(bins).toEqual([
      { pairs: 1, meanKm: 0, semivariance: 2 },
      { pairs: 2, meanKm: 5, semivariance: 2.5 },
    ]);
  });
});

test('covariance: values by hand', () => {
  const model: Covariance = { kind: 'spherical', sill: 4, rangeKm: 10, nugget: 1 };
  // Halfway: 1 - 0.75 + 0.0625 = 0.3125 of the sill is left.
  expect(semivariance(model, 5)).toBeCloseTo(1 + 4 * 0.6875, 12);
  expect(semivariance(model, 0)).toBe(0);
  expect(semivariance(model, 11)).toBe(5);
  expect(correlationAt('exponential', 30, 10)).toBeCloseTo(0.0498, 4);
});
