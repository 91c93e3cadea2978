import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { BadRows } from './bad-rows.ts';
import type { ColumnMap, ColumnRole } from './column-map.ts';
import { degreesOf, elevationOf } from './coordinates.ts';
import { DateFields, readTime } from './dates.ts';
import { numberAt } from './fields.ts';
import { readingHourOf } from './read-long.ts';
import { Stations, type MissingRows, type RecordReader } from './record-reader.ts';
import { READING_HOUR_UNKNOWN, type StationRows } from './station-rows.ts';
import { TableColumns } from './table-columns.ts';
import type { TemperatureUnit, WindUnit } from './units-of-source.ts';

/** Marks of a missing number that any table may hold. */
const MISSING_NUMBERS = [-9999, 9999, -999, 999, -99999, -999.9, -9999.9, -99.9];
const MISSING_WORDS = ['', 'na', 'nan', 'null', 'none', 'm', '*', '-', '.'];
/** Of these what nobody reads otherwise; the others are taken for marks without having been told. */
const PLAINLY_MISSING = ['', -9999];
/** Stands for "not a number at all", apart from NaN for "missing". */
const MALFORMED = Infinity;

/** Reads any table of readings that a column map describes. */
export class TableReader implements RecordReader {
  readonly hourly: boolean;
  readonly unit: TemperatureUnit | null;
  readonly windUnit: WindUnit | null;
  localStandard = false;
  readonly stations: Stations;
  private readonly columns: TableColumns;
  private readonly dates: DateFields;
  private readonly missing: Set<number>;
  private readonly missingWords: Set<string>;
  private readonly plainlyMissing: Set<string | number>;
  /** What the row at hand was found to have in the place of a reading, where nobody told that it is a mark. */
  private mark: string | null = null;
  private readonly unread = { count: 0, line: 0, mark: '' };
  private readonly decimalMark: number;
  private readonly time = { hour: NaN, offsetH: NaN };
  private readonly map: ColumnMap;
  private readonly bad: BadRows;
  private readonly fileName: string;
  private readonly fileId: string;
  private readonly skipWords: readonly string[];

  constructor(map: ColumnMap, bad: BadRows, fileName: string, fileId: string) {
    if (map.kind === 'stations') {
      throw new InputError(
        t`${fileName}: the column map ${map.id} is for lists of stations, not for readings.`,
      );
    }
    this.map = map;
    this.bad = bad;
    this.fileName = fileName;
    this.fileId = map.station?.id ?? fileId;
    this.hourly = map.kind === 'hourly';
    this.unit = map.unit ?? null;
    this.windUnit = map.windUnit ?? null;
    this.stations = new Stations(this.hourly);
    this.columns = new TableColumns(map, fileName);
    this.dates = new DateFields(map.dateOrder ?? 'auto');
    this.decimalMark = (map.decimal ?? '.').charCodeAt(0);
    this.missing = new Set(MISSING_NUMBERS);
    this.missingWords = new Set(MISSING_WORDS);
    this.plainlyMissing = new Set(PLAINLY_MISSING);
    for (const mark of map.missing ?? []) {
      this.plainlyMissing.add(typeof mark === 'number' ? mark : mark.toLowerCase());
      if (typeof mark === 'number') this.missing.add(mark);
      else this.missingWords.add(mark.toLowerCase());
    }
    this.skipWords = map.skipRows?.words ?? [];
  }

  readonly line = (text: string, from: number, to: number, line: number, unfinished: boolean): void => {
    const { columns } = this;
    if (!columns.take(text, from, to, line)) return;
    if (!columns.split(text, from, to, unfinished)) {
      this.bad.add(t`row cut short`, line, text.slice(from, to));
      return;
    }
    if (this.skipWords.length > 0 && columns.find(this.map.skipRows!.column)) {
      const word = text.slice(columns.from, columns.to);
      if (this.skipWords.includes(word)) return;
    }
    const day = this.day(text);
    if (Number.isNaN(day)) {
      this.bad.add(t`impossible date`, line, text.slice(columns.from, columns.to));
      return;
    }
    if (this.hourly) this.takeHour(text, day, line);
    else this.takeDay(text, day, line);
  };

  get missingRows(): MissingRows | null {
    return this.unread.count > 0 ? this.unread : null;
  }

  /** Counts a row that holds nothing but marks; one that can't be read is a bad row already. */
  private leaveOut(line: number, badBefore: number): void {
    const { unread, mark } = this;
    if (mark === null || this.bad.count > badBefore) return;
    unread.count += 1;
    if (unread.count > 1) return;
    unread.line = line;
    unread.mark = mark;
  }

  private takeDay(text: string, day: number, line: number): void {
    const badBefore = this.bad.count;
    this.mark = null;
    const tmin = this.value(text, 'tmin', line);
    const tmax = this.value(text, 'tmax', line);
    if (Number.isNaN(tmin) && Number.isNaN(tmax)) return this.leaveOut(line, badBefore);
    const rows = this.rowsOf(text, line);
    const row = rows.add(day, line);
    rows.first[row] = tmin;
    rows.second[row] = tmax;
    rows.wind[row] = this.wind(text);
    if (!this.columns.hasFlags) return;
    rows.firstFlag[row] = this.flag(text, 'tminFlag', 'tminAttributes');
    rows.secondFlag[row] = this.flag(text, 'tmaxFlag', 'tmaxAttributes');
    rows.readingHour[row] = this.readingHour(text);
  }

  private takeHour(text: string, day: number, line: number): void {
    const { columns } = this;
    let shown: number;
    if (columns.locate(text, 'hour')) shown = numberAt(text, columns.from, columns.to);
    else if (columns.locate(text, 'time')) {
      readTime(` ${text.slice(columns.from, columns.to)}`, 0, columns.to - columns.from + 1, this.time);
      shown = this.time.hour;
    } else shown = this.time.hour;
    if (!(shown >= 0 && shown <= 24)) {
      columns.locate(text, columns.has('hour') ? 'hour' : columns.has('time') ? 'time' : 'date');
      this.bad.add(t`impossible time`, line, text.slice(columns.from, columns.to));
      return;
    }
    let suspect = 0;
    if (columns.locate(text, 'temp') && columns.to > columns.from) {
      const last = text.charCodeAt(columns.to - 1) | 32;
      // Hourly order files mark suspect values by a letter s behind the number.
      if (last === 115) {
        suspect = 115;
        columns.to -= 1;
      }
    }
    const badBefore = this.bad.count;
    this.mark = null;
    const temperature = this.located(text, line);
    if (Number.isNaN(temperature)) return this.leaveOut(line, badBefore);
    const rows = this.rowsOf(text, line);
    const row = rows.add(day, line);
    rows.hour[row] = shown - this.offset();
    rows.first[row] = temperature;
    rows.wind[row] = this.wind(text);
    rows.firstFlag[row] = suspect || (columns.hasFlags ? this.flag(text, 'tempFlag', null) : 0);
  }

  /** Hours to take off the time shown to get UTC, or local standard time where that is all the map knows. */
  private offset(): number {
    const own = this.time.offsetH;
    if (!Number.isNaN(own) && !this.columns.has('hour')) return own;
    const { clock } = this.map;
    if (clock === undefined) {
      throw new InputError(
        t`${this.fileName}: times without an offset need a "clock" in the column map (utc, local standard, or hours).`,
      );
    }
    if (clock === 'local standard') this.localStandard = true;
    return typeof clock === 'number' ? clock : 0;
  }

  private day(text: string): number {
    const { columns } = this;
    if (columns.locate(text, 'date')) {
      const day = this.dates.read(text, columns.from, columns.to);
      this.time.hour = NaN;
      this.time.offsetH = NaN;
      if (this.hourly && this.dates.next < columns.to) readTime(text, this.dates.next, columns.to, this.time);
      return day;
    }
    const part = (role: ColumnRole): number =>
      columns.locate(text, role) ? numberAt(text, columns.from, columns.to) : NaN;
    const [year, month] = [part('year') + (this.map.yearBase ?? 0), part('month')];
    return this.dates.day(year, month, part('day'));
  }

  private rowsOf(text: string, line: number): StationRows {
    const { columns } = this;
    let rows: StationRows;
    if (columns.locate(text, 'station') && columns.to > columns.from) {
      const from = text.startsWith('GHCND:', columns.from) ? columns.from + 6 : columns.from;
      rows = this.stations.at(text, from, columns.to);
    } else rows = this.stations.of(this.fileId);
    if (rows.length === 0) this.takeFacts(text, rows, line);
    return rows;
  }

  private takeFacts(text: string, rows: StationRows, line: number): void {
    const { facts } = rows;
    const fixed = this.map.station;
    const where = t`${this.fileName}, line ${line}`;
    const field = (role: ColumnRole): string => this.columns.text(text, role);
    facts.name = field('name') || (fixed?.name ?? '');
    facts.lat = degreesOf(field('lat'), 'lat', where) ?? fixed?.lat ?? null;
    facts.lon = degreesOf(field('lon'), 'lon', where) ?? fixed?.lon ?? null;
    facts.elevationM = elevationOf(field('elevation')) ?? fixed?.elevation_m ?? null;
  }

  private value(text: string, role: ColumnRole, line: number): number {
    return this.columns.locate(text, role) ? this.located(text, line) : NaN;
  }

  /** The number in the field just located; NaN where missing or, counted, malformed. */
  private located(text: string, line: number): number {
    const { from, to } = this.columns;
    const value = this.number(text, from, to);
    if (value !== MALFORMED) return value;
    this.bad.add(t`not a number`, line, text.slice(from, to));
    return NaN;
  }

  private wind(text: string): number {
    if (!this.columns.locate(text, 'wind')) return NaN;
    const value = this.number(text, this.columns.from, this.columns.to);
    return value >= 0 && value !== MALFORMED ? value : NaN;
  }

  private number(text: string, from: number, to: number): number {
    if (to <= from) return NaN;
    const value = numberAt(text, from, to, this.decimalMark);
    if (Number.isNaN(value)) {
      const word = text.slice(from, to).toLowerCase();
      if (!this.missingWords.has(word)) return MALFORMED;
      if (!this.plainlyMissing.has(word)) this.mark = text.slice(from, to);
      return NaN;
    }
    if (!this.missing.has(value)) return value;
    if (!this.plainlyMissing.has(value)) this.mark = text.slice(from, to);
    return NaN;
  }

  private flag(text: string, flagRole: ColumnRole, attributesRole: ColumnRole | null): number {
    const { columns } = this;
    if (columns.locate(text, flagRole))
      return columns.to > columns.from ? text.charCodeAt(columns.from) & 127 : 0;
    if (attributesRole === null || !columns.locate(text, attributesRole)) return 0;
    const comma = text.indexOf(',', columns.from);
    if (comma < 0 || comma + 1 >= columns.to) return 0;
    const code = text.charCodeAt(comma + 1);
    return code === 44 || code === 32 ? 0 : code & 127;
  }

  /** The hour the thermometers were read: from the attributes of the temperatures, else of the observation. */
  private readingHour(text: string): number {
    const { columns } = this;
    if (columns.locate(text, 'readingTime')) return readingHourOf(text, columns.from, columns.to);
    for (const role of TIMED) {
      if (!columns.locate(text, role)) continue;
      let at = columns.from;
      for (let commas = 0; commas < 3 && at > 0; commas += 1) at = text.indexOf(',', at) + 1;
      if (at <= 0 || at >= columns.to) continue;
      const hour = readingHourOf(text, at, columns.to);
      if (hour !== READING_HOUR_UNKNOWN) return hour;
    }
    return READING_HOUR_UNKNOWN;
  }
}

const TIMED = ['tminAttributes', 'tmaxAttributes', 'tobsAttributes', 'prcpAttributes'] as const;
