import { describe, expect, it } from 'vitest';
import { dayInWinter } from '../../../analysis/tree/day-in-winter.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import { seasonDayOf, seasonDayOfDate } from '../../../analysis/winter/season-day.ts';
import { winterBounds } from '../../../analysis/winter/winter-year.ts';

describe('a day of a winter by its number', () => {
  it('is the day that has the number, in leap years, common years and centuries', () => {
    for (const hemisphere of ['north', 'south'] as const) {
      for (const winter of [1900, 1999, 2000, 2001, 2004, 2023, 2024]) {
        const { first, last } = winterBounds(winter, hemisphere);
        for (let day = first; day <= last; day++) {
          expect(dayInWinter(winter, seasonDayOf(day, hemisphere), hemisphere)).toBe(day);
        }
      }
    }
  });

  it('is 28 February for the 29th where there is none', () => {
    for (const hemisphere of ['north', 'south'] as const) {
      const leapDay = seasonDayOfDate(2, 29, hemisphere);
      expect(dayInWinter(2023, leapDay, hemisphere)).toBe(dayNumber(2023, 2, 28));
      expect(dayInWinter(1900, leapDay, hemisphere)).toBe(dayNumber(1900, 2, 28));
      expect(dayInWinter(2024, leapDay, hemisphere)).toBe(dayNumber(2024, 2, 29));
    }
  });
});
