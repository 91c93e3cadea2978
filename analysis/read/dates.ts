import { dayNumber, isCivilDate, type DayNumber } from '../units/calendar.ts';
import { digitsAt } from './fields.ts';

/** Order of the parts of dates that don't start with the year, `auto` where the file itself must tell. */
export type DateOrder = 'auto' | 'day first' | 'month first';

/**
 * Codes from here on are dates written part/part/year whose order isn't known yet:
 * `UNORDERED + year * 10000 + first * 100 + second`. Smaller values are day numbers.
 */
const UNORDERED = 1_000_000_000;

/** Whether a date code still waits for the order of its parts. */
export function isUnordered(code: number): boolean {
  return code >= UNORDERED;
}

/** Dates in place. Year first (`2021-02-16`, `2021/2/16`, `20210216`) or year last (`16/02/2021`, `2-16-2021`). */
export class DateFields {
  /** Index after the date just read, where a time may follow. */
  next = 0;
  private cachedMonth = -1;
  private cachedStart = 0;
  private readonly order: DateOrder;

  constructor(order: DateOrder = 'auto') {
    this.order = order;
  }

  /** Day number, or an unordered code; NaN when the field isn't a date or the day doesn't exist. */
  read(text: string, from: number, to: number): number {
    let run = from;
    while (run < to && isDigit(text.charCodeAt(run))) run += 1;
    const length = run - from;
    // A time may follow at once, by hours, minutes and seconds of two figures each.
    if (length >= 8)
      return length <= 14 && length % 2 === 0 && endsDate(text, run, to) ? this.compact(text, from) : NaN;
    if (run >= to) return NaN;
    const mark = text.charCodeAt(run);
    if (!(mark === 45 || mark === 47 || mark === 46)) return NaN;
    const middle = run + 1;
    let end = middle;
    while (end < to && isDigit(text.charCodeAt(end))) end += 1;
    if (end >= to || text.charCodeAt(end) !== mark) return NaN;
    const last = end + 1;
    let stop = last;
    while (stop < to && isDigit(text.charCodeAt(stop))) stop += 1;
    this.next = stop;
    if (!endsDate(text, stop, to)) return NaN;
    const [a, b, c] = [digitsAt(text, from, run), digitsAt(text, middle, end), digitsAt(text, last, stop)];
    if (length === 4) return end - middle <= 2 && stop - last <= 2 ? this.day(a, b, c) : NaN;
    if (stop - last !== 4 || length > 2 || end - middle > 2 || a < 1 || b < 1 || a > 31 || b > 31) return NaN;
    if (this.order === 'day first') return this.day(c, b, a);
    if (this.order === 'month first') return this.day(c, a, b);
    return UNORDERED + c * 10_000 + a * 100 + b;
  }

  /** Day number of a calendar date, NaN when it doesn't exist. */
  day(year: number, month: number, day: number): number {
    if (!(month >= 1 && month <= 12 && day >= 1 && day <= 31 && year >= 1600 && year <= 2500)) return NaN;
    const key = year * 12 + month;
    if (key !== this.cachedMonth) {
      this.cachedMonth = key;
      this.cachedStart = dayNumber(year, month, 1);
    }
    return day <= 28 || isCivilDate(year, month, day) ? this.cachedStart + day - 1 : NaN;
  }

  private compact(text: string, from: number): number {
    this.next = from + 8;
    return this.day(
      digitsAt(text, from, from + 4),
      digitsAt(text, from + 4, from + 6),
      digitsAt(text, from + 6, from + 8),
    );
  }
}

/** Nothing follows a date but a time, behind a blank or a T. */
function endsDate(text: string, at: number, to: number): boolean {
  if (at >= to) return true;
  const code = text.charCodeAt(at);
  return code === 32 || code === 84;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** Gives an unordered code its order; NaN when that day doesn't exist. Day numbers pass through. */
export function ordered(code: number, order: 'day first' | 'month first'): DayNumber {
  if (code < UNORDERED) return code;
  const rest = code - UNORDERED;
  const year = Math.floor(rest / 10_000);
  const [first, second] = [Math.floor(rest / 100) % 100, rest % 100];
  const [month, day] = order === 'day first' ? [second, first] : [first, second];
  return isCivilDate(year, month, day) ? dayNumber(year, month, day) : NaN;
}

/** What the unordered dates of a whole file say about their order. */
export class DateOrderEvidence {
  /** Line of the first date that can only be day first, or only month first; 0 for none. */
  dayFirstLine = 0;
  monthFirstLine = 0;
  private previous = [NaN, NaN];
  private steps = [0, 0];
  private any = false;

  /** Takes one date code in the order of the file. */
  add(code: number, line: number): void {
    if (!isUnordered(code)) return;
    this.any = true;
    const [first, second] = [Math.floor((code - UNORDERED) / 100) % 100, (code - UNORDERED) % 100];
    if (first > 12 && second <= 12 && this.dayFirstLine === 0) this.dayFirstLine = line;
    if (second > 12 && first <= 12 && this.monthFirstLine === 0) this.monthFirstLine = line;
    (['day first', 'month first'] as const).forEach((order, index) => {
      const day = ordered(code, order);
      if (Math.abs(day - this.previous[index]!) === 1) this.steps[index]! += 1;
      this.previous[index] = day;
    });
  }

  /** The order, `null` where no date needs one, `'both'` where dates contradict each other, `'unclear'` else. */
  decide(): 'day first' | 'month first' | 'both' | 'unclear' | null {
    if (!this.any) return null;
    if (this.dayFirstLine > 0 && this.monthFirstLine > 0) return 'both';
    if (this.dayFirstLine > 0) return 'day first';
    if (this.monthFirstLine > 0) return 'month first';
    const [dayFirst, monthFirst] = this.steps as [number, number];
    if (dayFirst >= 2 && dayFirst > 2 * monthFirst) return 'day first';
    if (monthFirst >= 2 && monthFirst > 2 * dayFirst) return 'month first';
    return 'unclear';
  }
}

/** A time of day found after a date. */
export interface TimeOfDay {
  /** Hours since midnight, NaN where there is no readable time. */
  hour: number;
  /** Hours ahead of UTC, NaN where the text doesn't say. */
  offsetH: number;
}

const TIME = /^[T ]\s*(\d{1,2})(?::?(\d{2}))?(?::?(\d{2})(?:\.\d+)?)?\s*(Z|UTC|[+-]\d{2}:?\d{2})?$/;

/** Reads a time such as `T06:53:00`, ` 06:53`, `T01:00:00-0500` into `found`. */
export function readTime(text: string, from: number, to: number, found: TimeOfDay): void {
  found.hour = NaN;
  found.offsetH = NaN;
  // The common shape `?HH:MM` or `?HH:MM:SS` without an offset, in place.
  const length = to - from;
  if ((length === 6 || length === 9) && text.charCodeAt(from + 3) === 58) {
    const [hour, minute] = [digitsAt(text, from + 1, from + 3), digitsAt(text, from + 4, from + 6)];
    const second = length === 9 ? digitsAt(text, from + 7, from + 9) : 0;
    if (hour >= 0 && hour <= 24 && minute >= 0 && minute < 60 && second >= 0 && second < 60) {
      found.hour = hour + minute / 60 + second / 3600;
    }
    return;
  }
  const match = TIME.exec(text.slice(from, to));
  if (!match) return;
  const [hour, minute, second] = [Number(match[1]), Number(match[2] ?? 0), Number(match[3] ?? 0)];
  if (hour > 24 || minute > 59 || second > 59) return;
  found.hour = hour + minute / 60 + second / 3600;
  const zone = match[4];
  if (zone === 'Z' || zone === 'UTC') found.offsetH = 0;
  else if (zone) {
    const hours = Number(zone.slice(1, 3)) + Number(zone.slice(-2)) / 60;
    found.offsetH = zone.startsWith('-') ? -hours : hours;
  }
}
