import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gevQuantile } from '../../../analysis/extremes/gev.ts';
import { gevLSkewness } from '../../../analysis/extremes/gev-l-moments.ts';
import { fitKappa, kappaQuantile, unitKappaLMoments } from '../../../analysis/extremes/kappa.ts';
import { sampleLMoments } from '../../../analysis/extremes/l-moments.ts';
import {
  averageOf,
  criticalDiscordancy,
  discordancy,
  testRegion,
  type RegionSite,
} from '../../../analysis/extremes/regional-homogeneity.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import regional from '../../reference/extremes/regional.json' with { type: 'json' };

const { cascades } = regional;
const sites: RegionSite[] = cascades.values.map((values, i) => ({
  values,
  spread: cascades.spread[i]!,
  skewness: cascades.skewness[i]!,
  kurtosis: cascades.kurtosis[i]!,
}));

describe('North Cascades (Hosking 1996; Hosking and Wallis 1997)', () => {
  test('discordancy of 19 sites, none of them discordant', () => {
    const found = discordancy(sites);
    // Printed with two digits from ratios of four.
    found.forEach((d, i) => expect(Math.abs(d - cascades.discordancy[i]!)).toBeLessThan(0.0051));
    expect(Math.max(...found)).toBeLessThan(criticalDiscordancy(sites.length));
  });

  test('regional averages and the kappa distribution with them', () => {
    const average = averageOf(sites);
    expect(average.spread).toBeCloseTo(cascades.average.spread, 4);
    expect(average.skewness).toBeCloseTo(cascades.average.skewness, 4);
    expect(average.kurtosis).toBeCloseTo(cascades.average.kurtosis, 4);
    const { kappa, basis } = fitKappa({ mean: 1, scale: average.spread, ...average });
    expect(basis).toBe('kappa');
    for (const parameter of ['location', 'scale', 'k', 'h'] as const)
      expect(kappa[parameter]).toBeCloseTo(cascades.kappa[parameter], 4);
  });

  test('heterogeneity by 500 simulated groups', () => {
    const found = testRegion(sites, { seed: 1, simulations: cascades.simulations });
    for (const measure of ['spread', 'spreadAndSkewness', 'skewnessAndKurtosis'] as const) {
      const expected = cascades.heterogeneity[measure];
      expect(found[measure].observed).toBeCloseTo(expected.observed, 4);
      // Two runs of 500 differ by about 0.06 of a deviation in the mean and 0.09 of it in h at these values.
      expect(Math.abs(found[measure].simulatedMean - expected.mean) / expected.deviation).toBeLessThan(0.2);
      expect(Math.abs(found[measure].simulatedDeviation / expected.deviation - 1)).toBeLessThan(0.12);
      expect(Math.abs(found[measure].h - expected.h)).toBeLessThan(0.3);
    }
  });
});

test('critical values (Hosking and Wallis 1997, table 3.1)', () => {
  expect([4, 5, 6, 7, 10, 14, 15, 400].map(criticalDiscordancy)).toEqual([
    Infinity,
    1.333,
    1.648,
    1.917,
    2.491,
    2.971,
    3,
    3,
  ]);
});

describe('kappa distribution', () => {
  test('h = 0 is the GEV, h = -1 the generalised logistic, h = 1 the generalised Pareto', () => {
    for (const k of [-0.3, -1e-5, 0, 0.1, 0.7]) {
      // Averages of the GEV's published L-skewness; kurtosis of the other two in terms of k (Hosking and Wallis 1997, A.5 to A.7).
      expect(unitKappaLMoments(k, 0)!.skewness).toBeCloseTo(gevLSkewness(k), 7);
      expect(unitKappaLMoments(k, -1)!.skewness).toBeCloseTo(-k, 7);
      expect(unitKappaLMoments(k, -1)!.kurtosis).toBeCloseTo((1 + 5 * k * k) / 6, 7);
      expect(unitKappaLMoments(k, 1)!.skewness).toBeCloseTo((1 - k) / (3 + k), 7);
      expect(unitKappaLMoments(k, 1)!.scale).toBeCloseTo(1 / ((1 + k) * (2 + k)), 7);
      expect(kappaQuantile(0.2, { location: 1, scale: 2, k, h: 0 })).toBeCloseTo(
        gevQuantile(0.2, { location: 1, scale: 2, k }),
        6,
      );
    }
  });

  test('L-moments by a fine grid of quantiles, through h = 0', () => {
    for (const h of [-0.6, -1e-3, -1e-4, 1e-4, 1e-3, 0.4, 1.5])
      for (const k of [-0.15, 0.05, 0.4]) {
        const unit = unitKappaLMoments(k, h)!;
        const grid = Float64Array.from({ length: 40_000 }, (_, i) =>
          kappaQuantile((i + 0.5) / 40_000, { location: 0, scale: 1, k, h }),
        );
        const sample = sampleLMoments(grid);
        expect(sample.mean).toBeCloseTo(unit.mean, 2);
        expect(sample.scale).toBeCloseTo(unit.scale, 2);
        expect(sample.skewness).toBeCloseTo(unit.skewness, 2);
        expect(sample.kurtosis).toBeCloseTo(unit.kurtosis, 2);
      }
    for (const k of [-0.2, 0.2])
      for (const side of [-1, 1]) {
        const near = unitKappaLMoments(k, side * 1e-7)!;
        const a = unitKappaLMoments(k, side * 0.0009)!;
        const b = unitKappaLMoments(k, side * 0.0012)!;
        expect(near.kurtosis).toBeCloseTo(unitKappaLMoments(k, 0)!.kurtosis, 6);
        // No step where the series takes over: the slope across it is that on either side, about 0.1.
        expect(Math.abs(b.kurtosis - a.kurtosis)).toBeLessThan(1e-4);
        expect(Math.abs(b.kurtosis - a.kurtosis)).toBeGreaterThan(1e-6);
      }
  });

  test('a fit gives back the L-moments it was made for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.4, max: 0.5, noNaN: true }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        (skewness, share) => {
          // Between a generalised Pareto's and a generalised logistic's L-kurtosis, where winter extremes lie.
          const k = (1 - 3 * skewness) / (1 + skewness);
          const low = ((1 - k) * (2 - k)) / ((3 + k) * (4 + k));
          const high = (1 + 5 * skewness * skewness) / 6;
          const kurtosis = low + share * (high - low);
          const { kappa, basis } = fitKappa({ mean: -5, scale: 1.5, skewness, kurtosis });
          expect(basis).toBe('kappa');
          const unit = unitKappaLMoments(kappa.k, kappa.h)!;
          expect(kappa.location + kappa.scale * unit.mean).toBeCloseTo(-5, 8);
          expect(kappa.scale * unit.scale).toBeCloseTo(1.5, 8);
          expect(unit.skewness).toBeCloseTo(skewness, 4);
          expect(unit.kurtosis).toBeCloseTo(kurtosis, 4);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('too much L-kurtosis: the generalised logistic; impossible ratios are refused', () => {
    const { kappa, basis } = fitKappa({ mean: 0, scale: 1, skewness: 0.1, kurtosis: 0.3 });
    expect(basis).toBe('generalised logistic');
    expect(kappa).toMatchObject({ k: -0.1, h: -1 });
    expect(() => fitKappa({ mean: 0, scale: 0, skewness: 0, kurtosis: 0.1 })).toThrow('L-scale 0');
    expect(() => fitKappa({ mean: 0, scale: 1, skewness: 0.9, kurtosis: 0.1 })).toThrow('No distribution');
  });
});

/** A group drawn from one distribution, its L-scales factors apart, with years in common. */
function drawn(seed: number, factors: readonly number[], correlated: boolean): RegionSite[] {
  const random = seededRandom(seed);
  const common = Array.from({ length: 45 }, () => random.normal());
  return factors.map((factor) => {
    const sample = common.map(
      (c) => factor * (correlated ? 0.9 * c + 0.436 * random.normal() : random.normal()),
    );
    const { scale, skewness, kurtosis } = sampleLMoments(sample);
    return { values: 45, spread: scale, skewness, kurtosis };
  });
}

describe('groups that are drawn', () => {
  const alike = [1, 1, 1, 1, 1, 1, 1, 1];
  const apart = [0.6, 0.7, 0.8, 0.9, 1.1, 1.2, 1.3, 1.4];
  const meanH = (factors: readonly number[], correlated: boolean, correlation: number): number => {
    let sum = 0;
    for (let seed = 1; seed <= 12; seed++)
      sum += testRegion(drawn(seed, factors, correlated), {
        seed,
        simulations: 120,
        shiftedStations: true,
        correlation,
      }).spread.h;
    return sum / 12;
  };

  test('of one distribution are homogeneous, of many heterogeneous', () => {
    expect(Math.abs(meanH(alike, false, 0))).toBeLessThan(0.9);
    expect(meanH(apart, false, 0)).toBeGreaterThan(2);
  });

  test('that share their winters look too alike unless the simulated ones share them too', () => {
    expect(meanH(alike, true, 0)).toBeLessThan(-1);
    expect(Math.abs(meanH(alike, true, 0.81))).toBeLessThan(0.9);
  });

  test('the same seed gives the same answer; unit and shift of temperatures do not matter', () => {
    const group = drawn(4, apart, false);
    const options = { seed: 9, simulations: 60, shiftedStations: true };
    expect(testRegion(group, options)).toEqual(testRegion(group, options));
    const fahrenheit = group.map((site) => ({ ...site, spread: site.spread * 1.8 }));
    expect(testRegion(fahrenheit, options).spread.h).toBeCloseTo(testRegion(group, options).spread.h, 6);
  });
});

describe('discordancy', () => {
  const site = fc.record({
    values: fc.integer({ min: 10, max: 80 }),
    spread: fc.double({ min: 0.1, max: 3, noNaN: true }),
    skewness: fc.double({ min: -0.3, max: 0.5, noNaN: true }),
    kurtosis: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
  });

  test('is 1 on average and never above (N - 1)/3; units do not matter', () => {
    const property = (group: RegionSite[]): void => {
      const found = discordancy(group);
      const n = group.length;
      if (found.every((d) => d === 0)) return;
      expect(found.reduce((a, b) => a + b, 0) / n).toBeCloseTo(1, 4);
      expect(Math.max(...found)).toBeLessThan((n - 1) / 3 + 1e-4);
      const other = discordancy(group.map((s) => ({ ...s, spread: s.spread * 1.8 })));
      found.forEach((d, i) => expect(Math.abs(other[i]! - d)).toBeLessThan(1e-3));
    };
    fc.assert(fc.property(fc.array(site, { minLength: 5, maxLength: 30 }), property), { numRuns: 300 });
    // Drew groups whose ratios lie in a plane but for rounding.
    fc.assert(fc.property(fc.array(site, { minLength: 5, maxLength: 30 }), property), {
      seed: 1984740185,
      numRuns: 300,
    });
    // Skewness that differs in its 162nd decimal place, which no square can hold.
    const alike = { values: 10, spread: 0.1, skewness: 0, kurtosis: 0.05 };
    const nearly = [{ skewness: -2e-162 }, {}, {}, { spread: 0.1000000025 }, { kurtosis: 0.05000000125 }];
    property(nearly.map((change) => ({ ...alike, ...change })));
  });

  test('points at the station that differs', () => {
    const group = drawn(2, [1, 1.02, 0.97, 1.05, 0.99, 1.01, 0.96, 1.03, 2.6, 1], false);
    const found = discordancy(group);
    expect(found.indexOf(Math.max(...found))).toBe(8);
    expect(found[8]).toBeGreaterThan(criticalDiscordancy(group.length));
  });

  test('says nothing of stations whose ratios lie in a plane, to within rounding', () => {
    const plane = [0, 1, 2, 3, 4, 5].map((i) => {
      const skewness = 0.05 * i;
      const kurtosis = 0.1 + 0.01 * i * i;
      return { values: 30, skewness, kurtosis, spread: 1 + 2 * skewness - kurtosis };
    });
    expect([...discordancy(plane)]).toEqual([0, 0, 0, 0, 0, 0]);
    expect([...discordancy(plane.map((s) => ({ ...s, spread: 1 + 1e-14 * s.kurtosis })))]).toEqual([
      0, 0, 0, 0, 0, 0,
    ]);
  });

  test('says nothing of few stations or of equal ones', () => {
    const same = Array.from({ length: 6 }, () => sites[0]!);
    expect([...discordancy(same)]).toEqual([0, 0, 0, 0, 0, 0]);
    expect([...discordancy(sites.slice(0, 4))]).toEqual([0, 0, 0, 0]);
    expect(() => testRegion(sites.slice(0, 1), { seed: 1 })).toThrow('got 1');
    expect(() => testRegion(sites, { seed: 1, correlation: 2 })).toThrow('not 2');
  });
});
