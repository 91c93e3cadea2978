import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { DAYS_WITH_BOTH_MIN, fewMaximaNote, hasFewMaxima } from '../../../analysis/night/few-maxima.ts';
import { nightsFromDaily } from '../../../analysis/night/nights-from-daily.ts';
import { MINIMUM_FEATURE_COUNT, minimumFeatures } from '../../../analysis/night/minimum-features.ts';
import { MISSING_HUNDREDTHS, NIGHT_BASES, SUSTAINED_COUNT } from '../../../analysis/records/nights.ts';
import type { DailySeries } from '../../../analysis/records/series.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import { KnownNights } from '../../../analysis/winter/known-nights.ts';
import { daily, STATION } from './series.ts';

const FIRST = dayNumber(2020, 11, 1);
const FOUR_HOURS = 4;
const DAYS = 60;

const minima = fc.array(
  fc.integer({ min: -250, max: 100 }).map((tenths) => tenths / 10),
  { minLength: DAYS, maxLength: DAYS },
);
const lat = fc.double({ min: -90, max: 90, noNaN: true });

/** A record with maxima 9 °C above the minima on the first `known` days, none after. */
function record(tminC: readonly number[], known = 0, latDeg = 40): DailySeries {
  const maxima = tminC.map((tmin, i) => (i < known ? tmin + 9 : NaN));
  return daily(FIRST, tminC, maxima, { station: { ...STATION, lat: latDeg } });
}

describe('a record without maxima', () => {
  it('has all durations on every night, never falling with the duration, marked estimated', () => {
    fc.assert(
      fc.property(minima, lat, (tminC, latDeg) => {
        const nights = nightsFromDaily(record(tminC, 0, latDeg));
        for (let i = 0; i < DAYS; i++) {
          expect(NIGHT_BASES[nights.basis[i]]).toBe('estimated');
          expect(nights.sustained[0][i]).toBe(Math.round(tminC[i] * 100));
          for (let j = 1; j < SUSTAINED_COUNT; j++) {
            expect(nights.sustained[j][i]).toBeGreaterThanOrEqual(nights.sustained[j - 1][i]);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('moves by as much as all minima move', () => {
    fc.assert(
      fc.property(minima, fc.integer({ min: -10, max: 0 }), (tminC, shift) => {
        const [a, b] = [tminC, tminC.map((tmin) => tmin + shift)].map((all) => nightsFromDaily(record(all)));
        for (let j = 0; j < SUSTAINED_COUNT; j++) {
          for (let i = 0; i < DAYS; i++) {
            expect(Math.abs(b.sustained[j][i] - a.sustained[j][i] - 100 * shift)).toBeLessThanOrEqual(2);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('counts in the winter: its nights are known, a night without a minimum is not', () => {
    const tminC = new Array<number>(DAYS).fill(-3);
    tminC[7] = NaN;
    const nights = nightsFromDaily(record(tminC));
    const known = new KnownNights(nights);
    expect([6, 7, 8].map((i) => known.has(FIRST + i))).toEqual([true, false, true]);
    expect(nights.sustained[FOUR_HOURS][7]).toBe(MISSING_HUNDREDTHS);
  });

  it('says nothing of hours of cold on nights that stay above 10 °C, nor of cool hours', () => {
    const nights = nightsFromDaily(record(new Array<number>(DAYS).fill(10.1)));
    expect(nights.sustained[FOUR_HOURS][5]).toBe(MISSING_HUNDREDTHS);
    expect(nights.coolHours[40]).toBe(-1);
  });

  it('holds the minimum longer where the nights around it are as cold than where they are warmer', () => {
    const held = (before: number, after: number): number => {
      const tminC = new Array<number>(DAYS).fill(0);
      [tminC[29], tminC[30], tminC[31]] = [before, -6, after];
      return nightsFromDaily(record(tminC)).sustained[FOUR_HOURS][30];
    };
    expect(held(-6, -6)).toBeLessThan(held(2, 2));
  });

  it('has the same nights half a year later south of the equator', () => {
    const at = (latDeg: number, dayOfYear: number): number[] => {
      const out = new Float64Array(MINIMUM_FEATURE_COUNT);
      const around = { tmin: -2, tminBefore: 0, tminAfter: 1, tminTwoBefore: 3, medianOfMonth: 2 };
      minimumFeatures({ ...around, dayLength: 10, lat: latDeg, dayOfYear }, out);
      return [...out];
    };
    const [north, south] = [at(35, 40), at(-35, 40 + 182.625)];
    north.forEach((value, k) => expect(south[k]).toBeCloseTo(value, 10));
  });
});

describe('a record with a few maxima', () => {
  const wavy = Array.from({ length: DAYS }, (_, i) => Math.round(40 * Math.sin(i)) / 10 - 2);

  it(`has few below ${DAYS_WITH_BOTH_MIN} days with both extremes`, () => {
    expect(hasFewMaxima(record(wavy, DAYS_WITH_BOTH_MIN - 1))).toBe(true);
    expect(hasFewMaxima(record(wavy, DAYS_WITH_BOTH_MIN))).toBe(false);
    expect(hasFewMaxima(record([]))).toBe(true);
  });

  it('takes nights whose neighbours are all known from the curve, others from the minima', () => {
    const few = nightsFromDaily(record(wavy, 20));
    const whole = nightsFromDaily(record(wavy, DAYS));
    const none = nightsFromDaily(record(wavy));
    const levels = (nights: typeof few, i: number): number[] => nights.sustained.map((column) => column[i]);
    expect(NIGHT_BASES[few.basis[10]]).toBe('daily');
    expect(levels(few, 10)).toEqual(levels(whole, 10));
    expect(NIGHT_BASES[few.basis[40]]).toBe('estimated');
    expect(levels(few, 40)).toEqual(levels(none, 40));
    expect(levels(few, 40)).not.toEqual(levels(whole, 40));
  });

  it('is bounded by the two afternoons where both are known', () => {
    const tminC = new Array<number>(DAYS).fill(8);
    [tminC[4], tminC[5]] = [NaN, -2];
    const maxima = tminC.map((_, i) => (i === 4 || i === 5 ? 1 : NaN));
    const nights = nightsFromDaily(daily(FIRST, tminC, maxima));
    expect(nights.sustained[SUSTAINED_COUNT - 1][5]).toBeLessThanOrEqual(100);
  });

  it('tells its reader so, with the measured error', () => {
    expect(fewMaximaNote(record(wavy))).toMatch(/has no maxima, .* 4 hours is then 0\.[5-9] °C off/);
    expect(fewMaximaNote(record(wavy, 5))).toMatch(/has hardly any maxima/);
  });
});
