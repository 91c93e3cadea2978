import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { nightsFromHourly } from '../../../analysis/night/nights-from-hourly.ts';
import { CALM, UNCLEAR, WINDY } from '../../../analysis/night/night-kind.ts';
import { InputError } from '../../../analysis/records/input-error.ts';
import { MISSING_HUNDREDTHS, SUSTAINED_COUNT, SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import type { HourlySeries } from '../../../analysis/records/series.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import { hourly, hours, STATION } from './series.ts';

const DAY = dayNumber(2021, 1, 15);
const MIDNIGHT = 24 * DAY;

/** Three days around the night of 15 January, 8 °C but for the readings given by hour after its midnight. */
function record(readings: Record<number, number>, without: readonly number[] = []): HourlySeries {
  const times = hours(-48, 48).filter((hour) => !without.includes(hour));
  return hourly(
    times.map((hour) => MIDNIGHT + hour),
    times.map((hour) => readings[hour] ?? 8),
  );
}

function sustained(series: HourlySeries, hoursHeld: number, day = DAY): number {
  const nights = nightsFromHourly(series);
  return nights.sustained[SUSTAINED_HOURS.indexOf(hoursHeld as 0)][day - nights.firstNight] / 100;
}

const UNKNOWN = MISSING_HUNDREDTHS / 100;

describe('windows of h hours hold h + 1 hourly readings', () => {
  const dip = record({ 2: 3, 3: 1, 4: -1, 5: -3, 6: -2, 7: 0, 8: 4 });
  it.each([
    [0, -3],
    [1, -2], // 5, 6 h
    [2, -1], // 4 to 6 h
    [3, 0], // 4 to 7 h
    [4, 1], // 3 to 7 h
    [5, 3], // 2 to 7 h
    [6, 4], // 2 to 8 h
    [8, 8],
  ])('S_%i', (h, level) => expect(sustained(dip, h)).toBe(level));

  it('one lone cold reading is no hour of cold', () => {
    expect(sustained(record({ 5: -6 }), 0)).toBe(-6);
    expect(sustained(record({ 5: -6 }), 1)).toBe(8);
  });

  it('a window belongs to the night that holds its midpoint', () => {
    const noonDip = record({ 11: -1, 12: -2, 13: -2, 14: -1 });
    expect(sustained(noonDip, 1)).toBe(-1); // 11 to 12 h, midpoint 11:30
    expect(sustained(noonDip, 1, DAY + 1)).toBe(-2); // 12 to 13 h, midpoint 12:30
    expect(sustained(noonDip, 2)).toBe(8); // 10 to 12 h holds 8 °C
    expect(sustained(noonDip, 2, DAY + 1)).toBe(-1); // 12 to 14 h
  });

  it('24 hours reach over the noons into the neighbouring days', () => {
    const cold = Object.fromEntries(hours(-12, 12).map((hour) => [hour, -1 - (hour === 0 ? 1 : 0)]));
    expect(sustained(record(cold), 24)).toBe(-1);
    expect(sustained(record(cold), 24, DAY + 1)).toBe(8);
  });
});

describe('readings off the hour', () => {
  it('minutes past the hour make no difference', () => {
    const even = record({ 3: 0, 4: -2, 5: -3, 6: -1 });
    const late = {
      ...even,
      timeUtcH: even.timeUtcH.map((time, k) => time + 0.88 + (k % 3 === 0 ? 0.05 : 0)),
    };
    for (const h of [0, 1, 2, 3, 4]) expect(sustained(late, h)).toBe(sustained(even, h));
  });

  it('three-hourly readings are joined by straight lines', () => {
    const times = hours(-48, 48, 3);
    const series = hourly(
      times.map((hour) => MIDNIGHT + hour),
      times.map((hour) => ({ 3: 1, 6: -5, 9: 1 })[hour] ?? 8),
    );
    expect(sustained(series, 0)).toBe(-5);
    expect(sustained(series, 1)).toBe(-3); // 6 to 7 h: the line from -5 to 1 stands at -3 after an hour
    expect(sustained(series, 3)).toBe(1);
    expect(sustained(series, 6)).toBe(1);
  });

  it('a special report between the hours counts in every window over it', () => {
    const times = [...hours(-48, 4), 4.5, ...hours(5, 48)];
    const series = hourly(
      times.map((hour) => MIDNIGHT + hour),
      times.map((hour) => (hour === 4.5 ? 2 : hour >= 3 && hour <= 6 ? -2 : 8)),
    );
    expect(sustained(series, 1)).toBe(-2); // 5 to 6 h
    expect(sustained(series, 2)).toBe(2);
  });
});

describe('gaps', () => {
  const cold = { 3: -1, 4: -2, 5: -3, 6: -2, 7: -1 };
  it('three hours without a reading between two readings are no gap, more in the dark make the night unknown', () => {
    expect(sustained(record(cold, [-3, -2]), 0)).toBe(-3);
    expect(sustained(record(cold, [-3, -2, -1]), 0)).toBe(UNKNOWN);
    expect(sustained(record(cold, [-3, -2, -1]), 4)).toBe(UNKNOWN);
    expect(sustained(record(cold, [-3, -2, -1]), 4, DAY + 1)).toBe(8);
  });

  it('a gap by day leaves short durations known, and those that could be colder over it unknown', () => {
    const noonGap = record(cold, [9, 10, 11, 12]);
    expect(sustained(noonGap, 4)).toBe(-1);
    expect(sustained({ ...noonGap }, 5)).toBe(8); // every window over the gap holds a reading of 8 °C
    const coldGap = record({ ...cold, 8: -1 }, [9, 10, 11, 12]);
    expect(sustained(coldGap, 5)).toBe(-1);
    expect(sustained(coldGap, 6)).toBe(UNKNOWN); // 3 to 9 h might be -1 °C
  });

  it('the first and last night of a record are known only if their dark hours are', () => {
    const night = hours(-8, 9);
    const whole = hourly(
      night.map((hour) => MIDNIGHT + hour),
      night.map((hour) => (hour === 5 ? -1 : 2)),
    );
    expect(sustained(whole, 0)).toBe(-1);
    const broken = hourly(
      hours(1, 30).map((hour) => MIDNIGHT + hour),
      hours(1, 30).map(() => 2),
    );
    expect(sustained(broken, 0)).toBe(UNKNOWN);
  });
});

describe('what goes with a night', () => {
  it('maxima are those of the solar days before and after, the minimum that of noon to noon', () => {
    const nights = nightsFromHourly(record({ '-10': 15, 5: -1, 14: 12, 20: -4 }));
    const i = DAY - nights.firstNight;
    expect([nights.tmaxBefore[i], nights.tmin[i], nights.tmaxAfter[i]]).toEqual([1500, -100, 1200]);
    expect(nights.tmin[i + 1]).toBe(-400);
  });

  it('kind follows the wind within three hours of the lowest reading', () => {
    const series = record({ 4: 0, 5: -3, 6: 0 });
    const kind = (near: number, far: number): number => {
      const windMs = series.timeUtcH.map((time) => (Math.abs(time - MIDNIGHT - 5) <= 3 ? near : far));
      const nights = nightsFromHourly({ ...series, windMs });
      return nights.kind[DAY - nights.firstNight];
    };
    expect(kind(1, 9)).toBe(CALM);
    expect(kind(6, 0)).toBe(WINDY);
    expect(kind(3, 0)).toBe(UNCLEAR);
  });

  it('nights above 10 °C know their minimum only', () => {
    const warm = hourly(
      hours(-48, 48).map((hour) => MIDNIGHT + hour),
      hours(-48, 48).map(() => 10.5),
    );
    expect(sustained(warm, 0)).toBe(10.5);
    expect(sustained(warm, 1)).toBe(UNKNOWN);
  });

  it('night and noon follow the sun of the place', () => {
    const east = { ...STATION, lon: 135, lat: -35 };
    const series = { ...record({ 5: -1 }), station: east };
    const shifted = { ...series, timeUtcH: series.timeUtcH.map((time) => time - 9) };
    expect(sustained(shifted, 0)).toBe(-1);
    expect(() => nightsFromHourly({ ...series, station: { ...east, lon: null } })).toThrow(InputError);
  });

  it('an empty record has no night; the polar night is one long night', () => {
    expect(nightsFromHourly(hourly([], [])).count).toBe(0);
    const polar = { ...record({ 5: -1 }), station: { ...STATION, lat: 85 } };
    expect(sustained(polar, 4)).toBe(8);
  });
});

describe('properties', () => {
  const walk = fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 97, maxLength: 97 });

  it('equals the search over all windows of hourly readings, and never falls with the duration', () => {
    fc.assert(
      fc.property(walk, (tenths) => {
        const temps = tenths.map((value) => value / 10);
        const series = hourly(
          hours(-48, 48).map((hour) => MIDNIGHT + hour),
          temps,
        );
        const nights = nightsFromHourly(series);
        const i = DAY - nights.firstNight;
        for (let j = 0; j < SUSTAINED_COUNT; j++) {
          const h = SUSTAINED_HOURS[j];
          let coldest = Infinity;
          for (let start = 0; start + h < temps.length; start++) {
            const middle = start - 48 + h / 2;
            if (middle < -12 || middle >= 12) continue;
            coldest = Math.min(coldest, Math.max(...temps.slice(start, start + h + 1)));
          }
          expect(nights.sustained[j][i]).toBe(Math.round(coldest * 100));
        }
      }),
      { numRuns: 50 },
    );
  });

  it('moves by as much as all readings move', () => {
    fc.assert(
      fc.property(walk, fc.integer({ min: -50, max: 50 }), (tenths, shift) => {
        const times = hours(-48, 48).map((hour) => MIDNIGHT + hour + 0.3);
        const of = (by: number): Int16Array[] => [
          ...nightsFromHourly(
            hourly(
              times,
              tenths.map((value) => (value + by) / 10),
            ),
          ).sustained,
        ];
        const [a, b] = [of(0), of(shift)];
        for (let j = 0; j < SUSTAINED_COUNT; j++) {
          expect(Math.abs(b[j][2] - a[j][2] - 10 * shift)).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 30 },
    );
  });
});
