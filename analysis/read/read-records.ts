import { sayCount } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { RawDailyReadings, RawHourlyReadings } from '../records/series.ts';
import { BadRows, type BadRowReason } from './bad-rows.ts';
import type { ColumnMap } from './column-map.ts';
import type { DateOrder } from './dates.ts';
import { eachLine, lineBlocks } from './line-blocks.ts';
import { openText } from './open-text.ts';
import { refuseDisorder, settleDates } from './order-of-days.ts';
import { DlyReader } from './read-dly.ts';
import { IsdLiteReader } from './read-isd-lite.ts';
import { LongReader } from './read-long.ts';
import { TableReader } from './read-table.ts';
import { ValueListReader } from './read-value-list.ts';
import { WthReader } from './read-wth.ts';
import { recognise, type FormatId, type Recognised } from './recognise.ts';
import type { RecordReader } from './record-reader.ts';
import {
  decideUnit,
  toCelsius,
  toMetresPerSecond,
  windUnitBeside,
  type TemperatureUnit,
} from './units-of-source.ts';

/** What the caller knows about a file beyond its bytes. */
export interface ReadOptions {
  /** Name shown in messages; without a folder. A station without an id is named after it, up to its first dot. */
  readonly fileName: string;
  /** Unit of temperatures where the file doesn't state it. */
  readonly unit?: TemperatureUnit | null;
  /** Order of day and month where neither the file nor a map tells it. */
  readonly dateOrder?: Exclude<DateOrder, 'auto'> | null;
  /** Refuse a file that holds more bytes of text than this, unpacked. */
  readonly mostBytes?: number;
  /** The column map the reader of the file was told to use. */
  readonly columns?: ColumnMap | null;
  /** Maps that may be applied when their signature fits. */
  readonly maps?: readonly ColumnMap[];
}

/** Everything one file holds. */
export interface FileReadings {
  readonly fileName: string;
  readonly format: FormatId;
  /** The format in words. */
  readonly title: string;
  readonly unit: TemperatureUnit;
  /** One entry a station, in the order the stations appear; empty for an hourly file. */
  readonly daily: readonly RawDailyReadings[];
  /** One entry a station; empty for a daily file. */
  readonly hourly: readonly RawHourlyReadings[];
  /** Rows read. */
  readonly rows: number;
  /** Rows, or values in them, that could not be read, by reason. */
  readonly badRows: readonly BadRowReason[];
  /** Decisions the file's owner should know of: a map applied by its signature, values taken for missing, a unit proven. */
  readonly notes: readonly string[];
}

/** Text looked at to recognise the format. */
const HEAD_CHARACTERS = 16_384;

/**
 * Reads one station file, gzipped or not, to raw readings of each of its stations. The whole file is held as typed
 * arrays, nothing else is kept.
 *
 * @throws {InputError} when the file can't be used: empty, damaged, unknown columns, unit not stated, dates that run
 * backwards, more than half of the rows unreadable, no reading at all, more bytes than allowed.
 * @throws {UnclearError} when its owner must tell the unit, or the order of day and month.
 */
export async function readRecords(
  stream: ReadableStream<Uint8Array>,
  options: ReadOptions,
): Promise<FileReadings> {
  const { fileName } = options;
  const bad = new BadRows();
  let recognised: Recognised | null = null;
  let reader: RecordReader | null = null;
  for await (const block of lineBlocks(gatherHead(openText(stream, fileName, options.mostBytes)))) {
    if (reader === null) {
      const head = wholeLines(block.text.slice(0, HEAD_CHARACTERS), block.text.length > HEAD_CHARACTERS);
      recognised = recognise(head, fileName, options.columns ?? null, options.maps ?? []);
      reader = readerFor(recognised, bad, fileName);
    }
    eachLine(block, reader.line);
  }
  if (reader === null || recognised === null) throw new InputError(t`${fileName} is empty.`);
  reader.end?.();
  return finish(reader, recognised, bad, options);
}

/** The id of a file's station where the content has none: the name up to its first dot. */
export function fileStationId(fileName: string): string {
  const base = fileName.slice(fileName.lastIndexOf('/') + 1);
  const dot = base.indexOf('.');
  return dot > 0 ? base.slice(0, dot) : base;
}

function readerFor(recognised: Recognised, bad: BadRows, fileName: string): RecordReader {
  const fileId = fileStationId(fileName);
  switch (recognised.format) {
    case 'ghcn-dly':
      return new DlyReader(bad);
    case 'ghcn-long':
      return new LongReader(bad);
    case 'isd-lite':
      return new IsdLiteReader(bad, fileId);
    case 'wth':
      return new WthReader(bad, fileName, fileId);
    case 'value-list':
      return new ValueListReader(bad, fileName);
    case 'table':
      return new TableReader(recognised.map!, bad, fileName, fileId);
  }
}

function finish(
  reader: RecordReader,
  recognised: Recognised,
  bad: BadRows,
  options: ReadOptions,
): FileReadings {
  const { fileName } = options;
  const notes: string[] = [];
  if (recognised.mapChosen) {
    notes.push(t`${fileName} was read with the column map ${recognised.map!.id}, whose signature it fits.`);
  }
  const { missingRows } = reader;
  if (missingRows) {
    const { count, line, mark } = missingRows;
    notes.push(
      t`${fileName}: rows with nothing but a mark of a missing reading were left out, ${sayCount(count)} in all, the first on line ${line} (“${mark}”).`,
    );
  }
  const stations = [...reader.stations.byId.values()];
  settleDates(stations, fileName, bad, options.dateOrder ?? null);
  const rows = stations.reduce((sum, station) => sum + station.length, 0);
  bad.refuseIfMost(fileName, rows);
  if (rows === 0) throw new InputError(t`${fileName} holds no temperature readings.`);
  for (const station of stations) {
    station.trim();
    const blocks = refuseDisorder(station, reader.hourly, fileName);
    if (blocks > 0) {
      notes.push(
        t`${fileName}: ${blocks} blocks of rows of station ${station.id} stand out of order; they were sorted.`,
      );
    }
  }
  const columns = stations.flatMap((station) => [station.first, station.second]);
  const isHourlyOrder = recognised.map?.id === 'hourly-order';
  const { unit, note } = decideUnit(fileName, columns, reader.unit, options.unit ?? null, isHourlyOrder);
  if (note) notes.push(note);
  for (const values of columns) toCelsius(values, unit);
  const windUnit = reader.windUnit ?? windUnitBeside(unit);
  for (const station of stations) toMetresPerSecond(station.wind, windUnit);
  const kept = stations.filter((station) => station.length > 0);
  return {
    fileName,
    format: recognised.format,
    title: recognised.title,
    unit,
    daily: reader.hourly ? [] : kept.map((station) => station.daily(fileName)),
    hourly: reader.hourly
      ? kept.map((station) => station.hourlyReadings(fileName, reader.localStandard))
      : [],
    rows,
    badRows: bad.list(),
    notes,
  };
}

/** Joins the first small chunks, so that the first block of lines shows enough to recognise the format. */
async function* gatherHead(chunks: AsyncIterable<string>): AsyncGenerator<string, void, undefined> {
  let head: string[] | null = [];
  let length = 0;
  for await (const chunk of chunks) {
    if (head === null) {
      yield chunk;
      continue;
    }
    head.push(chunk);
    length += chunk.length;
    if (length <= HEAD_CHARACTERS) continue;
    yield head.join('');
    head = null;
  }
  if (head !== null && length > 0) yield head.join('');
}

function wholeLines(head: string, more: boolean): string {
  const end = head.lastIndexOf('\n');
  return more && end > 0 ? head.slice(0, end) : head;
}
