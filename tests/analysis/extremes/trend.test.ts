import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mannKendall, recentCount, senSlope } from '../../../analysis/extremes/trend.ts';
import published from '../../reference/extremes/published.json' with { type: 'json' };
import { havePublicSeries, publicSeries } from '../../reference/extremes/public-series.ts';
import scipy from '../../reference/extremes/scipy-values.json' with { type: 'json' };
import made from '../../reference/extremes/series.json' with { type: 'json' };

describe('Mann-Kendall and Sen, worked examples', () => {
  test.each([
    ['8 values', published.mann_kendall_small.data, published.mann_kendall_small],
    [
      '30 invented winters with ties',
      published.synthetic_winter_minima_f.data,
      published.synthetic_winter_minima_f.mann_kendall,
    ],
  ])('%s', (_, data, { S, var: variance, z, p, sen }) => {
    const test = mannKendall(data);
    expect(test.s).toBe(S);
    expect(test.variance).toBeCloseTo(variance, 6);
    expect(test.z).toBeCloseTo(z, 6);
    expect(test.p).toBeCloseTo(p, 6);
    expect(senSlope(data)).toBeCloseTo(sen, 6);
  });
});

/** Kendall's tau-b = s / sqrt(pairs not tied in the values x all pairs). */
function tauB(values: readonly number[]): number {
  const n = values.length;
  let tied = 0;
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) if (values[i] === values[j]) tied++;
  const pairs = (n * (n - 1)) / 2;
  return mannKendall(values).s / Math.sqrt((pairs - tied) * pairs);
}

describe("SciPy's theilslopes and kendalltau (scipy-values.json)", () => {
  test.each(Object.entries(made.series))('%s', (name, values) => {
    const { theil_sen, kendall_tau_b } = scipy.series[name as keyof typeof scipy.series];
    expect(senSlope(values)).toBeCloseTo(theil_sen, 12);
    expect(tauB(values)).toBeCloseTo(kendall_tau_b, 12);
  });
  test.skipIf(!havePublicSeries)('public series', () => {
    for (const [name, { values, winters }] of Object.entries(publicSeries())) {
      const { theil_sen, kendall_tau_b } = scipy.series[name as keyof typeof scipy.series];
      expect(senSlope(values, winters)).toBeCloseTo(theil_sen, 12);
      expect(tauB(values)).toBeCloseTo(kendall_tau_b, 12);
    }
  });
});

test('a trend turned round changes sign only; a line has its own slope', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 4, maxLength: 40 }), (values) => {
      const forward = mannKendall(values);
      const backward = mannKendall([...values].reverse());
      expect(backward.s + forward.s).toBe(0);
      expect(backward.p).toBeCloseTo(forward.p, 12);
      expect(forward.p).toBeLessThanOrEqual(1);
      expect(senSlope([...values].reverse())).toBeCloseTo(-senSlope(values), 12);
    }),
  );
  const times = [1950, 1951, 1955, 1960, 1990];
  expect(
    senSlope(
      times.map((t) => 3 - 0.25 * t),
      times,
    ),
  ).toBeCloseTo(-0.25, 12);
});

test('all values equal: no trend, nothing divided by zero', () => {
  expect(mannKendall([5, 5, 5, 5, 5])).toEqual({ s: 0, variance: 0, z: 0, p: 1 });
  expect(senSlope([5, 5, 5, 5])).toBe(0);
});

test('too few values and bad times say so', () => {
  expect(() => mannKendall([1, 2, 3])).toThrow('at least 4 values, got 3');
  expect(() => senSlope([1, 2])).toThrow('at least 4 values, got 2');
  expect(() => senSlope([1, 2, 3, 4], [1, 2, 2, 3])).toThrow('2 is followed by 2');
  expect(() => senSlope([1, 2, 3, 4], [1, 2])).toThrow('4 values need 4 times, got 2');
});

test('the last 30 winters, gaps inside them left out', () => {
  const winters = Array.from({ length: 60 }, (_, i) => 1961 + i).filter((w) => w !== 2000);
  const valuesC = winters.map((w) => (w === 1985 || w === 1990 || w === 2010 ? -8 : w === 2015 ? NaN : -1));
  expect(recentCount(winters, valuesC, -5)).toMatchObject({
    hits: 1,
    winters: 29,
    firstWinter: 1991,
    lastWinter: 2020,
  });
  expect(recentCount(winters, valuesC, -5, 31)).toMatchObject({ hits: 2, winters: 30, firstWinter: 1990 });
  expect(recentCount([], [], -5)).toBeNull();
});
