import { sayFigure } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { HOUR_UNKNOWN, type DayTable } from './day-table.ts';
import { shown, type Findings } from './findings.ts';
import { civilDate, dayNumber } from '../units/calendar.ts';

/** Hours of reading, local time, at which the maximum belongs to the day before. */
const MORNING_FROM = 4;
const MORNING_TO = 11;
/** Hours at which a thermometer reset in the cold afternoon can show that cold again the next day. */
const AFTERNOON_FROM = 12;
const AFTERNOON_TO = 20;
/** A second equal minimum is a repeat of the first if the next night is this much warmer and the days warm up, °C. */
const REPEAT_NIGHT_WARMER_C = 5;
const REPEAT_DAY_WARMER_C = 3;
const REPEAT_DOUBT_NIGHT_C = 3.5;
const REPEAT_DOUBT_DAY_C = 1.5;
/** Fewest pairs of days from which the habit of a year is told. */
const FEWEST_PAIRS = 200;
/**
 * Habit below which the maxima look a day late: of a year alone, and of the five years around it. Measured: stations read
 * in the morning -0.3 to 0.1, once mended 0.4 to 0.9; midnight days 0.15 to 0.45, single years down to -0.15.
 */
const LATE_YEAR = -0.25;
const LATE_FIVE_YEARS = 0;
const TWO_YEARS_DAYS = 730;

/**
 * Mends what the hour of reading does to the days. Read in the morning, the maximum belongs to the day before and is
 * moved there; read in the morning or afternoon, a cold minimum can be booked again on the next, warmer day: the second
 * of two equal minima is dropped where the next night and day are much warmer, doubtful where they are a little warmer.
 * Where the hour is unknown, years that look like morning readings are named in a note and left as they are.
 */
export function mendReadingHours(table: DayTable, findings: Findings): void {
  const hours = filledHours(table.readingHour);
  moveMorningMaxima(table, hours, findings);
  dropRepeatedMinima(table, hours, findings);
  noteLikelyMornings(table, hours, findings);
}

function isMorning(hour: number): boolean {
  return hour >= MORNING_FROM && hour <= MORNING_TO;
}

/** Days without an hour take that of the last day that has one, if it is at most two months off. */
function filledHours(readingHour: Uint8Array): Uint8Array {
  const hours = readingHour.slice();
  let [last, age] = [HOUR_UNKNOWN, 0];
  for (let at = 0; at < hours.length; at += 1) {
    age += 1;
    if (hours[at] !== HOUR_UNKNOWN) [last, age] = [hours[at]!, 0];
    else if (age <= 60) hours[at] = last;
  }
  return hours;
}

function moveMorningMaxima(table: DayTable, hours: Uint8Array, findings: Findings): void {
  const { tmaxC, length } = table;
  const booked = tmaxC.slice();
  let moved = 0;
  for (let at = 0; at < length; at += 1) if (isMorning(hours[at]!)) tmaxC[at] = NaN;
  for (let at = 0; at < length; at += 1) {
    if (!isMorning(hours[at]!) || Number.isNaN(booked[at]!)) continue;
    if (at > 0 && Number.isNaN(tmaxC[at - 1]!)) {
      tmaxC[at - 1] = booked[at]!;
      moved += 1;
    } else if (at > 0) {
      const day = table.firstDay + at;
      const detail = t`tmax ${shown(booked[at]!, day)} was read in the morning, but the day before has its own maximum.`;
      findings.drop(day, 'tmax', booked[at]!, 'maximum of the day before', detail);
    }
  }
  if (moved > 0) findings.note(t`${moved} maxima read in the morning were moved to the day before.`);
}

function dropRepeatedMinima(table: DayTable, hours: Uint8Array, findings: Findings): void {
  const { tminC, tmaxC, firstDay, length } = table;
  const repeats: number[] = [];
  for (let at = 1; at < length - 1; at += 1) {
    const hour = hours[at]!;
    const isAfternoon = hour >= AFTERNOON_FROM && hour <= AFTERNOON_TO;
    if (!isMorning(hour) && !isAfternoon) continue;
    const value = tminC[at]!;
    if (!(Math.abs(value - tminC[at - 1]!) < 0.06)) continue;
    const nightWarmer = tminC[at + 1]! - value;
    const dayWarmer = tmaxC[at]! - tmaxC[at - 1]!;
    if (!(nightWarmer >= REPEAT_DOUBT_NIGHT_C && dayWarmer >= REPEAT_DOUBT_DAY_C)) continue;
    const day = firstDay + at;
    const detail = t`tmin ${shown(value, day)} equals the day before, the next night is ${sayFigure(nightWarmer, 1)} °C and the day ${sayFigure(dayWarmer, 1)} °C warmer; read at ${hour} h.`;
    if (nightWarmer >= REPEAT_NIGHT_WARMER_C && dayWarmer >= REPEAT_DAY_WARMER_C) {
      findings.drop(day, 'tmin', value, 'minimum booked twice', detail);
      repeats.push(at);
    } else findings.doubt(day, 'tmin', value, 'minimum booked twice', detail);
  }
  for (const at of repeats) tminC[at] = NaN;
}

/**
 * Correlation of day-to-day changes of the maximum with those of the minimum one day later, less that with the minimum
 * one day earlier: above zero where a maximum follows the minimum of its date, below where it comes before it.
 */
function habitOfReading(table: DayTable, from: number, to: number): number {
  const { tminC, tmaxC } = table;
  const [later, earlier] = [new PairSums(), new PairSums()];
  for (let at = Math.max(from, 2); at < Math.min(to, table.length - 1); at += 1) {
    const change = tmaxC[at]! - tmaxC[at - 1]!;
    later.add(change, tminC[at + 1]! - tminC[at]!);
    earlier.add(change, tminC[at - 1]! - tminC[at - 2]!);
  }
  if (later.count < FEWEST_PAIRS || earlier.count < FEWEST_PAIRS) return NaN;
  return later.correlation() - earlier.correlation();
}

class PairSums {
  count = 0;
  private x = 0;
  private y = 0;
  private xx = 0;
  private yy = 0;
  private xy = 0;

  add(x: number, y: number): void {
    if (Number.isNaN(x + y)) return;
    this.count += 1;
    this.x += x;
    this.y += y;
    this.xx += x * x;
    this.yy += y * y;
    this.xy += x * y;
  }

  correlation(): number {
    const { count: n, x, y } = this;
    return (n * this.xy - x * y) / Math.sqrt((n * this.xx - x * x) * (n * this.yy - y * y));
  }
}

function noteLikelyMornings(table: DayTable, hours: Uint8Array, findings: Findings): void {
  const years: number[] = [];
  for (let from = 0; from < table.length;) {
    const { year } = civilDate(table.firstDay + from);
    const to = Math.min(table.length, dayNumber(year + 1, 1, 1) - table.firstDay);
    const unknown = hours.subarray(from, to).every((hour) => hour === HOUR_UNKNOWN);
    const isLate =
      unknown &&
      (habitOfReading(table, from, to) < LATE_YEAR ||
        habitOfReading(table, from - TWO_YEARS_DAYS, to + TWO_YEARS_DAYS) < LATE_FIVE_YEARS);
    if (isLate) years.push(year);
    from = to;
  }
  if (years.length === 0) return;
  findings.note(
    t`In ${spans(years)} the maxima look as if read in the morning and booked a day late; the hour isn't known, so they were left.`,
  );
}

/** `1985-1990, 1994`. */
function spans(years: readonly number[]): string {
  const parts: string[] = [];
  for (let from = 0; from < years.length;) {
    let to = from;
    while (years[to + 1] === years[to]! + 1) to += 1;
    parts.push(to > from ? `${years[from]}-${years[to]}` : String(years[from]));
    from = to + 1;
  }
  return parts.join(', ');
}
