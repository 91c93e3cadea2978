import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gevQuantile } from '../../../analysis/extremes/gev.ts';
import {
  fitGevByLMoments,
  gevLSkewness,
  gevShapeFromLSkewness,
  gevWithShape,
  largestShapeReaching,
} from '../../../analysis/extremes/gev-l-moments.ts';
import { sampleLMoments } from '../../../analysis/extremes/l-moments.ts';
import { chanceAtOrBelow, levelOfPeriod, negateMinima } from '../../../analysis/extremes/winter-minimum.ts';
import published from '../../reference/extremes/published.json' with { type: 'json' };

describe('published samples', () => {
  test('Port Pirie (Coles 2001): L-moments and the GEV with them', () => {
    const { data, computed } = published.port_pirie;
    const moments = sampleLMoments(data);
    expect(moments.mean).toBeCloseTo(computed.lmoments.l1, 6);
    expect(moments.scale).toBeCloseTo(computed.lmoments.l2, 6);
    expect(moments.skewness).toBeCloseTo(computed.lmoments.t3, 6);
    expect(moments.kurtosis).toBeCloseTo(computed.lmoments.t4, 6);
    const gev = fitGevByLMoments(moments);
    // Given for the rational approximation, which is good to 1e-6 in k.
    expect(gev.location).toBeCloseTo(computed.gev_lmom_rational.xi, 5);
    expect(gev.scale).toBeCloseTo(computed.gev_lmom_rational.alpha, 5);
    expect(gev.k).toBeCloseTo(computed.gev_lmom_rational.k, 5);
    expect(gevQuantile(0.9, gev)).toBeCloseTo(computed.rl_lmom['10'], 5);
    expect(gevQuantile(0.99, gev)).toBeCloseTo(computed.rl_lmom['100'], 4);
  });

  test('the sample of the lmoments3 tests', () => {
    const { data, l1, l2, t3, t4, gev } = published.hosking_sample;
    const moments = sampleLMoments(data);
    expect(moments.mean).toBeCloseTo(l1, 8);
    expect(moments.scale).toBeCloseTo(l2, 8);
    expect(moments.skewness).toBeCloseTo(t3, 8);
    expect(moments.kurtosis).toBeCloseTo(t4, 8);
    const fitted = fitGevByLMoments(moments);
    expect(fitted.location).toBeCloseTo(gev.location, 6);
    expect(fitted.scale).toBeCloseTo(gev.scale, 6);
    expect(fitted.k).toBeCloseTo(gev.k, 6);
  });

  test('invented winter minima: GEV of the negated values, lows and chances', () => {
    const { data, computed_on_negated, low_by_return_period_f, p_min_le } =
      published.synthetic_winter_minima_f;
    const moments = sampleLMoments(negateMinima(data));
    expect(moments.mean).toBeCloseTo(computed_on_negated.l1, 6);
    expect(moments.skewness).toBeCloseTo(computed_on_negated.t3, 6);
    const gev = fitGevByLMoments(moments);
    expect(gev.location).toBeCloseTo(computed_on_negated.gev_rational.xi, 4);
    expect(gev.k).toBeCloseTo(computed_on_negated.gev_rational.k, 5);
    for (const [period, low] of Object.entries(low_by_return_period_f))
      expect(levelOfPeriod(Number(period), gev)).toBeCloseTo(low, 3);
    for (const [threshold, chance] of Object.entries(p_min_le)) {
      expect(chanceAtOrBelow(Number(threshold), gev)).toBeCloseTo(chance, 4);
    }
  });

  test('k from L-skewness beside both approximations of Hosking', () => {
    for (const [skewness, k] of Object.entries(published.t3_to_k.rational))
      expect(Math.abs(gevShapeFromLSkewness(Number(skewness)) - k)).toBeLessThan(2e-5);
    // The short form is 0.005 low at -0.2 and within 0.001 elsewhere.
    for (const [skewness, k] of Object.entries(published.t3_to_k['7859']))
      expect(Math.abs(gevShapeFromLSkewness(Number(skewness)) - k)).toBeLessThan(0.006);
  });

  test('unit Gumbel: L-moments by a fine grid of quantiles', () => {
    const grid = Float64Array.from({ length: 20_000 }, (_, i) =>
      gevQuantile((i + 0.5) / 20_000, { location: 0, scale: 1, k: 0 }),
    );
    const moments = sampleLMoments(grid);
    const { l1, l2, t3, t4 } = published.gumbel_unit;
    expect(moments.mean).toBeCloseTo(l1, 3);
    expect(moments.scale).toBeCloseTo(l2, 3);
    expect(moments.skewness).toBeCloseTo(t3, 3);
    expect(moments.kurtosis).toBeCloseTo(t4, 2);
  });
});

const samples = fc.array(fc.integer({ min: -300, max: 300 }), { minLength: 8, maxLength: 60 });

describe('properties', () => {
  test('L-skewness and k undo each other, through k = 0', () => {
    for (const k of [-0.9, -0.3, -1e-3, -1e-6, -1e-9, 0, 1e-9, 1e-6, 1e-3, 0.2, 0.9, 3, 8])
      expect(Math.abs(gevShapeFromLSkewness(gevLSkewness(k)) - k)).toBeLessThan(1e-8 * Math.max(1, 2 ** k));
  });
  test('shift and scale move mean and L-scale, and leave the ratios; order does not matter; the sign turns t3', () => {
    fc.assert(
      fc.property(
        samples,
        fc.integer({ min: -50, max: 50 }),
        fc.integer({ min: 1, max: 9 }),
        (list, shift, factor) => {
          fc.pre(new Set(list).size > 1);
          const a = sampleLMoments(list);
          const b = sampleLMoments([...list].reverse().map((x) => shift + factor * x));
          expect(b.mean).toBeCloseTo(shift + factor * a.mean, 8);
          expect(b.scale).toBeCloseTo(factor * a.scale, 8);
          expect(b.skewness).toBeCloseTo(a.skewness, 8);
          expect(b.kurtosis).toBeCloseTo(a.kurtosis, 8);
          const turned = sampleLMoments(list.map((x) => -x));
          expect(turned.skewness).toBeCloseTo(-a.skewness, 8);
          expect(turned.scale).toBeCloseTo(a.scale, 8);
        },
      ),
    );
  });
  test('any k gives back the mean and L-scale it was made for', () => {
    for (const k of [-0.3, -1e-8, 0, 1e-8, 0.1, 0.5]) {
      const gev = gevWithShape(-5, 1.7, k);
      const grid = Float64Array.from({ length: 40_000 }, (_, i) => gevQuantile((i + 0.5) / 40_000, gev));
      const moments = sampleLMoments(grid);
      expect(moments.mean).toBeCloseTo(-5, 2);
      expect(moments.scale).toBeCloseTo(1.7, 2);
    }
  });
  test('the largest shape that reaches a value has its upper end there', () => {
    const k = largestShapeReaching(9, 4, 1.5);
    const gev = gevWithShape(4, 1.5, k);
    expect(gev.location + gev.scale / gev.k).toBeCloseTo(9, 10);
    expect(largestShapeReaching(4.5, 4, 1.5)).toBe(Infinity);
    expect(largestShapeReaching(3, 4, 1.5)).toBe(Infinity);
  });
});

test('what cannot be done says so', () => {
  expect(() => sampleLMoments([1, 2, 3])).toThrow('at least 4 values, got 3');
  expect(() => sampleLMoments([1, 2, NaN, 4])).toThrow('finite');
  expect(sampleLMoments([2, 2, 2, 2, 2])).toEqual({ mean: 2, scale: 0, skewness: 0, kurtosis: 0 });
  expect(() => fitGevByLMoments(sampleLMoments([2, 2, 2, 2]))).toThrow('values that differ: L-scale 0');
  expect(() => gevShapeFromLSkewness(1)).toThrow('between -1 and 1, not 1');
});
