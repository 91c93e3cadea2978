import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countedPeriod, countHits } from '../../../analysis/extremes/counted.ts';
import { depthDuration } from '../../../analysis/extremes/depth-duration.ts';
import { fitWinters } from '../../../analysis/extremes/fit-winters.ts';
import { gevQuantile } from '../../../analysis/extremes/gev.ts';
import { headline, recordLength } from '../../../analysis/extremes/headline.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';

describe('headline', () => {
  test('under 20 winters: the count, never a fit', () => {
    const fitted = { period: 8, low: 5, high: 14 };
    const { low, high } = countedPeriod(2, 19);
    expect(headline(countedPeriod(2, 19), fitted, 19)).toEqual({
      period: 9.5,
      low,
      high,
      basis: 'counted',
      agrees: true,
    });
    const none = countedPeriod(0, 3);
    expect(headline(none, null, 3)).toEqual({
      period: null,
      low: none.low,
      high: null,
      basis: 'not seen',
      agrees: true,
    });
  });
  test('within twice the record: the fit, with its range', () => {
    expect(headline(countedPeriod(4, 40), { period: 11, low: 7, high: 19 }, 40)).toEqual({
      period: 11,
      low: 7,
      high: 19,
      basis: 'fitted',
      agrees: true,
    });
  });
  test('beyond twice the record: the lower end of the range, no upper end', () => {
    expect(headline(countedPeriod(0, 40), { period: 81, low: 33, high: 900 }, 40)).toEqual({
      period: 33,
      low: 33,
      high: null,
      basis: 'beyond',
      agrees: true,
    });
    expect(headline(countedPeriod(0, 40), { period: 80, low: 33, high: Infinity }, 40)).toMatchObject({
      basis: 'fitted',
      high: null,
    });
  });
  test('never claims more than twice the record, nor rarer than what was seen', () => {
    expect(headline(countedPeriod(0, 40), { period: Infinity, low: 500, high: Infinity }, 40).period).toBe(
      80,
    );
    expect(headline(countedPeriod(1, 40), { period: 400, low: 60, high: 9000 }, 40)).toMatchObject({
      period: 40,
      low: 40,
      basis: 'beyond',
      agrees: false,
    });
  });
  test('a count far more often than the fit: the fit stays, its range reaches down to the count, and it says so', () => {
    // 12 of 50 is 1 in 4.2, up to 1 in 6.6.
    expect(headline(countedPeriod(12, 50), { period: 20, low: 12, high: 40 }, 50)).toEqual({
      period: 20,
      low: 50 / 12,
      high: 40,
      basis: 'fitted',
      agrees: false,
    });
  });
  test('a fit more often than the count stands, as the colder answer', () => {
    expect(headline(countedPeriod(0, 60), { period: 9, low: 6, high: 15 }, 60)).toMatchObject({
      period: 9,
      low: 6,
      basis: 'fitted',
      agrees: false,
    });
  });
  test('what can be said always holds: range in order, at most twice the record unless counted', () => {
    const cases = fc.record({
      n: fc.integer({ min: 1, max: 120 }),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      low: fc.double({ min: 1, max: 500, noNaN: true }),
      up: fc.double({ min: 1, max: 20, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, ({ n, share, low, up }) => {
        const fitted = { low, period: low * up, high: low * up * up };
        const said = headline(countedPeriod(Math.round(share * n), n), fitted, n);
        if (said.period !== null) expect(said.low).toBeLessThanOrEqual(said.period);
        if (said.period !== null && said.high !== null) expect(said.high).toBeGreaterThanOrEqual(said.period);
        if (said.basis === 'fitted' || said.basis === 'beyond')
          expect(said.period!).toBeLessThanOrEqual(2 * n);
        expect(n < 20).toBe(said.basis === 'counted' || said.basis === 'not seen');
      }),
    );
  });
  test('how much a record allows', () => {
    expect([19, 20, 29, 30].map(recordLength)).toEqual(['counts only', 'short', 'short', 'enough']);
  });
});

test('a fitted GEV truth agrees with its count about as often as a 90 % range should hold', () => {
  const random = seededRandom(4);
  let agree = 0;
  const runs = 300;
  for (let r = 0; r < runs; r++) {
    const valuesC = Array.from(
      { length: 40 },
      () => -gevQuantile(random.uniform(), { location: 3, scale: 2, k: 0.1 }),
    );
    const range = fitWinters({ valuesC, seed: r, draws: 50 })!.returnPeriod(-6.5);
    if (headline(countedPeriod(countHits(valuesC, -6.5), 40), range, 40).agrees) agree++;
  }
  expect(agree / runs).toBeGreaterThan(0.9);
});

describe('depth-duration', () => {
  const random = seededRandom(10);
  const shortest = Array.from(
    { length: 30 },
    () => -gevQuantile(random.uniform(), { location: 4, scale: 2, k: 0.1 }),
  );
  const fitAt = (shift: number) =>
    fitWinters({ valuesC: shortest.map((m) => m + shift), seed: 1, draws: 200 });

  test('levels for the periods within twice the record, null beyond', () => {
    const rows = depthDuration(
      [
        { hours: 4, fit: fitAt(1) },
        { hours: 0, fit: fitAt(0) },
      ],
      24,
    );
    expect(rows.map(({ hours, periodWinters, level }) => [hours, periodWinters, level !== null])).toEqual([
      [0, 2, true],
      [0, 5, true],
      [0, 10, true],
      [0, 25, true],
      [0, 50, false],
      [4, 2, true],
      [4, 5, true],
      [4, 10, true],
      [4, 25, true],
      [4, 50, false],
    ]);
    rows
      .slice(0, 4)
      .forEach(({ level }, i) => expect(rows[5 + i]!.level!.levelC).toBeCloseTo(level!.levelC + 1, 9));
  });
  test('longer cold is never colder than shorter cold: the colder level is kept for the shorter hours', () => {
    const rows = depthDuration(
      [
        { hours: 0, fit: fitAt(0) },
        { hours: 4, fit: fitAt(-0.5) },
      ],
      30,
      [10],
    );
    expect(rows[0]!.level).toEqual(rows[1]!.level);
    expect(rows[0]!.level!.levelC).toBeCloseTo(fitAt(0)!.level(10)!.levelC - 0.5, 9);
  });
  test('no fit, no level', () => {
    expect(depthDuration([{ hours: 0, fit: null }], 12, [2])).toEqual([
      { hours: 0, periodWinters: 2, level: null },
    ]);
  });
});
