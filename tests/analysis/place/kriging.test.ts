import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Covariance } from '../../../analysis/place/covariance.ts';
import { Kriging } from '../../../analysis/place/kriging.ts';
import gstat from '../../reference/place/gstat-values.json' with { type: 'json' };
import published from '../../reference/place/published.json' with { type: 'json' };
import { constant, planeDistances, planeDistancesTo, trendOf } from './planes.ts';

function close(found: ArrayLike<number>, expected: readonly number[], within: number): void {
  expect(found.length).toBe(expected.length);
  expected.forEach((value, i) => expect(Math.abs(found[i]! - value), `at ${i}`).toBeLessThan(within));
}

describe('Isaaks and Srivastava (1989), seven samples', () => {
  const example = published.isaaks_srivastava;
  const { x, y, v } = example;
  // The book's exponential reaches 95 % at its range: exp(-3 h/10).
  const covariance: Covariance = {
    kind: 'exponential',
    sill: example.sill,
    rangeKm: example.practical_range / 3,
    nugget: 0,
  };
  const kriging = new Kriging({ distancesKm: planeDistances(x, y), trend: constant(7), covariance });
  const to = planeDistancesTo(x, y, example.point[0]!, example.point[1]!);

  test('weights, estimate and variance', () => {
    close(kriging.weights(to, [1]), example.weights, 0.0006);
    expect(kriging.estimate(v, to, [1])).toBeCloseTo(example.estimate, 1);
    expect(kriging.variance(to, [1])).toBeCloseTo(example.variance, 2);
    expect(kriging.surface(v)(to, [1])).toBeCloseTo(kriging.estimate(v, to, [1]), 9);
  });
});

describe('gstat on the zinc of the river Meuse', () => {
  const { xKm, yKm, zinc, dist } = gstat.meuse;
  const { points } = gstat;
  const values = zinc.map(Math.log);
  const rootDist = dist.map(Math.sqrt);
  const cases = {
    ordinarySpherical: { kind: 'spherical', trend: [] },
    ordinaryExponential: { kind: 'exponential', trend: [] },
    universal: { kind: 'exponential', trend: [rootDist] },
  } as const;

  for (const [name, { kind, trend }] of Object.entries(cases)) {
    test(name, () => {
      const expected = gstat[name as keyof typeof cases];
      const { sill, rangeKm, nugget } = expected;
      const kriging = new Kriging({
        distancesKm: planeDistances(xKm, yKm),
        trend: trendOf(values.length, ...trend),
        covariance: { kind, sill, rangeKm, nugget },
      });
      const surface = kriging.surface(values);
      points.xKm.forEach((px, i) => {
        const to = planeDistancesTo(xKm, yKm, px, points.yKm[i]!);
        const row = trend.length ? [1, points.rootDist[i]!] : [1];
        expect(kriging.estimate(values, to, row)).toBeCloseTo(expected.estimates[i]!, 8);
        expect(surface(to, row)).toBeCloseTo(expected.estimates[i]!, 8);
        expect(kriging.variance(to, row)).toBeCloseTo(expected.variances[i]!, 8);
      });
      const left = kriging.leaveOneOut(values);
      close(left.residuals, expected.leftOutResiduals, 1e-8);
      close(left.variances, expected.leftOutVariances, 1e-8);
    });
  }
});

test('errors that differ by station: plain matrices in R, leave-one-out by leaving out', () => {
  const { xKm, yKm, elevationM, value, errorVariance, point, sill, rangeKm, nugget, ...expected } =
    gstat.errors;
  const kriging = new Kriging({
    distancesKm: planeDistances(xKm, yKm),
    trend: trendOf(7, elevationM),
    covariance: { kind: 'exponential', sill, rangeKm, nugget },
    errorVariance,
  });
  const to = planeDistancesTo(xKm, yKm, point.xKm, point.yKm);
  const row = [1, point.elevationM];
  close(kriging.weights(to, row), expected.weights, 1e-9);
  expect(kriging.estimate(value, to, row)).toBeCloseTo(expected.estimate, 9);
  expect(kriging.variance(to, row)).toBeCloseTo(expected.variance, 9);
  expect(kriging.variance(to, row, 'surface')).toBeCloseTo(expected.variance - nugget, 9);
  close(kriging.coefficients(value), expected.coefficients, 1e-9);
  const left = kriging.leaveOneOut(value);
  close(
    value.map((v, i) => v - left.residuals[i]!),
    expected.leftOutEstimates,
    1e-8,
  );
  // R's variance is of the true value; a left-out observation has the station's own error besides.
  close(
    left.variances.map((v, i) => v - errorVariance[i]!),
    expected.leftOutVariances,
    1e-8,
  );
});

describe('a prior on coefficients', () => {
  const { xKm, yKm, elevationM, value, sill, rangeKm, nugget } = gstat.errors;
  const distancesKm = planeDistances(xKm, yKm);
  const covariance: Covariance = { kind: 'exponential', sill, rangeKm, nugget };
  const trend = trendOf(7, elevationM);
  const to = planeDistancesTo(xKm, yKm, 40, 35);

  test('a very wide one is none, a very tight one is a trend without that column', () => {
    const none = new Kriging({ distancesKm, trend, covariance });
    const wide = new Kriging({ distancesKm, trend, covariance, coefficientVariance: [Infinity, 1e6] });
    const tight = new Kriging({ distancesKm, trend, covariance, coefficientVariance: [Infinity, 1e-14] });
    const flat = new Kriging({ distancesKm, trend: constant(7), covariance });
    expect(wide.estimate(value, to, [1, 260])).toBeCloseTo(none.estimate(value, to, [1, 260]), 6);
    expect(tight.estimate(value, to, [1, 260])).toBeCloseTo(flat.estimate(value, to, [1]), 6);
    expect(tight.variance(to, [1, 260])).toBeCloseTo(flat.variance(to, [1]), 6);
  });

  test('lets one station use a lapse rate with its uncertainty', () => {
    const variance = 0.002 ** 2;
    const kriging = new Kriging({
      distancesKm: Float64Array.of(0),
      trend: Float64Array.of(1, 100),
      covariance: { kind: 'exponential', sill: 1, rangeKm: 50, nugget: 0 },
      coefficientVariance: [Infinity, variance],
    });
    expect(kriging.keptColumns).toEqual([0, 1]);
    // Same place, 500 m higher: the value itself, unsure by 500 m of lapse rate.
    expect(kriging.estimate([-3], [0], [1, 600])).toBeCloseTo(-3, 12);
    expect(kriging.variance([0], [1, 600])).toBeCloseTo(500 ** 2 * variance, 9);
  });
});

const network = fc
  .record({
    n: fc.integer({ min: 1, max: 14 }),
    kind: fc.constantFrom('exponential' as const, 'spherical' as const),
    sill: fc.double({ min: 0.1, max: 5, noNaN: true }),
    rangeKm: fc.double({ min: 5, max: 300, noNaN: true }),
    seedling: fc.array(fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 200 })), {
      minLength: 15,
      maxLength: 15,
    }),
    values: fc.array(fc.double({ min: -30, max: 10, noNaN: true }), { minLength: 14, maxLength: 14 }),
  })
  .map(({ n, kind, sill, rangeKm, seedling, values }) => ({
    covariance: { kind, sill, rangeKm, nugget: 0 },
    x: seedling.slice(0, n).map(([x]) => x),
    y: seedling.slice(0, n).map(([, y]) => y),
    point: seedling[14]!,
    values: values.slice(0, n),
  }));

describe('properties, coincident stations among them', () => {
  test('weights sum to one, variance is not negative, a shift shifts the estimate, nothing is NaN', () => {
    fc.assert(
      fc.property(
        network,
        fc.constantFrom(0, 0.3),
        fc.boolean(),
        fc.double({ min: -50, max: 50, noNaN: true }),
        ({ covariance, x, y, point, values }, nugget, withTrend, shift) => {
          const n = x.length;
          const kriging = new Kriging({
            distancesKm: planeDistances(x, y),
            trend: withTrend
              ? trendOf(
                  n,
                  x.map((v, i) => v * 3 + ((i * 7) % 5)),
                )
              : constant(n),
            covariance: { ...covariance, nugget },
          });
          const to = planeDistancesTo(x, y, point[0], point[1]);
          const row = withTrend ? [1, 120] : [1];
          for (const target of ['place', 'surface'] as const) {
            const weights = kriging.weights(to, row, target);
            expect(weights.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 6);
            expect(kriging.variance(to, row, target)).toBeGreaterThanOrEqual(0);
            const estimate = kriging.estimate(values, to, row, target);
            expect(Number.isFinite(estimate)).toBe(true);
            const size = 1 + Math.max(...weights.map(Math.abs));
            expect(
              Math.abs(kriging.surface(values, target)(to, row) - estimate) / (1 + Math.abs(estimate)),
            ).toBeLessThan(1e-6 * size);
            const shifted = values.map((v) => v + shift);
            expect(Math.abs(kriging.estimate(shifted, to, row, target) - estimate - shift)).toBeLessThan(
              1e-5 * size,
            );
          }
          const { variances } = kriging.leaveOneOut(values);
          for (const variance of variances) expect(variance).toBeGreaterThan(0);
        },
      ),
      { numRuns: 300 },
    );
  });

  test('exact at a station that stands alone, with its variance 0; also with a nugget when a place is asked for', () => {
    fc.assert(
      fc.property(network, fc.constantFrom(0, 0.4), ({ covariance, x, y, values }, nugget) => {
        const kriging = new Kriging({
          distancesKm: planeDistances(x, y),
          trend: constant(x.length),
          covariance: { ...covariance, nugget },
        });
        x.forEach((_, i) => {
          const to = planeDistancesTo(x, y, x[i]!, y[i]!);
          if (to.filter((h) => h === 0).length > 1) return;
          expect(kriging.estimate(values, to, [1])).toBeCloseTo(values[i]!, 6);
          expect(kriging.variance(to, [1])).toBeLessThan(1e-6);
        });
      }),
      { numRuns: 200 },
    );
  });

  test('left out in closed form is left out for real', () => {
    fc.assert(
      fc.property(network, ({ covariance, x, y, values }) => {
        fc.pre(x.length > 2);
        const without =
          (i: number) =>
          <T>(list: readonly T[]): T[] =>
            list.filter((_, j) => j !== i);
        const whole = new Kriging({
          distancesKm: planeDistances(x, y),
          trend: constant(x.length),
          covariance: { ...covariance, nugget: 0.2 },
        }).leaveOneOut(values);
        x.forEach((_, i) => {
          const rest = without(i);
          const kriging = new Kriging({
            distancesKm: planeDistances(rest(x), rest(y)),
            trend: constant(x.length - 1),
            covariance: { ...covariance, nugget: 0.2 },
          });
          const to = planeDistancesTo(rest(x), rest(y), x[i]!, y[i]!);
          // A neighbour at the very place has its own nugget, which isn't this station's.
          const away = to.map((h) => Math.max(h, 1e-5));
          expect(values[i]! - kriging.estimate(rest(values), away, [1])).toBeCloseTo(whole.residuals[i]!, 4);
          expect(kriging.variance(away, [1])).toBeCloseTo(whole.variances[i]!, 4);
        });
      }),
      { numRuns: 60 },
    );
  });
});
