import { DateFields } from '../../read/dates.ts';

/** A date at the start of a field, and what follows it. */
export interface DateText {
  /** Day number, or a code whose order of day and month isn't known yet (`isUnordered`); NaN: no such day. */
  readonly code: number;
  /** Hours since midnight, NaN where no time follows. */
  readonly hour: number;
}

const FIELDS = new DateFields();
const MONTHS = 'jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec';
const NAMES = MONTHS.split('|');
const WEEKDAY = /\b(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*\.?,?\s+(?=\d|[a-z]{3,9}\.?\s+\d)/gi;
const DAY_NAME_YEAR = new RegExp(
  `\\b(\\d{1,2})(?:st|nd|rd|th)?[ -](${MONTHS})[a-z]*\\.?,?[ -](\\d{4}|\\d{2})\\b`,
  'gi',
);
const NAME_DAY_YEAR = new RegExp(
  `\\b(${MONTHS})[a-z]*\\.?[ -](\\d{1,2})(?:st|nd|rd|th)?,?[ -]+(\\d{4})\\b`,
  'gi',
);
const NUMERIC = /^(\d{1,4})([-/.])(\d{1,2})\2(\d{4}|\d{2})(?![\d.])/;
const COMPACT = /^(?:19|20)\d{6}(?!\d)/;
const TIME = /^(\d{1,2}):(\d{2})(?::\d{2}(?:\.\d+)?)?\s*([ap])?\.?m?\.?\b/i;

/** A line with dates such as `5 Jan 2024`, `January 5, 2024`, `Fri 5-Jan-24` written as 2024-01-05. */
export function withMonthNumbers(line: string): string {
  if (!/[a-z]{3}/i.test(line)) return line;
  const iso = (year: string, name: string, day: string): string => {
    const month = NAMES.indexOf(name.slice(0, 3).toLowerCase()) + 1;
    return `${fullYear(year)}-${String(month).padStart(2, '0')}-${day.padStart(2, '0')}`;
  };
  return line
    .replace(WEEKDAY, '')
    .replace(DAY_NAME_YEAR, (_, day: string, name: string, year: string) => iso(year, name, day))
    .replace(NAME_DAY_YEAR, (_, name: string, day: string, year: string) => iso(year, name, day));
}

/** The date a field begins with, and a time behind it; `null` when it begins with none. */
export function dateText(field: string): DateText | null {
  const compact = COMPACT.exec(field);
  const match = compact ?? NUMERIC.exec(field);
  if (!match) return null;
  const whole = compact ? match[0] : wholeDate(match);
  if (whole === null) return null;
  const rest = field.slice(match[0].length).replace(/^(?:T|,?\s+)/, '');
  const hour = hourOf(rest);
  if (Number.isNaN(hour) && !/^[a-z. ]*$/i.test(rest)) return null;
  return { code: FIELDS.read(whole, 0, whole.length), hour };
}

/** Year, month, day or day, month, year in four figures for the year. */
function wholeDate(match: RegExpExecArray): string | null {
  const [, first, mark, middle, last] = match as unknown as string[];
  if (first!.length === 4) return last!.length === 2 ? `${first}-${middle}-${last}` : null;
  return first!.length <= 2 ? `${first}${mark}${middle}${mark}${fullYear(last!)}` : null;
}

function fullYear(year: string): string {
  if (year.length === 4) return year;
  return `${Number(year) < 70 ? 20 : 19}${year}`;
}

/** Hours since midnight of a time such as `6:30`, `06:30:15`, `11:05 PM`; NaN for anything else. */
export function hourOf(text: string): number {
  const match = TIME.exec(text);
  if (!match) return NaN;
  const half = match[3]?.toLowerCase();
  const hour = Number(match[1]);
  if (hour > 24 || Number(match[2]) > 59 || (half && (hour > 12 || hour === 0))) return NaN;
  const of24 = half ? (hour % 12) + (half === 'p' ? 12 : 0) : hour;
  return of24 + Number(match[2]) / 60;
}
