import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hodgesLehmann } from '../../../../analysis/spot/thermometer/hodges-lehmann.ts';
import { signedRankQuantile } from '../../../../analysis/spot/thermometer/signed-rank.ts';
import { theilSen } from '../../../../analysis/spot/thermometer/theil-sen.ts';

function reference<T>(name: string): T {
  const url = new URL(`../../../reference/spot/thermometer/${name}`, import.meta.url);
  return JSON.parse(readFileSync(fileURLToPath(url), 'utf8')) as T;
}
const r = reference<{
  intervals: { name: string; exact: boolean; values: number[]; centre: number; low: number; high: number }[];
  signed_rank_quantiles_05_025: [number, number, number][];
}>('wilcoxon.json');
const scipy = reference<{
  cases: { name: string; x: number[]; y: number[]; slope: number; low: number; high: number }[];
}>('theil-sen.json');

describe('robust estimates against R and SciPy', () => {
  it('has the quantiles of the signed rank statistic of R (qsignrank)', () => {
    for (const [n, at05, at025] of r.signed_rank_quantiles_05_025) {
      expect([n, signedRankQuantile(0.05, n), signedRankQuantile(0.025, n)]).toEqual([n, at05, at025]);
    }
  });

  it.each(r.intervals.filter(({ exact }) => exact))(
    'agrees with wilcox.test, exact: $name',
    ({ values, ...truth }) => {
      const found = hodgesLehmann(values);
      expect(found.centre).toBeCloseTo(truth.centre, 10);
      expect(found.low).toBeCloseTo(truth.low, 10);
      expect(found.high).toBeCloseTo(truth.high, 10);
    },
  );

  // With ties or many values R takes the normal approximation and searches the ends: they lie between averages.
  it.each(r.intervals.filter(({ exact }) => !exact))(
    'is near wilcox.test where that approximates, and never shorter by more than a hundredth: $name',
    ({ values, ...truth }) => {
      const found = hodgesLehmann(values);
      expect(Math.abs(found.centre - truth.centre)).toBeLessThan(0.01);
      expect(found.low).toBeLessThan(truth.low + 0.01);
      expect(found.high).toBeGreaterThan(truth.high - 0.01);
      expect(found.high - found.low).toBeLessThan(1.25 * (truth.high - truth.low) + 0.01);
    },
  );

  it.each(scipy.cases)('agrees with scipy.stats.theilslopes: $name', ({ x, y, ...truth }) => {
    const found = theilSen(x, y)!;
    expect(found.slope).toBeCloseTo(truth.slope, 10);
    expect(found.low).toBeCloseTo(truth.low, 10);
    expect(found.high).toBeCloseTo(truth.high, 10);
  });
});

describe('robust estimates in general', () => {
  const value = fc.integer({ min: -2000, max: 2000 }).map((hundredths) => hundredths / 100);
  const values = fc.array(value, { minLength: 1, maxLength: 25 });

  it('moves and turns with the values, and its interval holds its centre', () => {
    fc.assert(
      fc.property(values, value, (list, shift) => {
        const here = hodgesLehmann(list);
        const moved = hodgesLehmann(list.map((x) => x + shift));
        const turned = hodgesLehmann(list.map((x) => -x));
        expect(moved.centre).toBeCloseTo(here.centre + shift, 8);
        expect(turned.low).toBeCloseTo(-here.high, 8);
        expect(here.low).toBeLessThanOrEqual(here.centre);
        expect(here.high).toBeGreaterThanOrEqual(here.centre);
        expect(here.reached).toBe(list.length >= 5);
      }),
    );
  });

  it('hardly moves for one wild value among fifteen', () => {
    const list = [1.1, 1.4, 0.8, 1.9, 1.2, 1.5, 1.0, 1.3, 1.7, 0.9, 1.6, 1.2, 1.4, 1.1, 1.3];
    const wild = hodgesLehmann([...list.slice(0, 14), 40]);
    expect(Math.abs(wild.centre - hodgesLehmann(list).centre)).toBeLessThan(0.1);
    expect(wild.high).toBeLessThan(2);
  });

  it('has quantiles of R on both sides of where the approximation begins', () => {
    // R 4.2.2: qsignrank(0.05, 100), qsignrank(0.05, 101).
    expect(signedRankQuantile(0.05, 100)).toBe(2046);
    expect(Math.abs(signedRankQuantile(0.05, 101) - 2090)).toBeLessThanOrEqual(1);
  });

  it('has no slope without a spread of x', () => {
    expect(theilSen([3, 3, 3], [1, 2, 3])).toBeNull();
  });
});
