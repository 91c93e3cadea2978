import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceWithin } from '../../../analysis/extremes/chance-within.ts';
import { countedPeriod, countHits } from '../../../analysis/extremes/counted.ts';
import { plottingPeriod, PLOTTING_RULES } from '../../../analysis/extremes/plotting-positions.ts';
import { windowShare } from '../../../analysis/extremes/window-share.ts';
import { wilsonInterval } from '../../../analysis/extremes/wilson.ts';
import { fahrenheitToCelsius } from '../../../analysis/units/temperature.ts';
import published from '../../reference/extremes/published.json' with { type: 'json' };

describe("Wilson's interval", () => {
  test.each(published.binomial95)('95 %% of $k in $n', ({ k, n, wilson }) => {
    const { low, high } = wilsonInterval(k, n, 0.95);
    expect(low).toBeCloseTo(wilson[0]!, 6);
    expect(high).toBeCloseTo(wilson[1]!, 6);
  });
  test('turned round for the winters without a hit, and wider with the level', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (n, share) => {
          const k = Math.round(share * n);
          const a = wilsonInterval(k, n);
          const b = wilsonInterval(n - k, n);
          expect(a.low).toBeCloseTo(1 - b.high, 12);
          expect(a.low).toBeLessThanOrEqual(k / n);
          expect(a.high).toBeGreaterThanOrEqual(k / n);
          const wide = wilsonInterval(k, n, 0.99);
          expect(wide.high - wide.low).toBeGreaterThanOrEqual(a.high - a.low);
        },
      ),
    );
  });
  test('what makes no share is refused', () => {
    expect(() => wilsonInterval(1, 0)).toThrow('at least 1 winter, got 0');
    expect(() => wilsonInterval(5, 4)).toThrow('0 to 4, got 5');
    expect(() => wilsonInterval(1, 4, 1)).toThrow('between 0 and 1, not 1');
  });
});

describe('counts as periods', () => {
  test('3 of 40 and none of 30, in 95 % (published shares)', () => {
    const three = countedPeriod(3, 40, 0.95);
    expect(three.period).toBeCloseTo(40 / 3, 12);
    expect(three.low).toBeCloseTo(1 / 0.1986424, 4);
    expect(three.high).toBeCloseTo(1 / 0.025836, 2);
    const none = countedPeriod(0, 30, 0.95);
    expect(none).toMatchObject({ period: Infinity, high: Infinity });
    expect(none.low).toBeCloseTo(1 / 0.1135134, 4);
  });
  test('none of 30 in 90 %: could be as often as 1 in 12.1, by (n + z^2)/z^2 with z = 1.6449', () => {
    expect(countedPeriod(0, 30).low).toBeCloseTo((30 + 1.6448536 ** 2) / 1.6448536 ** 2, 6);
  });
  test('every winter hit, and no winter at all', () => {
    expect(countedPeriod(12, 12)).toMatchObject({ period: 1, low: 1 });
    expect(countedPeriod(0, 0)).toEqual({ hits: 0, winters: 0, period: Infinity, low: 1, high: Infinity });
  });
  test('28 F stored as -2.2 C or as -2.22 C is a hit at 28 F; no cold night is none', () => {
    const restored = fahrenheitToCelsius(28);
    expect(countHits([restored, -2.22, -2.21, NaN, -9], restored)).toBe(3);
    expect(countHits([NaN, NaN], 40)).toBe(0);
  });
});

test.each(published.at_least_one)('at least one: period $T within $n', ({ T, n, p }) => {
  expect(chanceWithin(1 / T, n)).toBeCloseTo(p, 7);
});
test('at least one, at the ends', () => {
  expect([chanceWithin(0, 10), chanceWithin(1, 10), chanceWithin(1, 0), chanceWithin(0.3, 0)]).toEqual([
    0, 1, 0, 0,
  ]);
  expect(chanceWithin(1e-12, 10)).toBeCloseTo(1e-11, 20);
});

test('plotting positions of the three most extreme of 30 (textbook values)', () => {
  for (const rule of PLOTTING_RULES)
    published.plotting_position_return_period_n30[rule].forEach((period, i) =>
      expect(plottingPeriod(i + 1, 30, rule)).toBeCloseTo(period, 4),
    );
  expect(plottingPeriod(1, 30)).toBe(31);
  expect(() => plottingPeriod(0, 30)).toThrow('1 to 30, not 0');
  expect(() => plottingPeriod(31, 30)).toThrow('1 to 30, not 31');
});

describe('windows of consecutive winters', () => {
  test('by hand: hits in 1962 and 1966 of 1960-1969, windows of 3', () => {
    const winters = Array.from({ length: 10 }, (_, i) => 1960 + i);
    const hits = winters.map((w) => w === 1962 || w === 1966);
    // Starts 1960, 61, 62, 64, 65, 66 of 1960 to 1967.
    expect(windowShare(winters, hits, 3)).toEqual({ share: 6 / 8, windows: 8 });
  });
  test('no window crosses a gap', () => {
    expect(windowShare([1960, 1961, 1963, 1964, 1965], [0, 1, 0, 0, 0], 2)).toEqual({
      share: 1 / 3,
      windows: 3,
    });
  });
  test('a record shorter than the window has no share', () => {
    expect(windowShare([1990, 1991], [1, 0], 10)).toEqual({ share: null, windows: 0 });
    expect(() => windowShare([1990], [1], 0.5)).toThrow('whole number of winters from 1 on, not 0.5');
  });
  test('agrees with looking at every window', () => {
    fc.assert(
      fc.property(
        fc.array(fc.boolean(), { minLength: 1, maxLength: 40 }),
        fc.integer({ min: 1, max: 12 }),
        (hits, length) => {
          const winters = hits.map((_, i) => 1950 + i + (i > 20 ? 3 : 0));
          let windows = 0;
          let withHit = 0;
          for (let start = 0; start + length <= hits.length; start++) {
            if (winters[start + length - 1]! - winters[start]! !== length - 1) continue;
            windows++;
            if (hits.slice(start, start + length).includes(true)) withHit++;
          }
          expect(windowShare(winters, hits, length)).toEqual({
            share: windows ? withHit / windows : null,
            windows,
          });
        },
      ),
    );
  });
});
