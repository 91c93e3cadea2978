import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { nightsFromDaily } from '../../../analysis/night/nights-from-daily.ts';
import { CALM, UNCLEAR, WINDY } from '../../../analysis/night/night-kind.ts';
import { InputError } from '../../../analysis/records/input-error.ts';
import { MISSING_HUNDREDTHS, NIGHT_BASES, SUSTAINED_COUNT } from '../../../analysis/records/nights.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import { daily, STATION } from './series.ts';

const FIRST = dayNumber(2024, 2, 20);
const UNKNOWN = MISSING_HUNDREDTHS;

const tenths = (from: number, to: number): fc.Arbitrary<number> =>
  fc.integer({ min: from * 10, max: to * 10 }).map((value) => value / 10);
const week = fc
  .tuple(
    fc.array(tenths(-20, 10), { minLength: 9, maxLength: 9 }),
    fc.array(tenths(0, 20), { minLength: 9, maxLength: 9 }),
    fc.double({ min: -90, max: 90, noNaN: true }),
  )
  .map(([minima, ranges, lat]) =>
    daily(
      FIRST,
      minima,
      minima.map((tmin, i) => tmin + ranges[i]),
      { station: { ...STATION, lat } },
    ),
  );

describe('nights of a daily record', () => {
  it('start from the booked minimum, never fall with the duration, end below the warmer afternoon', () => {
    fc.assert(
      fc.property(week, (series) => {
        const nights = nightsFromDaily(series);
        for (let i = 0; i < nights.count; i++) {
          expect(nights.sustained[0][i]).toBe(Math.round(series.tminC[i] * 100));
          for (let j = 1; j < SUSTAINED_COUNT; j++) {
            expect(nights.sustained[j][i]).toBeGreaterThanOrEqual(nights.sustained[j - 1][i]);
          }
          const warmest = Math.max(series.tmaxC[i], i > 0 ? series.tmaxC[i - 1] : Infinity, series.tminC[i]);
          if (i > 0) expect(nights.sustained[SUSTAINED_COUNT - 1][i]).toBeLessThanOrEqual(warmest * 100 + 1);
        }
      }),
    );
  });

  it('move by as much as all temperatures move', () => {
    fc.assert(
      fc.property(week, fc.integer({ min: -10, max: 0 }), (series, shift) => {
        const moved = {
          ...series,
          tminC: series.tminC.map((t) => t + shift),
          tmaxC: series.tmaxC.map((t) => t + shift),
        };
        const [a, b] = [nightsFromDaily(series), nightsFromDaily(moved)];
        for (let j = 0; j < SUSTAINED_COUNT; j++) {
          for (let i = 0; i < a.count; i++) {
            expect(Math.abs(b.sustained[j][i] - a.sustained[j][i] - 100 * shift)).toBeLessThanOrEqual(2);
          }
        }
      }),
    );
  });

  it('a record south of the equator half a year later has the same nights', () => {
    const minima = [4, 1, -2, -3, 0, 2];
    const maxima = [14, 12, 9, 11, 13, 15];
    const north = nightsFromDaily(daily(dayNumber(2021, 1, 10), minima, maxima));
    const south = nightsFromDaily(
      daily(dayNumber(2021, 7, 12), minima, maxima, { station: { ...STATION, lat: -30 } }),
    );
    for (let j = 0; j < SUSTAINED_COUNT; j++) {
      for (let i = 0; i < north.count; i++) {
        expect(Math.abs(north.sustained[j][i] - south.sustained[j][i])).toBeLessThan(10);
      }
    }
  });

  it('29 February is a night like any other', () => {
    const nights = nightsFromDaily(daily(FIRST, new Array(20).fill(-1), new Array(20).fill(9)));
    const at = dayNumber(2024, 2, 29) - FIRST;
    expect(nights.count).toBe(20);
    expect(Math.abs(nights.sustained[4][at] - nights.sustained[4][at + 1])).toBeLessThan(15);
  });
});

describe('what is missing', () => {
  const minima = [3, 2, -1, -4, -2, 1, 2];
  const maxima = [12, 13, 9, 7, 10, 12, 14];
  const basis = (i: number, series = daily(FIRST, minima, maxima)): string =>
    NIGHT_BASES[nightsFromDaily(series).basis[i]];

  it('a night whose neighbours are known is daily; with a filled neighbour it is estimated', () => {
    expect(basis(3)).toBe('daily');
    expect(basis(0)).toBe('estimated');
    const filled = daily(
      FIRST,
      minima,
      maxima.map((t, i) => (i === 3 ? NaN : t)),
    );
    expect([2, 3, 4, 5].map((i) => basis(i, filled))).toEqual(['daily', 'estimated', 'estimated', 'daily']);
    const nights = nightsFromDaily(filled);
    expect(nights.tmaxAfter[3]).toBe(UNKNOWN);
    expect(nights.sustained[4][3]).toBeGreaterThan(-400);
  });

  it('a missing maximum is filled by the median range of the month', () => {
    const weeks = Array.from({ length: 5 }, () => minima).flat();
    const range10 = weeks.map((tmin) => tmin + 10);
    const known = nightsFromDaily(daily(FIRST, weeks, range10));
    const filled = nightsFromDaily(
      daily(
        FIRST,
        weeks,
        range10.map((t, i) => (i === 3 ? NaN : t)),
      ),
    );
    for (let j = 0; j < SUSTAINED_COUNT; j++) expect(filled.sustained[j][3]).toBe(known.sustained[j][3]);
  });

  it('without a minimum nothing is known of the night, and warm nights know theirs only', () => {
    const nights = nightsFromDaily(daily(FIRST, [3, NaN, 2, 10.1, 4], [9, 9, 9, 19, 19]));
    expect(nights.sustained.every((column) => column[1] === UNKNOWN)).toBe(true);
    expect([nights.sustained[0][3], nights.sustained[1][3]]).toEqual([1010, UNKNOWN]);
  });

  it('a station without latitude is refused with one sentence', () => {
    const nowhere = daily(FIRST, minima, maxima, { station: { ...STATION, lat: null } });
    expect(() => nightsFromDaily(nowhere)).toThrow(InputError);
    expect(() => nightsFromDaily(nowhere)).toThrow(/invented has no latitude/);
  });

  it('an empty record has no night', () => {
    expect(nightsFromDaily(daily(FIRST, [], [])).count).toBe(0);
  });
});

describe('calm, windy or unclear (handbook microsites.md)', () => {
  const kinds = (maxima: number[], minima: number[], windMs?: number[]): number[] => [
    ...nightsFromDaily(daily(FIRST, minima, maxima, { windMs })).kind,
  ];
  it('by temperatures: like afternoons and a wide range, a falling afternoon, a narrow cold day', () => {
    expect(kinds([15, 15, 15], [5, 3, 2])[2]).toBe(CALM);
    expect(kinds([16, 15, 7], [5, 3, -2])[2]).toBe(WINDY);
    expect(kinds([16, 8, 7], [5, 3, -2])[2]).toBe(WINDY);
    expect(kinds([5, 4, 3], [1, 0, -2])[2]).toBe(WINDY);
    expect(kinds([12, 11, 10], [3, 2, 1])[2]).toBe(UNCLEAR);
    expect(kinds([12, NaN, 13], [3, 2, 1])[2]).toBe(UNCLEAR);
  });
  it('by the mean wind of the two days where it is known', () => {
    expect(kinds([5, 4, 3], [1, 0, -2], [NaN, 2, 3])[2]).toBe(CALM);
    expect(kinds([15, 15, 15], [5, 3, 2], [NaN, 5, 6])[2]).toBe(WINDY);
    expect(kinds([15, 15, 15], [5, 3, 2], [NaN, NaN, 4])[2]).toBe(UNCLEAR);
  });
});
