import { t } from '../language/t.ts';
import type { BadRows } from './bad-rows.ts';
import { DateFields } from './dates.ts';
import { digitsAt, Fields, numberAt } from './fields.ts';
import { headerNames } from './recognise.ts';
import { Stations, type RecordReader } from './record-reader.ts';
import { READING_HOUR_UNKNOWN, type StationRows } from './station-rows.ts';

const PLACES = { id: 0, date: 1, element: 2, value: 3, quality: 5, time: 7 };
const HEADER: Readonly<Record<keyof typeof PLACES, readonly string[]>> = {
  id: ['id', 'station', 'station_id'],
  date: ['date'],
  element: ['element'],
  value: ['data_value', 'value'],
  quality: ['q_flag', 'qflag', 'q'],
  time: ['obs_time', 'obstime', 'time'],
};

/**
 * The archive's long table, a row a station, day and element:
 * `ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME`, with or without the header. Tenths of °C, tenths of m/s.
 */
export class LongReader implements RecordReader {
  readonly hourly = false;
  readonly unit = 'tenthsC';
  readonly windUnit = 'tenths m/s';
  readonly localStandard = false;
  readonly stations = new Stations(false);
  private readonly dates = new DateFields();
  private readonly fields = new Fields(',');
  private readonly bad: BadRows;
  private place = PLACES;
  private started = false;

  constructor(bad: BadRows) {
    this.bad = bad;
  }

  readonly line = (text: string, from: number, to: number, line: number): void => {
    if (to === from) return;
    if (!this.started) {
      this.started = true;
      if (this.takeHeader(text.slice(from, to))) return;
    }
    const { fields, place } = this;
    fields.split(text, from, to, 8);
    if (fields.count <= Math.max(place.element, place.value)) {
      this.bad.add(t`row cut short`, line, text.slice(from, to));
      return;
    }
    const element = elementOf(text, fields.start[place.element]!, fields.end[place.element]!);
    if (element === null) return;
    const day = this.dates.read(text, fields.start[place.date]!, fields.end[place.date]!);
    if (!(day < 1e9)) {
      this.bad.add(t`impossible date`, line, fields.text(text, place.date));
      return;
    }
    const value = numberAt(text, fields.start[place.value]!, fields.end[place.value]!);
    if (Number.isNaN(value)) {
      this.bad.add(t`not a number`, line, fields.text(text, place.value));
      return;
    }
    if (value === -9999) return;
    const rows = this.stations.at(text, fields.start[place.id]!, fields.end[place.id]!);
    const row = rowFor(rows, element, day, line);
    rows[element][row] = value;
    const flag = this.flag(text);
    if (element === 'first') rows.firstFlag[row] = flag;
    else if (element === 'second') rows.secondFlag[row] = flag;
    else if (flag !== 0) rows.wind[row] = NaN;
    if (element !== 'wind') this.takeTime(text, rows, row);
  };

  private flag(text: string): number {
    const { fields, place } = this;
    if (fields.count <= place.quality) return 0;
    const [from, to] = [fields.start[place.quality]!, fields.end[place.quality]!];
    return to > from ? text.charCodeAt(from) & 127 : 0;
  }

  private takeTime(text: string, rows: StationRows, row: number): void {
    const { fields, place } = this;
    if (fields.count <= place.time) return;
    const hour = readingHourOf(text, fields.start[place.time]!, fields.end[place.time]!);
    if (hour !== READING_HOUR_UNKNOWN) rows.readingHour[row] = hour;
  }

  private takeHeader(line: string): boolean {
    const names = headerNames(line, ',').map((name) => name.toLowerCase());
    if (!names.includes('element')) return false;
    const place = { ...PLACES };
    for (const key of Object.keys(place) as (keyof typeof PLACES)[]) {
      const found = HEADER[key].map((name) => names.indexOf(name)).find((index) => index >= 0);
      place[key] = found ?? (key === 'quality' || key === 'time' ? 99 : place[key]);
    }
    this.place = place;
    return true;
  }
}

/** The row the value goes to: the last one if it is the same day and still lacks the element, else a new one. */
function rowFor(rows: StationRows, element: 'first' | 'second' | 'wind', day: number, line: number): number {
  const last = rows.length - 1;
  if (last >= 0 && rows.day[last] === day && Number.isNaN(rows[element][last]!)) return last;
  return rows.add(day, line);
}

function elementOf(text: string, from: number, to: number): 'first' | 'second' | 'wind' | null {
  if (to - from !== 4) return null;
  if (text.startsWith('TMIN', from)) return 'first';
  if (text.startsWith('TMAX', from)) return 'second';
  return text.startsWith('AWND', from) ? 'wind' : null;
}

/** `0730` to the hour 7, unknown when empty or not a time. */
export function readingHourOf(text: string, from: number, to: number): number {
  if (to - from < 3 || to - from > 4) return READING_HOUR_UNKNOWN;
  const value = digitsAt(text, from, to);
  const hour = Math.floor(value / 100);
  return value >= 0 && hour <= 24 && value % 100 < 60 ? hour : READING_HOUR_UNKNOWN;
}
