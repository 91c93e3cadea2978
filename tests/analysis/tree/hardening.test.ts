import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COOL_HOURS_UNKNOWN } from '../../../analysis/records/nights.ts';
import { nightsFromHourly } from '../../../analysis/night/nights-from-hourly.ts';
import { hardeningOfNights } from '../../../analysis/tree/hardening.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import { hourly, hours } from '../night/series.ts';
import { datesFrom, keptOf, madeNights, type MadeNight } from './made-nights.ts';

/** Hours at or below 10 °C counted by hand: constant 20 °C but for the days from `from` to before `to`. */
function hourlyNights(from: number, to: number, ofHour: (hour: number) => number) {
  const first = from - 40;
  const times = hours(24 * first, 24 * (to + 3));
  const temps = times.map((time) => (time >= 24 * from && time < 24 * to ? ofHour(time % 24) : 20));
  return keptOf(nightsFromHourly(hourly(times, temps)), 'north');
}

describe('hardening from cool hours', () => {
  // Each day falls straight from 16 °C at 18:00 to 4 °C at 6:00 and rises straight back: 1 °C an hour. It is 10 °C at
  // midnight and at noon, so the 12 hours between them are cool and no others. The hours before the week (20 °C, falling to
  // 10 °C at the first midnight) and after it (rising from 11 °C to 20 °C) hold no cool minute. After k mornings of the week
  // the 500 hours hold 12 k cool ones: the tree is hardened to 12 k / 400 = 0.03 k, after the week to 84 / 400 = 0.21. The noon of the last
  // day, at 10 °C sharp, opens an eighth night that has no cool time of its own.
  it('of a week worked out by hand', () => {
    const from = dayNumber(2021, 12, 6);
    const nights = hourlyNights(
      from,
      from + 7,
      (hour) => 10 - (hour <= 12 ? 6 - Math.abs(hour - 6) : Math.abs(hour - 18) - 6),
    );
    expect([...nights.day]).toEqual(datesFrom(from, from + 7));
    expect([...nights.coolHours]).toEqual([12, 24, 36, 48, 60, 72, 84, 84]);
    const hardening = hardeningOfNights(nights);
    [0.03, 0.06, 0.09, 0.12, 0.15, 0.18, 0.21, 0.21].forEach((byHand, k) =>
      expect(hardening[k]).toBeCloseTo(byHand, 6),
    );
  });

  // At a constant 5 °C from a midnight on the first night holds 12 cool hours and each further one 24: after n nights
  // 12 + 24 (n - 1). The 17th has 396 (0.99), the 18th 420: S19's 400 are passed and the tree is hardened in full. From the
  // 22nd on the window is full: 500.
  it('is full at 400 of 500 hours (S19)', () => {
    const from = dayNumber(2021, 12, 6);
    const nights = hourlyNights(from, from + 30, () => 5);
    const hardening = hardeningOfNights(nights);
    expect([nights.coolHours[0], nights.coolHours[16], nights.coolHours[17], nights.coolHours[21]]).toEqual([
      12, 396, 420, 500,
    ]);
    expect(hardening[0]).toBeCloseTo(0.03, 6);
    expect(hardening[1]).toBeCloseTo(0.09, 6);
    expect(hardening[16]).toBeCloseTo(0.99, 6);
    expect([...hardening.slice(17, 30)]).toEqual(new Array(13).fill(1));
  });

  // S23: in a warm spell hardening is lost faster than it was gained.
  it('is lost faster than gained', () => {
    const start = dayNumber(2021, 12, 1);
    const before = datesFrom(start, start + 29);
    const after = datesFrom(start + 35, start + 60);
    const hardening = hardeningOfNights(madeNights([...before, ...after].map((day) => ({ day }))));
    const gained = hardening.indexOf(1) + 1;
    expect(gained).toBe(17); // 400 hours at 24 a day
    expect(hardening[29]).toBe(1);
    expect(hardening[30]).toBeCloseTo(1 - 5 * 0.1 + 0.06, 6);
    const regained = hardening.slice(30).findIndex((value) => value > 1 - 1e-6) + 1;
    expect(regained).toBeGreaterThan(5);
    const gone = hardeningOfNights(
      madeNights([...before, ...datesFrom(start + 42, start + 43)].map((day) => ({ day }))),
    );
    expect(gone[30]).toBeCloseTo(0.06, 6);
  });

  it('falls with the cool hours themselves', () => {
    const start = dayNumber(2021, 12, 1);
    const nights = datesFrom(start, start + 20).map((day): MadeNight => ({ day }));
    const hardening = hardeningOfNights(madeNights([...nights, { day: start + 21, coolHours: 100 }]));
    expect(hardening.at(-1)).toBeCloseTo(0.25, 6);
  });

  it('starts again every winter, north in July and south in January', () => {
    const north = datesFrom(dayNumber(2021, 6, 1), dayNumber(2021, 7, 2));
    const summer = hardeningOfNights(madeNights(north.map((day) => ({ day }))));
    expect(summer[29]).toBe(1);
    expect(summer[30]).toBeCloseTo(0.06, 6);
    const south = datesFrom(dayNumber(2021, 6, 1), dayNumber(2021, 7, 2));
    const winter = hardeningOfNights(
      madeNights(
        south.map((day) => ({ day })),
        'south',
      ),
    );
    expect([...winter.slice(17)]).toEqual(new Array(15).fill(1));
    const newYear = datesFrom(dayNumber(2021, 12, 1), dayNumber(2022, 1, 1));
    expect(
      hardeningOfNights(
        madeNights(
          newYear.map((day) => ({ day })),
          'south',
        ),
      )[31],
    ).toBeCloseTo(0.06, 6);
  });

  it('carries unknown cool hours ten days, then is none, then goes on from where it stood', () => {
    const start = dayNumber(2021, 12, 1);
    const nights = datesFrom(start, start + 49).map((day): MadeNight => ({
      day,
      coolHours: day >= start + 20 && day < start + 40 ? COOL_HOURS_UNKNOWN : 400,
    }));
    const hardening = hardeningOfNights(madeNights(nights));
    expect([...hardening.slice(20, 29)]).toEqual(new Array(9).fill(1));
    expect([...hardening.slice(30, 40)]).toEqual(new Array(10).fill(0));
    expect(hardening[40]).toBe(1);
    const never = nights.map(({ day }) => ({ day, coolHours: COOL_HOURS_UNKNOWN }));
    expect(hardeningOfNights(madeNights(never)).every((value) => value === 0)).toBe(true);
  });

  const winter = fc.array(
    fc.record({ gap: fc.integer({ min: 1, max: 6 }), coolHours: fc.integer({ min: 0, max: 500 }) }),
    {
      minLength: 1,
      maxLength: 80,
    },
  );
  const nightsOf = (rows: readonly { gap: number; coolHours: number }[]): MadeNight[] => {
    let day = dayNumber(2000, 9, 1);
    return rows.map(({ gap, coolHours }) => ({ day: (day += gap), coolHours }));
  };

  it('never passes what the cool hours carry it to, and gains at most 24 hours of 400 a night', () => {
    fc.assert(
      fc.property(winter, (rows) => {
        const hardening = hardeningOfNights(madeNights(nightsOf(rows)));
        rows.forEach(({ coolHours }, i) => {
          const before = i === 0 ? 0 : hardening[i - 1];
          expect(hardening[i]).toBeGreaterThanOrEqual(0);
          expect(hardening[i]).toBeLessThanOrEqual(Math.min(1, coolHours / 400) + 1e-6);
          expect(hardening[i]).toBeLessThanOrEqual(before + 24 / 400 + 1e-6);
        });
      }),
    );
  });

  it('is never less for more cool hours', () => {
    fc.assert(
      fc.property(winter, fc.integer({ min: 0, max: 200 }), (rows, more) => {
        const less = hardeningOfNights(madeNights(nightsOf(rows)));
        const cooler = rows.map(({ gap, coolHours }) => ({ gap, coolHours: coolHours + more }));
        hardeningOfNights(madeNights(nightsOf(cooler))).forEach((value, i) =>
          expect(value).toBeGreaterThanOrEqual(less[i]),
        );
      }),
    );
  });
});
