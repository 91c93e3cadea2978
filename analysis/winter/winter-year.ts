import { civilDate, dayNumber, MONTH_NAMES, type DayNumber } from '../units/calendar.ts';

/** Winters are blocks that don't cut the cold season: July to June north of the equator, calendar years south of it. */
export type Hemisphere = 'north' | 'south';

export function hemisphereOf(lat: number): Hemisphere {
  return lat < 0 ? 'south' : 'north';
}

/** Label of the winter a night (dated by its morning) belongs to: the year of its January; south, the calendar year. */
export function winterOf(night: DayNumber, hemisphere: Hemisphere): number {
  const { year, month } = civilDate(night);
  return hemisphere === 'north' && month >= 7 ? year + 1 : year;
}

/** First and last night of a winter, both included. */
export function winterBounds(winter: number, hemisphere: Hemisphere): { first: DayNumber; last: DayNumber } {
  return hemisphere === 'north'
    ? { first: dayNumber(winter - 1, 7, 1), last: dayNumber(winter, 6, 30) }
    : { first: dayNumber(winter, 1, 1), last: dayNumber(winter, 12, 31) };
}

export interface MonthSpan {
  readonly name: string;
  readonly first: DayNumber;
  /** Day after the month's last. */
  readonly end: DayNumber;
}

const NORTH_MONTHS = [11, 12, 1, 2, 3];
const SOUTH_MONTHS = [5, 6, 7, 8, 9];
/** The five months that must be whole: November to March, south of the equator May to September. */
export function coldMonths(winter: number, hemisphere: Hemisphere): MonthSpan[] {
  return monthsOf(winter, hemisphere, hemisphere === 'north' ? NORTH_MONTHS : SOUTH_MONTHS);
}

/** October and April on either side of them, in both hemispheres: what first and last dates of cold need as well. */
export function shoulderMonths(winter: number, hemisphere: Hemisphere): MonthSpan[] {
  return monthsOf(winter, hemisphere, hemisphere === 'north' ? [10, 4] : [4, 10]);
}

function monthsOf(winter: number, hemisphere: Hemisphere, months: readonly number[]): MonthSpan[] {
  return months.map((month) => {
    const year = hemisphere === 'north' && month >= 7 ? winter - 1 : winter;
    const end = month === 12 ? dayNumber(year + 1, 1, 1) : dayNumber(year, month + 1, 1);
    return { name: MONTH_NAMES[month - 1], first: dayNumber(year, month, 1), end };
  });
}
