/** Whole days since 1970-01-01 in the proleptic Gregorian calendar. No time zone is involved. */
export type DayNumber = number;

export interface CivilDate {
  readonly year: number;
  /** 1-12 */
  readonly month: number;
  /** 1-31 */
  readonly day: number;
}

/** English names of the months, January first. */
export const MONTH_NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

const MS_PER_DAY = 86_400_000;

/** Day number of a calendar date; years 0-99 are taken as written. The date must exist, see {@link isCivilDate}. */
export function dayNumber(year: number, month: number, day: number): DayNumber {
  if (year >= 100) return Date.UTC(year, month - 1, day) / MS_PER_DAY;
  return new Date(Date.UTC(2000, month - 1, day)).setUTCFullYear(year) / MS_PER_DAY;
}

/** Calendar date of a day number. */
export function civilDate(day: DayNumber): CivilDate {
  const date = new Date(day * MS_PER_DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/** Whether year-month-day exists (29 February 2023 does not). */
export function isCivilDate(year: number, month: number, day: number): boolean {
  if (!(month >= 1 && month <= 12 && day >= 1 && day <= 31)) return false;
  return day <= 28 || civilDate(dayNumber(year, month, day)).month === month;
}

/** `YYYY-MM-DD` to a day number, `null` when it is not such a date. */
export function parseIsoDay(text: string): DayNumber | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return null;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  return isCivilDate(year, month, day) ? dayNumber(year, month, day) : null;
}

/** Day number to `YYYY-MM-DD`. */
export function formatIsoDay(day: DayNumber): string {
  return new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
}

/** Day of the year, 1 January = 1. */
export function dayOfYear(day: DayNumber): number {
  return day - dayNumber(civilDate(day).year, 1, 1) + 1;
}
