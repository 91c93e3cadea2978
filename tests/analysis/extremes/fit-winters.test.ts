import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countedPeriod, countHits } from '../../../analysis/extremes/counted.ts';
import { fitWinters } from '../../../analysis/extremes/fit-winters.ts';
import { FittedWinters } from '../../../analysis/extremes/fitted-winters.ts';
import { gevQuantile, gevSurvival, gevUpperEnd } from '../../../analysis/extremes/gev.ts';
import { gevShapeFromLSkewness, gevWithShape } from '../../../analysis/extremes/gev-l-moments.ts';
import { headline } from '../../../analysis/extremes/headline.ts';
import { sampleLMoments } from '../../../analysis/extremes/l-moments.ts';
import {
  concordant,
  shapeAmong,
  shapeFor,
  stationSkewness,
} from '../../../analysis/extremes/pooled-shape.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import { coverageRow } from '../../reference/extremes/coverage.ts';
import table from '../../reference/extremes/coverage.json' with { type: 'json' };

/** Invented winters: values in °C whose negatives follow a GEV. */
function invented(n: number, seed: number, k = 0.15, location = 3, scale = 2.5): number[] {
  const random = seededRandom(seed);
  return Array.from({ length: n }, () => -gevQuantile(random.uniform(), { location, scale, k }));
}

function curve(valuesC: ArrayLike<number>, seed = 1, draws = 300): FittedWinters {
  const fit = fitWinters({ valuesC, seed, draws });
  if (!(fit instanceof FittedWinters)) throw new Error('no curve');
  return fit;
}

describe('the curve', () => {
  test('has the mean and L-scale of the negated winters and the shape asked for', () => {
    const valuesC = invented(45, 3);
    const negated = valuesC.map((m) => -m);
    const { mean, scale, skewness } = sampleLMoments(negated);
    const { k } = shapeFor({ skewness, winters: 45 });
    expect(curve(valuesC).gev).toEqual(gevWithShape(mean, scale, k));
  });

  test('shift, scale and order of winters: periods follow exactly', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.integer({ min: -9, max: 9 }),
        fc.integer({ min: 1, max: 4 }),
        (seed, shift, factor) => {
          const valuesC = invented(30, seed);
          const a = curve(valuesC).returnPeriod(-8);
          const b = curve([...valuesC].reverse().map((m) => shift + factor * m)).returnPeriod(
            shift - factor * 8,
          );
          for (const key of ['period', 'low', 'high'] as const) expect(1 / b[key]).toBeCloseTo(1 / a[key], 7);
        },
      ),
      { numRuns: 30 },
    );
  });

  test('colder thresholds are never less rare, ranges hold the estimate, levels undo periods', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 20, max: 80 }), (seed, n) => {
        const fit = curve(invented(n, seed));
        let before = { period: 1, low: 1, high: 1 };
        for (let thresholdC = 5; thresholdC > -20; thresholdC -= 0.5) {
          const range = fit.returnPeriod(thresholdC);
          expect(range.low).toBeLessThanOrEqual(range.period);
          expect(range.high).toBeGreaterThanOrEqual(range.period);
          for (const key of ['period', 'low', 'high'] as const)
            expect(range[key]).toBeGreaterThanOrEqual(before[key] * (1 - 1e-9));
          before = range;
        }
        for (const period of [2, 10, 50]) {
          const level = fit.level(period)!;
          expect(level.lowC).toBeLessThanOrEqual(level.levelC);
          expect(level.highC).toBeGreaterThanOrEqual(level.levelC);
          expect(fit.returnPeriod(level.levelC).period / period).toBeCloseTo(1, 6);
        }
      }),
      { numRuns: 25 },
    );
  });

  test('chance within N winters is the mean over the draws, and asking one thing does not change the other', () => {
    const fit = curve(invented(40, 8), 5, 400);
    const { location, scale, k } = fit.draws;
    const within = (thresholdC: number, winters: number) => {
      let sum = 0;
      for (let b = 0; b < 400; b++) {
        const p = gevSurvival(-thresholdC, { location: location[b]!, scale: scale[b]!, k: k[b]! });
        sum += 1 - (1 - p) ** winters;
      }
      return sum / 400;
    };
    const first = fit.returnPeriod(-9);
    expect(fit.chanceWithin(-9, 10).p).toBeCloseTo(within(-9, 10), 10);
    expect(fit.chanceWithin(-7, 25).p).toBeCloseTo(within(-7, 25), 10);
    expect(fit.level(10)!.levelC).toBeLessThan(0);
    expect(fit.returnPeriod(-9)).toEqual(first);
    const { p, low, high } = fit.chanceWithin(-9, 10);
    expect(low).toBeLessThan(p);
    expect(high).toBeGreaterThan(p);
    expect(high).toBeCloseTo(1 - (1 - 1 / first.low) ** 10, 10);
  });

  test('the same seed gives the same numbers, another seed nearly the same', () => {
    const valuesC = invented(40, 21);
    expect(curve(valuesC, 7, 1000).returnPeriod(-9)).toEqual(curve(valuesC, 7, 1000).returnPeriod(-9));
    const a = curve(valuesC, 7, 1000).returnPeriod(-9);
    const b = curve(valuesC, 8, 1000).returnPeriod(-9);
    expect(b.period).toBe(a.period);
    expect(b.low).not.toBe(a.low);
    expect(Math.abs(b.low / a.low - 1)).toBeLessThan(0.15);
  });

  test('no winter on record is impossible, in the fit and in every draw, however short the tail looks', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 20, max: 50 }), (seed, n) => {
        const random = seededRandom(seed);
        // Bounded winters and one outlier, the hardest case.
        const valuesC = Array.from({ length: n - 1 }, () => -2 - 3 * random.uniform() ** 0.3);
        valuesC.push(-5 - 4 * random.uniform());
        const coldest = -Math.min(...valuesC);
        const fit = curve(valuesC, seed, 200);
        expect(gevUpperEnd(fit.gev)).toBeGreaterThan(coldest);
        expect(fit.gev.k).toBeLessThanOrEqual(0.3);
        fit.draws.k.forEach((k, b) =>
          expect(
            gevUpperEnd({ location: fit.draws.location[b]!, scale: fit.draws.scale[b]!, k }),
          ).toBeGreaterThan(coldest),
        );
        expect(fit.returnPeriod(-coldest).high).toBeLessThan(Infinity);
      }),
      { numRuns: 40 },
    );
  });
});

describe('hard records', () => {
  test('fewer than 20 winters are not fitted', () => {
    expect(fitWinters({ valuesC: invented(19, 1), seed: 1 })).toBeNull();
    expect(fitWinters({ valuesC: invented(20, 1), seed: 1 })).not.toBeNull();
  });

  test('a station without a single cold night: not seen, could be as often as 1 in L', () => {
    const valuesC = new Float64Array(34).fill(NaN);
    const fit = fitWinters({ valuesC, seed: 1 })!;
    const counted = countedPeriod(countHits(valuesC, -2), 34);
    expect(fit.hasCurve).toBe(false);
    expect(fit.level(10)).toBeNull();
    expect(fit.returnPeriod(-2)).toEqual({ period: Infinity, low: counted.low, high: Infinity });
    expect(headline(counted, fit.returnPeriod(-2), 34)).toEqual({
      period: null,
      low: counted.low,
      high: null,
      basis: 'not seen',
      agrees: true,
    });
    const { p, low, high } = fit.chanceWithin(-2, 10);
    expect([p, low]).toEqual([0, 0]);
    expect(high).toBeCloseTo(1 - (1 - 1 / counted.low) ** 10, 12);
  });

  test('all winters alike, and all but a few without a cold night: the count', () => {
    const alike = fitWinters({ valuesC: new Float64Array(30).fill(-3.33), seed: 1 })!;
    expect(alike.hasCurve).toBe(false);
    expect(alike.returnPeriod(-3.33).period).toBe(1);
    expect(alike.returnPeriod(-3.34).period).toBe(Infinity);
    const few = new Float64Array(30).fill(NaN);
    few.set([4.2, 7.1, -1]);
    const fit = fitWinters({ valuesC: few, seed: 1 })!;
    expect(fit.returnPeriod(5)).toMatchObject({ period: 15 });
    expect(headline(countedPeriod(2, 30), fit.returnPeriod(5), 30)).toMatchObject({
      basis: 'counted',
      period: 15,
    });
  });

  test('winters without a cold night count as no hit: the chance never passes the share of the others', () => {
    const cold = invented(30, 4);
    const valuesC = [...cold, ...new Array<number>(10).fill(NaN)];
    const fit = curve(valuesC);
    const dense = curve(cold);
    expect(fit.chance(50)).toBeCloseTo(0.75, 12);
    expect(fit.returnPeriod(-8).period).toBeCloseTo(dense.returnPeriod(-8).period / 0.75, 9);
    expect(fit.returnPeriod(50).low).toBeGreaterThan(1.1);
    expect(fit.returnPeriod(50).high).toBeLessThan(1.8);
    // A level that 1 winter in 1.2 reaches is warmer than the cold nights of 30 in 40.
    expect(fit.level(1.2)).toBeNull();
    expect(fit.level(10)!.levelC).toBeGreaterThan(dense.level(10)!.levelC);
  });

  test('ties (whole degrees F) change little', () => {
    const exact = invented(60, 12);
    const whole = exact.map((c) => (Math.round(c * 1.8 + 32) - 32) / 1.8);
    expect(curve(whole).returnPeriod(-8).period / curve(exact).returnPeriod(-8).period).toBeCloseTo(1, 1);
  });

  test('a period of 1 or less has no level', () => {
    expect(() => curve(invented(30, 1)).level(1)).toThrow('above 1, not 1');
  });
});

describe('the shape', () => {
  test('stays within -0.2 to 0.3 whatever the record says', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.95, max: 0.95, noNaN: true }),
        fc.integer({ min: 10, max: 5000 }),
        (skewness, winters) => {
          const { k } = shapeFor({ skewness, winters });
          expect(k).toBeGreaterThanOrEqual(-0.2);
          expect(k).toBeLessThanOrEqual(0.3);
        },
      ),
    );
  });
  test('many alike neighbours: k of the pooled skewness, and more certain than alone', () => {
    const own = { skewness: 0.3, winters: 25 };
    const neighbours = Array.from({ length: 12 }, () => ({ skewness: 0.1, winters: 60 }));
    const pooledSkewness = (25 * 0.3 + 720 * 0.1) / 745;
    const pooled = shapeFor(own, neighbours);
    expect(pooled.basis).toBe('pooled');
    expect(Math.abs(pooled.k - gevShapeFromLSkewness(pooledSkewness))).toBeLessThan(0.015);
    const alone = shapeFor(own);
    expect(alone.basis).toBe('shrunk');
    expect(pooled.standardError).toBeLessThan(0.75 * alone.standardError);
    // Own skewness says -0.19; alone, it is drawn towards the prior 0.05.
    expect(alone.k).toBeGreaterThan(gevShapeFromLSkewness(0.3));
    expect(alone.k).toBeLessThan(0.05);
  });
  test('a long record speaks for itself', () => {
    expect(shapeFor({ skewness: 0.1, winters: 4000 }).k).toBeCloseTo(gevShapeFromLSkewness(0.1), 3);
  });
  test('leaves out a neighbour that is discordant, but none of four and none of equal ones', () => {
    const eight = Array.from({ length: 8 }, (_, i) => stationSkewness(invented(40, 60 + i))!);
    const odd = { winters: 40, scale: 3 * eight[0].scale!, skewness: 0.6, kurtosis: 0.5 };
    expect(concordant([...eight.slice(0, 7), odd])).not.toContain(odd);
    expect(concordant([...eight.slice(0, 7), odd]).length).toBeGreaterThanOrEqual(6);
    expect(concordant([...eight.slice(0, 3), odd])).toContain(odd);
    expect(concordant(new Array(8).fill(eight[0]))).toHaveLength(8);
    expect(shapeAmong([...eight.slice(0, 7), odd]).k).toBe(
      shapeAmong(concordant([...eight.slice(0, 7), odd])).k,
    );
    // Without a scale nothing can be told.
    const bare = [...eight.slice(0, 7), odd].map(({ winters, skewness }) => ({ winters, skewness }));
    expect(concordant(bare)).toHaveLength(8);
  });

  test('short or degenerate records take no part in a pool', () => {
    expect(stationSkewness(invented(9, 1))).toBeNull();
    expect(stationSkewness(new Array<number>(30).fill(-1))).toBeNull();
    expect(stationSkewness([...invented(30, 1), NaN, NaN])).toMatchObject({ winters: 30 });
  });
});

describe('90 % ranges hold the true period (simulation; full table in coverage.json)', () => {
  test.each([
    [-0.1, 25],
    [0, 40],
    [0.15, 25],
    [0.25, 60],
  ])('k %d, %d winters: as in the table', (k, winters) => {
    const repetitions = 250;
    const row = coverageRow(k, winters, repetitions, 200);
    const kept = table.rows.find((r) => r.k === k && r.winters === winters && r.neighbours === 0)!;
    for (const [period, share] of Object.entries(row.coverage)) {
      // Four standard errors of a share of 0.9 in 250.
      const expected = kept.coverage[period as keyof typeof kept.coverage]!;
      expect(Math.abs(share - expected)).toBeLessThan(0.077);
    }
  });
  test('every cell of the kept table lies in 85 to 95 %', () => {
    expect(table.rows).toHaveLength(24);
    for (const row of table.rows)
      for (const share of Object.values(row.coverage)) {
        expect(share).toBeGreaterThanOrEqual(0.85);
        expect(share).toBeLessThanOrEqual(0.95);
      }
  });
});
