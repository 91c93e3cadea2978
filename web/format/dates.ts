import { sayDate, sayMonth } from '../../analysis/language/dates.ts';
import { civilDate, parseIsoDay, type DayNumber } from '../../analysis/units/calendar.ts';

/** `January` for 1; short `Jan`. */
export function monthName(month: number, form: 'long' | 'short' = 'long'): string {
  return sayMonth(month, form);
}

/** A night, dated by its morning: `23 December 1989`, short `23 Dec 1989`. Takes a day number or `YYYY-MM-DD`. */
export function formatDay(day: DayNumber | string, form: 'long' | 'short' = 'long'): string {
  const number = typeof day === 'string' ? parseIsoDay(day) : day;
  if (number === null) return String(day);
  const date = civilDate(number);
  return sayDate(date.year, date.month, date.day, form);
}

/** A winter's name: `1989–90` north of the equator (the year of its January is 1990), `1990` south of it. */
export function formatWinter(winter: number, hemisphere: 'north' | 'south'): string {
  if (hemisphere === 'south') return String(winter);
  return `${winter - 1}\u2013${String(winter % 100).padStart(2, '0')}`;
}

/** Hemisphere of a latitude; the equator counts as north, as in `analysis/winter`. */
export function hemisphereOf(lat: number): 'north' | 'south' {
  return lat < 0 ? 'south' : 'north';
}
