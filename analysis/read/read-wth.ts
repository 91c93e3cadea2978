import { t } from '../language/t.ts';
import type { BadRows } from './bad-rows.ts';
import { degreesOf, elevationOf } from './coordinates.ts';
import { DateFields } from './dates.ts';
import { digitsAt, Fields, numberAt } from './fields.ts';
import { Stations, type RecordReader } from './record-reader.ts';
import { InputError } from '../records/input-error.ts';

/** Two-digit years from here on belong to the 1900s. */
const PIVOT_YEAR = 30;
const MISSING = new Set([-99, -99.9, -999, -9999]);

/**
 * `.WTH` weather files of crop models: a title line, a station line under `@ INSI LAT LONG ELEV`, daily rows under
 * `@ DATE ... TMAX TMIN`, dates as year and day of the year (`2006001` or `06001`), °C, wind in km a day, `!` comments.
 */
export class WthReader implements RecordReader {
  readonly hourly = false;
  readonly unit = 'C';
  readonly windUnit = 'km/day';
  readonly localStandard = false;
  readonly stations = new Stations(false);
  private readonly dates = new DateFields();
  private readonly fields = new Fields(' ');
  private title = '';
  private stationId: string;
  private awaiting: 'nothing' | 'station' | 'days' = 'nothing';
  private header: string[] = [];
  private readonly bad: BadRows;
  private readonly fileName: string;

  constructor(bad: BadRows, fileName: string, fileId: string) {
    this.bad = bad;
    this.fileName = fileName;
    this.stationId = fileId;
  }

  readonly line = (text: string, from: number, to: number, line: number): void => {
    const mark = from < to ? text[from] : '!';
    if (mark === '!') return;
    if (mark === '*' || mark === '$') {
      this.title ||= text
        .slice(from, to)
        .replace(/^[*$]WEATHER(\s+DATA)?\s*:?\s*/i, '')
        .trim();
    } else if (mark === '@') this.takeHeader(text.slice(from + 1, to), line);
    else if (this.awaiting === 'station') this.takeStation(text.slice(from, to), line);
    else if (this.awaiting === 'days') this.takeDay(text, from, to, line);
    else if (text.slice(from, to).trim() !== '')
      this.bad.add(t`row before the header`, line, text.slice(from, to));
  };

  private takeHeader(text: string, line: number): void {
    this.header = text.trim().toUpperCase().split(/\s+/);
    this.awaiting = this.header[0] === 'INSI' ? 'station' : 'days';
    if (this.awaiting === 'days' && !(this.header[0] === 'DATE' && this.header.includes('TMIN'))) {
      throw new InputError(
        t`${this.fileName}, line ${line}: the columns of a .WTH file must hold DATE and TMIN.`,
      );
    }
  }

  private takeStation(text: string, line: number): void {
    const cells = text.trim().split(/\s+/);
    const at = (name: string): string => cells[this.header.indexOf(name)] ?? '';
    const where = t`${this.fileName}, line ${line}`;
    this.stationId = at('INSI') || this.stationId;
    const rows = this.stations.of(this.stationId);
    rows.facts.lat = degreesOf(known(at('LAT')), 'lat', where);
    rows.facts.lon = degreesOf(known(at('LONG')), 'lon', where);
    rows.facts.elevationM = elevationOf(known(at('ELEV')));
    rows.facts.name = this.title;
    this.awaiting = 'nothing';
  }

  private takeDay(text: string, from: number, to: number, line: number): void {
    const { fields, header } = this;
    fields.split(text, from, to, 64);
    if (fields.count === 0) return;
    const need = Math.max(header.indexOf('TMIN'), header.indexOf('TMAX'));
    if (fields.count <= need) return this.bad.add(t`row cut short`, line, text.slice(from, to));
    const day = this.dayOfYear(text, fields.start[0]!, fields.end[0]!);
    if (Number.isNaN(day)) return this.bad.add(t`impossible date`, line, fields.text(text, 0));
    const [tmin, tmax] = [this.value(text, 'TMIN', line), this.value(text, 'TMAX', line)];
    if (Number.isNaN(tmin) && Number.isNaN(tmax)) return;
    const rows = this.stations.of(this.stationId);
    const row = rows.add(day, line);
    rows.first[row] = tmin;
    rows.second[row] = tmax;
    const wind = this.value(text, 'WIND', line);
    rows.wind[row] = wind >= 0 ? wind : NaN;
  }

  private dayOfYear(text: string, from: number, to: number): number {
    const digits = digitsAt(text, from, to);
    const length = to - from;
    if (digits < 0 || (length !== 5 && length !== 7)) return NaN;
    const short = Math.floor(digits / 1000);
    const year = length === 7 ? short : short + (short >= PIVOT_YEAR ? 1900 : 2000);
    const day = digits % 1000;
    const last = Number.isNaN(this.dates.day(year, 2, 29)) ? 365 : 366;
    return day >= 1 && day <= last ? this.dates.day(year, 1, 1) + day - 1 : NaN;
  }

  private value(text: string, name: string, line: number): number {
    const index = this.header.indexOf(name);
    if (index < 0 || index >= this.fields.count) return NaN;
    const value = numberAt(text, this.fields.start[index]!, this.fields.end[index]!);
    if (Number.isNaN(value)) this.bad.add(t`not a number`, line, this.fields.text(text, index));
    return MISSING.has(value) ? NaN : value;
  }
}

function known(text: string): string {
  return Number(text) <= -99 && !(Number(text) >= -180 && text.includes('.')) ? '' : text;
}
