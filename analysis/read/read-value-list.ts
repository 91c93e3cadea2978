import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { BadRows } from './bad-rows.ts';
import { degreesOf, elevationOf } from './coordinates.ts';
import { DateFields } from './dates.ts';
import { numberAt } from './fields.ts';
import { Stations, type RecordReader } from './record-reader.ts';
import type { StationRows } from './station-rows.ts';

const MISSING = new Set([-99, -99.9, -999, -9999]);

/**
 * Lists of daily values: `id lat lon elevation`, then `YYYYMMDDHH YYYYMMDDHH 0` (first and last day, 0 for a calendar
 * with leap days), then the name, then one value in °C a line. Whether they are minima or maxima stands in the file
 * name (`tmin`, `tasmin`, `tmax`, `tasmax`).
 */
export class ValueListReader implements RecordReader {
  readonly hourly = false;
  readonly unit = 'C';
  readonly windUnit = null;
  readonly localStandard = false;
  readonly stations = new Stations(false);
  private readonly dates = new DateFields();
  private readonly element: 'first' | 'second';
  private readonly bad: BadRows;
  private readonly fileName: string;
  private rows: StationRows | null = null;
  private headLines = 0;
  private day = 0;
  private lastDay = 0;
  private lastLine = 0;

  constructor(bad: BadRows, fileName: string) {
    this.bad = bad;
    this.fileName = fileName;
    const isMinimum = /t(as)?min/i.test(fileName);
    if (isMinimum === /t(as)?max/i.test(fileName)) {
      throw new InputError(t`${fileName} must say in its name whether its values are tmin or tmax.`);
    }
    this.element = isMinimum ? 'first' : 'second';
  }

  readonly line = (text: string, from: number, to: number, line: number): void => {
    if (text.slice(from, to).trim() === '') return;
    if (this.headLines < 3) {
      this.headLines += 1;
      this.takeHead(text.slice(from, to).trim(), this.headLines, line);
      return;
    }
    const day = this.day;
    this.day += 1;
    this.lastLine = line;
    const value = numberAt(text, from, to);
    if (Number.isNaN(value)) return this.bad.add(t`not a number`, line, text.slice(from, to));
    if (MISSING.has(value)) return;
    const row = this.rows!.add(day, line);
    this.rows![this.element][row] = value;
  };

  end(): void {
    const days = this.day - this.lastDay - 1;
    if (days === 0) return;
    const at = t`${this.fileName}, line ${this.lastLine}`;
    throw new InputError(
      days > 0
        ? t`${at}: there are ${days} more values than days in the span of line 2.`
        : t`${at}: there are ${-days} fewer values than days in the span of line 2.`,
    );
  }

  private takeHead(text: string, number: number, line: number): void {
    const where = t`${this.fileName}, line ${line}`;
    const cells = text.split(/\s+/);
    if (number === 1) {
      this.rows = this.stations.of(cells[0]!);
      this.rows.facts.lat = degreesOf(cells[1] ?? '', 'lat', where);
      this.rows.facts.lon = degreesOf(cells[2] ?? '', 'lon', where);
      this.rows.facts.elevationM = elevationOf(cells[3] ?? '');
    } else if (number === 2) {
      this.day = this.dates.read(cells[0]!, 0, 8);
      this.lastDay = this.dates.read(cells[1] ?? '', 0, 8);
      if (Number.isNaN(this.day) || Number.isNaN(this.lastDay)) {
        throw new InputError(t`${where}: the first or last day doesn't exist.`);
      }
      if (cells[2] !== '0') throw new InputError(t`${where}: only calendars with leap days (0) can be read.`);
    } else this.rows!.facts.name = text.replace(/_/g, ' ').trim();
  }
}
