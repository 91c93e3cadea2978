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
    test(`${kind} fit: no worse than gstat's, and the same within 0.1 %`, () => {
      const { nugget, sill, rangeKm, error } = expected[kind];
      const fit = fitVariogram(bins, kind);
      expect(fit.error).toBeLessThan(error * 1.000001);
      expect(fit.error / error).toBeCloseTo(1, 4);
      expect(fit.covariance.sill / sill).toBeCloseTo(1, 2);
      expect(fit.covariance.rangeKm / rangeKm).toBeCloseTo(1, 2);
      expect(Math.abs(fit.covariance.nugget - nugget)).toBeLessThan(5e-4);
    });
});

describe('restricted maximum likelihood: gls of nlme', () => {
  for (const kind of ['exponential', 'spherical'] as const)
    test(kind, () => {
      const expected = gstat.reml[kind];
      const data = { distancesKm, trend: trendOf(155, dist.map(Math.sqrt)), values: logZinc };
      const fit = fitCovariance(data, { kind });
      const { sill, nugget, rangeKm } = fit.covariance;
      // nlme's constant leaves out (p/2) log(2 pi) of nothing: the two logarithms are of the same density.
      expect(fit.logLikelihood).toBeGreaterThan(expected.logLikelihood - 1e-4);
      expect(fit.logLikelihood).toBeCloseTo(expected.logLikelihood, 2);
      expect(rangeKm / expected.rangeKm).toBeCloseTo(1, 2);
      expect(nugget / (sill + nugget)).toBeCloseTo(expected.nuggetShare, 2);
      expect(sill + nugget).toBeCloseTo(expected.variance, 3);
      const kriging = new Kriging({ ...data, covariance: fit.covariance });
      kriging.coefficients(logZinc).forEach((b, j) => expect(b).toBeCloseTo(expected.coefficients[j]!, 2));
    });
});
