import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BATCH_BASES, BATCH_LEVELS, batchPeriod, type BatchAnswer } from '../../../analysis/answer/batch.ts';
import { batchShare } from '../../../analysis/answer/batch-share.ts';

type Told = readonly [period: number | null, low: number, high: number | null];

/** An answer about one type with the same period at every level. */
function answerOf([period, low, high]: Told): BatchAnswer {
  return {
    problem: null,
    basis: 'station',
    station: 'Invented',
    stationKm: 0,
    elevationM: NaN,
    errorC: 0,
    winters: 60,
    first: 1960,
    last: 2019,
    periods: Float64Array.from(BATCH_LEVELS.flatMap(() => [period ?? NaN, low, high ?? NaN])),
    bases: Uint8Array.from(BATCH_LEVELS, () =>
      BATCH_BASES.indexOf(period === null ? 'not seen' : high === null ? 'beyond' : 'fitted'),
    ),
    advice: Uint8Array.of(0),
  };
}
const row = (place: number) => ({ line: place, label: '', customer: '', postcode: '', place });

describe('the share for whom a loss is rare', () => {
  // By hand, for 1 in 25: surely the first, fourth (a bound) and sixth; not the second and seventh; perhaps the rest.
  const told: Told[] = [
    [60, 30, 120],
    [10, 6, 20],
    [28, 18, 50],
    [120, 120, null],
    [null, 22, null],
    [null, 26, null],
    [25, 12, 25],
    [20, 12, 40],
  ];
  const answers = [...told.map(answerOf), { problem: 'no station' }, null];
  it('is counted as by hand, of the rows with an answer', () => {
    const rows = answers.map((_, place) => row(place));
    expect(batchShare(rows, answers, 0, 'leaf', 25)).toEqual({
      rows: 8,
      surely: 3,
      likely: 4,
      not: 2,
      perhaps: 3,
    });
  });
  it('counts a place as often as rows ask about it', () => {
    const rows = [0, 0, 0, 1, 8].map(row);
    expect(batchShare(rows, answers, 0, 'kill', 25)).toEqual({
      rows: 4,
      surely: 3,
      likely: 3,
      not: 1,
      perhaps: 0,
    });
    expect(batchShare([], answers, 0, 'kill', 25)).toEqual({
      rows: 0,
      surely: 0,
      likely: 0,
      not: 0,
      perhaps: 0,
    });
  });
  it('never grows with the years asked, and its parts make up the whole', () => {
    const period = fc.tuple(
      fc.double({ min: 1, max: 200, noNaN: true }),
      fc.double({ min: 1, max: 9, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(period, { maxLength: 20 }), fc.integer({ min: 2, max: 90 }), (periods, years) => {
        const made = periods.map(([p, spread]) => answerOf([p, Math.max(1, p / spread), p * spread]));
        const rows = made.map((_, place) => row(place));
        const [short, long] = [years, years + 5].map((n) => batchShare(rows, made, 0, 'fruit', n));
        expect(short.surely + short.perhaps + short.not).toBe(made.length);
        expect(long.surely).toBeLessThanOrEqual(short.surely);
        expect(long.not).toBeGreaterThanOrEqual(short.not);
        expect(short.surely).toBeLessThanOrEqual(short.likely);
        expect(short.likely).toBeLessThanOrEqual(made.length - short.not);
      }),
    );
  });
  it('reads periods back as they were told', () => {
    expect(batchPeriod(answerOf([null, 22, null]), 0, 'kill')).toEqual({
      period: null,
      low: 22,
      high: null,
      basis: 'not seen',
    });
    expect(batchPeriod(answerOf([10, 6, 20]), 0, 'fruit')).toEqual({
      period: 10,
      low: 6,
      high: 20,
      basis: 'fitted',
    });
  });
});
