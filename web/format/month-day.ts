import { sayMonthDay } from '../../analysis/language/dates.ts';
import { t } from '../../analysis/language/t.ts';

/** Parts of a date of every year. */
export interface MonthDay {
  /** 1-12 */
  readonly month: number;
  /** 1-31 */
  readonly day: number;
}

/** `MM-DD` to its parts. The text is taken as well formed, as answers write it. */
export function monthDayOf(text: string): MonthDay {
  return { month: Number(text.slice(0, 2)), day: Number(text.slice(3, 5)) };
}

/** A date of every year: `21 Nov`, long `21 November`. Takes `MM-DD`; `null` gives an en dash. */
export function formatMonthDay(text: string | null, form: 'long' | 'short' = 'short'): string {
  if (text === null) return '\u2013';
  const { month, day } = monthDayOf(text);
  return sayMonthDay(month, day, form).replaceAll(' ', '\u00a0');
}

/** `14 to 29 Nov`, `28 Nov to 3 Dec`; one date where both are the same. */
export function formatMonthDays(from: string, to: string, form: 'long' | 'short' = 'short'): string {
  if (from === to) return formatMonthDay(from, form);
  const sameMonth = from.slice(0, 2) === to.slice(0, 2);
  const first = sameMonth ? String(monthDayOf(from).day) : formatMonthDay(from, form);
  return t`${first} to ${formatMonthDay(to, form)}`;
}
