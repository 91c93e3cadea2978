import { t } from '../language/t.ts';
import type { BadRows } from './bad-rows.ts';
import { DateFields } from './dates.ts';
import { digitsAt } from './fields.ts';
import { Stations, type RecordReader } from './record-reader.ts';
import type { StationRows } from './station-rows.ts';

const MISSING = -9999;
const FIRST_VALUE = 21;
const VALUE_WIDTH = 8;
type Element = 'first' | 'second' | 'wind';

/**
 * GHCN-Daily `.dly`: a line a month and element, 31 values of 5 characters with 3 flags each (readme section III).
 * Temperatures in tenths of °C, wind in tenths of m/s; the middle flag is the quality flag.
 */
export class DlyReader implements RecordReader {
  readonly hourly = false;
  readonly unit = 'tenthsC';
  readonly windUnit = 'tenths m/s';
  readonly localStandard = false;
  readonly stations = new Stations(false);
  private readonly dates = new DateFields();
  private readonly bad: BadRows;
  /** The month being read, by day: rows are made when it is whole, so that they come in order of days. */
  private readonly month = new MonthOfValues();

  constructor(bad: BadRows) {
    this.bad = bad;
  }

  readonly line = (text: string, from: number, to: number, line: number): void => {
    if (to - from < FIRST_VALUE) {
      if (to > from) this.bad.add(t`row cut short`, line, text.slice(from, to));
      return;
    }
    const element = elementAt(text, from + 17);
    if (element === null) return;
    const [year, month] = [digitsAt(text, from + 11, from + 15), digitsAt(text, from + 15, from + 17)];
    const start = this.dates.day(year, month, 1);
    if (Number.isNaN(start)) {
      this.bad.add(t`impossible date`, line, text.slice(from, from + FIRST_VALUE));
      return;
    }
    const days = daysIn(this.dates, year, month);
    if (to - from < FIRST_VALUE + (days - 1) * VALUE_WIDTH + 5) {
      this.bad.add(t`row cut short`, line, text.slice(from, from + FIRST_VALUE));
      return;
    }
    const rows = this.stations.at(text, from, from + 11);
    this.month.turnTo(rows, start, element);
    for (let day = 0; day < days; day += 1) {
      const at = from + FIRST_VALUE + day * VALUE_WIDTH;
      const value = wholeAt(text, at);
      if (value === MISSING) continue;
      if (Number.isNaN(value)) this.bad.add(t`not a number`, line, text.slice(at, at + 5));
      else this.month.put(element, day, value, flagAt(text, at + 6), line);
    }
  };

  end(): void {
    this.month.flush();
  }
}

/** The values of one station and month, all elements. */
class MonthOfValues {
  private rows: StationRows | null = null;
  private start = -1;
  private readonly seen = new Set<Element>();
  private readonly value = {
    first: new Float64Array(31),
    second: new Float64Array(31),
    wind: new Float64Array(31),
  };
  private readonly flag = { first: new Uint8Array(31), second: new Uint8Array(31), wind: new Uint8Array(31) };
  private readonly line = new Int32Array(31);

  constructor() {
    this.flush();
  }

  /** Begins the line of an element; a new month, or an element that was there already, closes the old month. */
  turnTo(rows: StationRows, start: number, element: Element): void {
    if (rows !== this.rows || start !== this.start || this.seen.has(element)) {
      this.flush();
      this.rows = rows;
      this.start = start;
    }
    this.seen.add(element);
  }

  put(element: Element, day: number, value: number, flag: number, line: number): void {
    this.value[element][day] = value;
    this.flag[element][day] = flag;
    this.line[day] = line;
  }

  flush(): void {
    const { rows, value, flag } = this;
    for (let day = 0; rows !== null && day < 31; day += 1) {
      if (Number.isNaN(value.first[day]!) && Number.isNaN(value.second[day]!)) continue;
      const row = rows.add(this.start + day, this.line[day]!);
      rows.first[row] = value.first[day]!;
      rows.second[row] = value.second[day]!;
      rows.firstFlag[row] = flag.first[day]!;
      rows.secondFlag[row] = flag.second[day]!;
      if (flag.wind[day] === 0) rows.wind[row] = value.wind[day]!;
    }
    this.seen.clear();
    for (const element of ['first', 'second', 'wind'] as const) {
      value[element].fill(NaN);
      flag[element].fill(0);
    }
  }
}

function daysIn(dates: DateFields, year: number, month: number): number {
  for (let day = 31; day > 28; day -= 1) if (!Number.isNaN(dates.day(year, month, day))) return day;
  return 28;
}

function elementAt(text: string, at: number): Element | null {
  if (text.startsWith('TMIN', at)) return 'first';
  if (text.startsWith('TMAX', at)) return 'second';
  if (text.startsWith('AWND', at)) return 'wind';
  return null;
}

function flagAt(text: string, at: number): number {
  const code = text.charCodeAt(at);
  return code > 32 && code < 128 ? code : 0;
}

/** Five characters, right-aligned, as a whole number; NaN when they aren't one. */
function wholeAt(text: string, from: number): number {
  let at = from;
  const to = from + 5;
  while (at < to && text.charCodeAt(at) === 32) at += 1;
  const negative = text.charCodeAt(at) === 45;
  const value = digitsAt(text, negative ? at + 1 : at, to);
  return value < 0 ? NaN : negative ? -value : value;
}
