import type { DayNumber } from '../units/calendar.ts';
import { seasonDayOfDate } from '../winter/season-day.ts';
import { winterBounds, type Hemisphere } from '../winter/winter-year.ts';

const LEAP_DAY = { north: seasonDayOfDate(2, 29, 'north'), south: seasonDayOfDate(2, 29, 'south') };

/**
 * The day of a winter that has a number of `seasonDayOf`; where the winter has no 29 February, that number is the 28th. The
 * other way round from `seasonDayOf`, for loops over nights that compare days: one call a winter instead of one a night.
 */
export function dayInWinter(winter: number, seasonDay: number, hemisphere: Hemisphere): DayNumber {
  const leap = winter % 4 === 0 && (winter % 100 !== 0 || winter % 400 === 0);
  const skipped = !leap && seasonDay >= LEAP_DAY[hemisphere] ? 1 : 0;
  return winterBounds(winter, hemisphere).first + seasonDay - skipped;
}
