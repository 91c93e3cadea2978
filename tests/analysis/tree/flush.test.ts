import { describe, expect, it } from 'vitest';
import { COOL_HOURS_UNKNOWN } from '../../../analysis/records/nights.ts';
import { flushOfNights } from '../../../analysis/tree/flush.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import type { Hemisphere } from '../../../analysis/winter/winter-year.ts';
import { datesFrom, madeNights, type MadeNight } from './made-nights.ts';

/** Dates with flush out. */
function flushDates(
  nights: readonly MadeNight[],
  calendar: 'gulf' | 'california',
  hemisphere: Hemisphere = 'north',
) {
  const made = madeNights(nights, hemisphere);
  const flush = flushOfNights(made, calendar, hemisphere);
  return [...made.day].filter((_, i) => flush[i] === 1);
}

const every = (from: number, to: number): MadeNight[] => datesFrom(from, to).map((day) => ({ day }));

describe('bloom and new growth', () => {
  // Handbook: main bloom March to mid-April on the Gulf coast, late March to April in California.
  it('is out in the main bloom', () => {
    const year = every(dayNumber(2020, 7, 1), dayNumber(2021, 6, 30));
    expect(flushDates(year, 'gulf')).toEqual(datesFrom(dayNumber(2021, 3, 1), dayNumber(2021, 4, 15)));
    expect(flushDates(year, 'california')).toEqual(datesFrom(dayNumber(2021, 3, 25), dayNumber(2021, 4, 30)));
  });

  it('is out half a year later south of the equator', () => {
    const year = every(dayNumber(2021, 1, 1), dayNumber(2021, 12, 31));
    expect(flushDates(year, 'gulf', 'south')).toEqual(
      datesFrom(dayNumber(2021, 9, 1), dayNumber(2021, 10, 15)),
    );
  });

  it('was out in the leap-year freeze of 8 March 1996 that a hardening index missed (S19)', () => {
    expect(flushDates(every(dayNumber(1996, 3, 7), dayNumber(1996, 3, 9)), 'gulf')).toContain(
      dayNumber(1996, 3, 8),
    );
  });

  /** A winter of kept nights to the end of February but for so many warm ones in a row. */
  const withSpell = (first: number, warm: number, coolAfter = 400): MadeNight[] =>
    every(dayNumber(2020, 11, 1), dayNumber(2021, 2, 28))
      .filter(({ day }) => day < first || day >= first + warm)
      .map(({ day }) => ({ day, coolHours: day < first || day > first + warm + 20 ? 400 : coolAfter }));

  // S05: new flush stands what old leaves stand after about six weeks.
  it('is out for six weeks after ten warm nights in the cold months', () => {
    const spell = dayNumber(2021, 1, 1);
    expect(flushDates(withSpell(spell, 10), 'gulf')).toEqual(datesFrom(spell + 10, spell + 9 + 42));
    expect(flushDates(withSpell(spell, 9), 'gulf')).toEqual([]);
  });

  it('is not drawn by a warm autumn: nights count from 15 December', () => {
    expect(flushDates(withSpell(dayNumber(2020, 11, 20), 20), 'gulf')).toEqual([]);
    expect(flushDates(withSpell(dayNumber(2020, 12, 1), 23), 'gulf')).toEqual([]);
    expect(flushDates(withSpell(dayNumber(2020, 12, 1), 24), 'gulf')[0]).toBe(dayNumber(2020, 12, 25));
  });

  it('comes of warmth before the first cold night of a winter too', () => {
    const nights = every(dayNumber(2020, 12, 30), dayNumber(2021, 1, 2));
    expect(flushDates(nights, 'gulf')).toHaveLength(4);
    expect(flushDates(every(dayNumber(2020, 12, 24), dayNumber(2020, 12, 26)), 'gulf')).toEqual([]);
  });

  it('is not drawn by a gap in the record', () => {
    const spell = dayNumber(2021, 1, 1);
    expect(flushDates(withSpell(spell, 25, COOL_HOURS_UNKNOWN), 'gulf')).toEqual([]);
    const opened = [{ day: dayNumber(2021, 1, 20), coolHours: COOL_HOURS_UNKNOWN }];
    expect(flushDates(opened, 'gulf')).toEqual([]);
  });

  it('is drawn from 15 June on south of the equator', () => {
    const spell = dayNumber(2021, 7, 1);
    const nights = every(dayNumber(2021, 5, 1), dayNumber(2021, 8, 31)).filter(
      ({ day }) => day < spell || day >= spell + 10,
    );
    expect(flushDates(nights, 'gulf', 'south')).toEqual(datesFrom(spell + 10, spell + 51));
    expect(flushDates(nights, 'gulf', 'south')).toHaveLength(42);
  });
});
