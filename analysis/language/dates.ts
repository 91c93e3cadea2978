import { ENGLISH, spokenLocale } from './t.ts';

const made = new Map<string, Intl.DateTimeFormat>();

/** Days here are of no time zone. */
function formatOf(parts: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${spokenLocale()} ${JSON.stringify(parts)}`;
  const format = made.get(key) ?? new Intl.DateTimeFormat(spokenLocale(), { ...parts, timeZone: 'UTC' });
  made.set(key, format);
  return format;
}

/** A leap year, so that 29 February exists. */
const ANY_YEAR = 2000;

/** `January`, short `Jan`, in the language spoken; 1-12. */
export function sayMonth(month: number, form: 'long' | 'short' = 'long'): string {
  return formatOf({ month: form }).format(Date.UTC(ANY_YEAR, month - 1, 1));
}

/** A date of every year: `21 November`, short `21 Nov`; in Spanish `21 de noviembre`, `21 nov`. */
export function sayMonthDay(month: number, day: number, form: 'long' | 'short' = 'long'): string {
  if (spokenLocale() === ENGLISH) return `${day} ${sayMonth(month, form)}`;
  return formatOf({ day: 'numeric', month: form }).format(Date.UTC(ANY_YEAR, month - 1, day));
}

/** A day: `23 December 1989`, short `23 Dec 1989`; in Spanish `23 de diciembre de 1989`, `23 dic 1989`. */
export function sayDate(year: number, month: number, day: number, form: 'long' | 'short' = 'long'): string {
  if (spokenLocale() === ENGLISH) return `${day} ${sayMonth(month, form)} ${year}`;
  const date = new Date(0);
  // Not Date.UTC, which takes the years 0 to 99 for those of the last century.
  date.setUTCFullYear(year, month - 1, day);
  return formatOf({ day: 'numeric', month: form, year: 'numeric' }).format(date);
}
