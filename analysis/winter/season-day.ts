import { civilDate, dayNumber, formatIsoDay, type DayNumber } from '../units/calendar.ts';
import type { Hemisphere } from './winter-year.ts';

/** Days of a leap year, so that every date has a number of its own. */
export const SEASON_DAYS = 366;

/** First day of the winter with a 29 February whose dates number the days: 1 July 1999, south 1 January 2000. */
const FIRST_DAY = { north: dayNumber(1999, 7, 1), south: dayNumber(2000, 1, 1) };

/**
 * Number of a date within its winter, 0 (1 July; south of the equator 1 January) to 365. The same date has the same number
 * in every winter: 29 February has one of its own, which most winters lack.
 */
export function seasonDayOf(day: DayNumber, hemisphere: Hemisphere): number {
  const { month, day: ofMonth } = civilDate(day);
  return seasonDayOfDate(month, ofMonth, hemisphere);
}

/** The same of a month (1-12) and its day. */
export function seasonDayOfDate(month: number, ofMonth: number, hemisphere: Hemisphere): number {
  const year = hemisphere === 'north' && month >= 7 ? 1999 : 2000;
  return dayNumber(year, month, ofMonth) - FIRST_DAY[hemisphere];
}

/** `MM-DD` of a number of {@link seasonDayOf}; fractions are rounded to the nearest day. */
export function seasonDayText(seasonDay: number, hemisphere: Hemisphere): string {
  const within = Math.min(SEASON_DAYS - 1, Math.max(0, Math.round(seasonDay)));
  return formatIsoDay(FIRST_DAY[hemisphere] + within).slice(5);
}
