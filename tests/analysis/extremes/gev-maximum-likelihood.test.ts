import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  deltaInterval,
  profileReturnLevel,
  profileShape,
  returnLevelVariance,
} from '../../../analysis/extremes/gev-intervals.ts';
import { colesShape, gevQuantile, gevReturnLevel } from '../../../analysis/extremes/gev.ts';
import { gevLikelihood, likelihoodPoint } from '../../../analysis/extremes/gev-likelihood.ts';
import {
  fitGevByMaximumLikelihood,
  standardErrors,
} from '../../../analysis/extremes/gev-maximum-likelihood.ts';
import { fitMovingGev, movingGevAt } from '../../../analysis/extremes/gev-moving-location.ts';
import { levelOfPeriod } from '../../../analysis/extremes/winter-minimum.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import evd from '../../reference/extremes/evd-values.json' with { type: 'json' };
import published from '../../reference/extremes/published.json' with { type: 'json' };
import { havePublicSeries, publicSeries } from '../../reference/extremes/public-series.ts';
import scipy from '../../reference/extremes/scipy-values.json' with { type: 'json' };
import made from '../../reference/extremes/series.json' with { type: 'json' };

type Name = keyof typeof evd.fits;

/** Differences in units of the standard error: evd's own search stops within about 1e-3 of one. */
function expectLikeEvd(name: Name, values: readonly number[], index: readonly number[]): void {
  const reference = evd.fits[name];
  const fit = fitGevByMaximumLikelihood(values);
  expect(fit.converged).toBe(true);
  expect(values.length).toBe(reference.n);
  const ours = [fit.gev.location, fit.gev.scale, colesShape(fit.gev.k)];
  const errors = standardErrors(fit)!;
  [errors.location, errors.scale, errors.k].forEach((error, i) => {
    expect(Math.abs(ours[i]! - reference.mu_sigma_xi[i]!)).toBeLessThan(2e-3 * error);
    expect(Math.abs(error / reference.se[i]! - 1)).toBeLessThan(5e-3);
  });
  expect(Math.abs(fit.logLikelihood - reference.loglik)).toBeLessThan(2e-5);
  expect(fit.logLikelihood).toBeGreaterThan(reference.loglik - 1e-7);
  [2, 10, 50].forEach((period, i) => {
    const half = Math.sqrt(returnLevelVariance(fit, period));
    expect(Math.abs(gevReturnLevel(period, fit.gev) - reference.level_2_10_50[i]!)).toBeLessThan(3e-3 * half);
  });
  const profile = profileShape(values, fit, 0.9);
  // evd interpolates its profile between points 0.01 apart.
  expect(Math.abs(-profile.high - reference.profile90_xi[0]!)).toBeLessThan(2e-3);
  expect(Math.abs(-profile.low - reference.profile90_xi[1]!)).toBeLessThan(2e-3);

  const moving = fitMovingGev(values, index);
  const [mu0, mu1, sigma, xi] = reference.moving.mu0_mu1_sigma_xi;
  expect(moving.converged).toBe(true);
  expect(moving.originWinter).toBeCloseTo(reference.moving.index_mean, 5);
  expect(Math.abs(moving.location - mu0!)).toBeLessThan(2e-3 * errors.location);
  expect(Math.abs(moving.slope - mu1!)).toBeLessThan(2e-3 * moving.slopeError!);
  expect(Math.abs(moving.scale - sigma!)).toBeLessThan(2e-3 * errors.scale);
  expect(Math.abs(colesShape(moving.k) - xi!)).toBeLessThan(2e-3 * errors.k);
  expect(Math.abs(moving.slopeError! / reference.moving.slope_se - 1)).toBeLessThan(1e-2);
  expect(Math.abs(moving.logLikelihood - reference.moving.loglik)).toBeLessThan(2e-5);
  expect(moving.ratio).toBeCloseTo(2 * (reference.moving.loglik - reference.loglik), 3);
}

function expectLikeScipy(name: Name, values: readonly number[]): void {
  const { k_loc_scale, loglik } = scipy.series[name];
  const fit = fitGevByMaximumLikelihood(values);
  const errors = standardErrors(fit)!;
  expect(Math.abs(fit.gev.k - k_loc_scale[0]!)).toBeLessThan(1e-3 * errors.k);
  expect(Math.abs(fit.gev.location - k_loc_scale[1]!)).toBeLessThan(1e-3 * errors.location);
  expect(Math.abs(fit.gev.scale - k_loc_scale[2]!)).toBeLessThan(1e-3 * errors.scale);
  expect(Math.abs(fit.logLikelihood - loglik)).toBeLessThan(1e-6);
}

describe('made-up series against evd and SciPy', () => {
  test.each(Object.entries(made.series))('%s', (name, values) => {
    expectLikeEvd(
      name as Name,
      values,
      values.map((_, i) => i + 1),
    );
    expectLikeScipy(name as Name, values);
  });
});

describe.skipIf(!havePublicSeries)('public series against evd, SciPy and the printed fits', () => {
  test.each(['port_jervis', 'phoenix', 'fort_collins', 'denver'] as const)('%s', (name) => {
    const { values, winters } = publicSeries()[name];
    expectLikeEvd(name, values, winters);
    expectLikeScipy(name, values);
  });
  test('Port Jervis winter minima: printed fit and lows', () => {
    const { values } = publicSeries().port_jervis;
    const { mu, sigma, xi, se, loglik, low_c } = published.public_series.port_jervis;
    const fit = fitGevByMaximumLikelihood(values);
    expect(fit.gev.location).toBeCloseTo(mu, 3);
    expect(fit.gev.scale).toBeCloseTo(sigma, 3);
    expect(colesShape(fit.gev.k)).toBeCloseTo(xi, 3);
    expect(standardErrors(fit)!.location).toBeCloseTo(se[0]!, 3);
    expect(fit.logLikelihood).toBeCloseTo(loglik, 3);
    for (const [period, low] of Object.entries(low_c))
      expect(Math.abs(levelOfPeriod(Number(period), fit.gev) - low)).toBeLessThan(0.006);
  });
  test('Phoenix: location linear in the year, as printed', () => {
    const { values, winters } = publicSeries().phoenix;
    const { mu0_at_48, mu1, sigma, xi, loglik, loglik_still } = published.public_series.phoenix_moving;
    const moving = fitMovingGev(values, winters);
    expect(movingGevAt(moving, 48).location).toBeCloseTo(mu0_at_48, 2);
    expect(moving.slope).toBeCloseTo(mu1, 4);
    expect(moving.scale).toBeCloseTo(sigma, 3);
    expect(colesShape(moving.k)).toBeCloseTo(xi, 3);
    expect(moving.logLikelihood).toBeCloseTo(loglik, 3);
    expect(moving.stationary.logLikelihood).toBeCloseTo(loglik_still, 3);
    expect(moving.p).toBeLessThan(1e-5);
  });
});

describe('Port Pirie (Coles 2001, pages 59-60)', () => {
  const { data, published: book, computed } = published.port_pirie;
  const fit = fitGevByMaximumLikelihood(data);

  test('fit, log-likelihood, errors, covariance', () => {
    expect(fit.gev.location).toBeCloseTo(book.mu, 2);
    expect(fit.gev.scale).toBeCloseTo(book.sigma, 3);
    expect(Math.abs(colesShape(fit.gev.k) - book.xi)).toBeLessThan(5e-4);
    expect(fit.logLikelihood).toBeCloseTo(book.loglik, 2);
    const ours = [fit.gev.location, fit.gev.scale, colesShape(fit.gev.k)];
    ours.forEach((value, i) => expect(Math.abs(value - computed.mle[i]!)).toBeLessThan(6e-6));
    expect(fit.logLikelihood).toBeCloseTo(computed.loglik, 6);
    const errors = standardErrors(fit)!;
    [errors.location, errors.scale, errors.k].forEach((error, i) => {
      expect(Math.abs(error - computed.se[i]!)).toBeLessThan(1e-5);
    });
    const sign = [1, 1, -1]; // ours are of k = -xi
    book.cov.forEach((row, i) =>
      row.forEach((c, j) =>
        expect(Math.abs(sign[i]! * sign[j]! * fit.covariance![3 * i + j]! - c)).toBeLessThan(
          0.006 * Math.abs(c),
        ),
      ),
    );
  });
  test('return levels with delta and profile intervals', () => {
    for (const [period, value] of Object.entries(computed.rl))
      expect(gevReturnLevel(Number(period), fit.gev)).toBeCloseTo(value, 5);
    expect(returnLevelVariance(fit, 10)).toBeCloseTo(computed.rl_var['10'], 6);
    expect(returnLevelVariance(fit, 100)).toBeCloseTo(computed.rl_var['100'], 5);
    const ten = deltaInterval(fit, 10, 0.95);
    expect([ten.estimate, ten.low, ten.high].map((v) => v.toFixed(2))).toEqual(['4.30', '4.19', '4.40']);
    // The book prints 4.41 for 4.404: its own rounding of the standard error.
    expect(Math.abs(ten.high - book.rl10_ci[1]!)).toBeLessThan(0.007);
    const hundred = deltaInterval(fit, 100, 0.95);
    expect([hundred.estimate, hundred.low, hundred.high].map((v) => v.toFixed(2))).toEqual([
      '4.69',
      '4.38',
      '5.00',
    ]);
    const { rl10, rl100, xi } = computed.profile95;
    const near = (interval: { low: number; high: number }, [low, high]: number[]) => {
      expect(interval.low).toBeCloseTo(low!, 5);
      expect(interval.high).toBeCloseTo(high!, 5);
    };
    near(profileReturnLevel(data, fit, 10, 0.95), rl10);
    near(profileReturnLevel(data, fit, 100, 0.95), rl100);
    const shape = profileShape(data, fit, 0.95);
    near({ low: -shape.high, high: -shape.low }, xi);
  });
});

test('invented winter minima: maximum likelihood on the negated values', () => {
  const { data, computed_on_negated } = published.synthetic_winter_minima_f;
  const fit = fitGevByMaximumLikelihood(data.map((x) => -x));
  [fit.gev.location, fit.gev.scale, colesShape(fit.gev.k)].forEach((value, i) =>
    expect(value).toBeCloseTo(computed_on_negated.mle[i]!, 5),
  );
  expect(fit.logLikelihood).toBeCloseTo(computed_on_negated.loglik, 5);
});

test('gradient and second derivatives agree with differences, on both sides of xi = 0 and through it', () => {
  const random = seededRandom(9);
  const y = Float64Array.from({ length: 25 }, () =>
    gevQuantile(random.uniform(), { location: 3, scale: 2, k: 0 }),
  );
  const t = y.map((_, i) => i / 12 - 1);
  for (const xi of [-0.12, -0.011, -1e-4, 0, 1e-7, 0.013, 0.12]) {
    const at = Float64Array.of(2.9, Math.log(3), xi, 0.2);
    const point = likelihoodPoint(4);
    gevLikelihood(y, t, at, point);
    const up = likelihoodPoint(4);
    const down = likelihoodPoint(4);
    for (let i = 0; i < 4; i++) {
      const h = 1e-5;
      const high = gevLikelihood(
        y,
        t,
        at.map((v, j) => (i === j ? v + h : v)),
        up,
      );
      const low = gevLikelihood(
        y,
        t,
        at.map((v, j) => (i === j ? v - h : v)),
        down,
      );
      expect(Math.abs((high - low) / (2 * h) - point.gradient[i]!)).toBeLessThan(
        1e-6 * (1 + Math.abs(point.gradient[i]!)),
      );
      for (let j = 0; j < 4; j++) {
        const second = (up.gradient[j]! - down.gradient[j]!) / (2 * h);
        expect(Math.abs(second - point.hessian[4 * i + j]!)).toBeLessThan(1e-6 * (1 + Math.abs(second)));
      }
    }
  }
});

describe('properties', () => {
  test('shift and scale of the values move the fit, order does not', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.integer({ min: -40, max: 40 }),
        fc.integer({ min: 1, max: 20 }),
        (seed, shift, factor) => {
          const random = seededRandom(seed);
          const values = Array.from({ length: 40 }, () =>
            gevQuantile(random.uniform(), { location: 0, scale: 1, k: 0.1 }),
          );
          const a = fitGevByMaximumLikelihood(values);
          const b = fitGevByMaximumLikelihood([...values].reverse().map((v) => shift + factor * v));
          expect(b.gev.location).toBeCloseTo(shift + factor * a.gev.location, 4);
          expect(b.gev.scale).toBeCloseTo(factor * a.gev.scale, 4);
          expect(b.gev.k).toBeCloseTo(a.gev.k, 5);
        },
      ),
      { numRuns: 40 },
    );
  });
  test('samples from -0.3 to 0.4 are all fitted, at a maximum', () => {
    const random = seededRandom(77);
    for (const k of [-0.3, -0.1, 0, 0.2, 0.4])
      for (let i = 0; i < 60; i++) {
        const y = Float64Array.from({ length: 30 }, () =>
          gevQuantile(random.uniform(), { location: -4, scale: 3, k }),
        );
        const fit = fitGevByMaximumLikelihood(y);
        if (!fit.converged) {
          // The likelihood then rises towards the forbidden edge xi = -1: no maximum inside.
          expect(fit.gev.k).toBeGreaterThan(0.6);
          continue;
        }
        const x = [fit.gev.location, Math.log(fit.gev.scale), -fit.gev.k];
        for (let j = 0; j < 3; j++)
          for (const step of [-0.01, 0.01]) {
            const beside = Float64Array.from(x, (v, m) => (m === j ? v + step : v));
            expect(gevLikelihood(y, null, beside, likelihoodPoint(3))).toBeGreaterThan(-fit.logLikelihood);
          }
      }
  });
});

test('the moving fit finds a slope put in, and 5 % of trendless series look trended at 0.05', () => {
  const random = seededRandom(31);
  let found = 0;
  const runs = 400;
  for (let r = 0; r < runs; r++) {
    const values = Array.from({ length: 60 }, () =>
      gevQuantile(random.uniform(), { location: 0, scale: 1, k: 0.1 }),
    );
    if (
      fitMovingGev(
        values,
        values.map((_, i) => 1960 + i),
      ).p < 0.05
    )
      found++;
  }
  expect(found / runs).toBeGreaterThan(0.02);
  expect(found / runs).toBeLessThan(0.1);
  const winters = Array.from({ length: 60 }, (_, i) => 1960 + i);
  const drifting = winters.map((w) =>
    gevQuantile(random.uniform(), { location: 0.05 * (w - 1960), scale: 1, k: 0.1 }),
  );
  const moving = fitMovingGev(drifting, winters);
  expect(Math.abs(moving.slope - 0.05)).toBeLessThan(3 * moving.slopeError!);
  expect(movingGevAt(moving, 2010).location - movingGevAt(moving, 2000).location).toBeCloseTo(
    10 * moving.slope,
    10,
  );
});

test('what cannot be fitted says so', () => {
  expect(() => fitGevByMaximumLikelihood([1, 2, 3])).toThrow('at least 10 values, got 3');
  expect(() => fitGevByMaximumLikelihood(new Array(12).fill(4))).toThrow('all are equal');
  expect(() => fitMovingGev([1, 2], [1])).toThrow('2 values need 2 winters, got 1');
  expect(() => fitMovingGev(made.series.gumbel_40, new Array(40).fill(1990))).toThrow('all are 1990');
});
