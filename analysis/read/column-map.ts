import { sayCount } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { DateOrder } from './dates.ts';
import { TEMPERATURE_UNITS, WIND_UNITS, type TemperatureUnit, type WindUnit } from './units-of-source.ts';

/** Where a value stands: a header name (any case), a position from 1, or the first and last character from 1. */
export type Column = string | number | readonly [number, number];

/** What a column can mean. */
export const COLUMN_ROLES = [
  'station', 'name', 'lat', 'lon', 'elevation',
  'date', 'year', 'month', 'day', 'hour', 'time',
  'tmin', 'tmax', 'temp', 'wind',
  'tminFlag', 'tmaxFlag', 'tempFlag',
  'tminAttributes', 'tmaxAttributes', 'tobsAttributes', 'prcpAttributes', 'readingTime',
] as const; // prettier-ignore
export type ColumnRole = (typeof COLUMN_ROLES)[number];

/**
 * How a table of readings or of stations is written. Column maps are JSON files of this shape; see
 * `analysis/read/columns/README.md`.
 */
export interface ColumnMap {
  readonly id: string;
  readonly title: string;
  readonly kind: 'daily' | 'hourly' | 'stations';
  /** Exact header line, or a pattern that each of the first lines fits: the map is then applied without asking. */
  readonly signature?: { readonly header?: string; readonly lines?: string };
  readonly layout?: 'separated' | 'blanks' | 'fixed';
  readonly separator?: string;
  /** Whether the first line (after skipped ones) names the columns. */
  readonly header?: boolean;
  readonly skipLines?: number;
  /** Lines starting with this are left out. */
  readonly comment?: string;
  readonly decimal?: '.' | ',';
  /** Marks of missing values beside the usual ones (empty, NA, -9999...). */
  readonly missing?: readonly (string | number)[];
  readonly unit?: TemperatureUnit;
  readonly windUnit?: WindUnit;
  readonly dateOrder?: DateOrder;
  /** Added to the year column, 1900 for years since 1900. */
  readonly yearBase?: number;
  /** Hourly tables: the clock of the times, or hours ahead of UTC. A time with its own offset needs none. */
  readonly clock?: 'utc' | 'local standard' | number;
  readonly coordinates?: 'decimal' | 'DMS';
  readonly columns: Readonly<Partial<Record<ColumnRole, Column>>>;
  /** Rows whose column holds one of these words are left out. */
  readonly skipRows?: { readonly column: Column; readonly words: readonly string[] };
  /** The station, where the file has only one and doesn't name it. */
  readonly station?: {
    readonly id?: string;
    readonly name?: string;
    readonly lat?: number;
    readonly lon?: number;
    readonly elevation_m?: number;
  };
}

const KEYS = new Set([
  'id', 'title', 'kind', 'signature', 'layout', 'separator', 'header', 'skipLines', 'comment', 'decimal', 'missing',
  'unit', 'windUnit', 'dateOrder', 'yearBase', 'clock', 'coordinates', 'columns', 'skipRows', 'station',
]); // prettier-ignore

/** Most lines before a table, and most that is added to its years. */
const SKIPPED_MOST = 10_000;
const YEAR_BASE_MOST = 2500;
const PATTERN_LONGEST = 300;
/** Longest column map, characters. */
export const COLUMN_MAP_LONGEST = 100_000;

/**
 * Checks a column map read from JSON.
 * @throws {InputError} naming the file and the first thing that is wrong.
 */
export function parseColumnMap(json: string, fileName: string): ColumnMap {
  if (json.length > COLUMN_MAP_LONGEST)
    throw new InputError(
      t`${fileName} has ${sayCount(json.length)} characters; a column map has at most ${sayCount(COLUMN_MAP_LONGEST)}.`,
    );
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch {
    throw new InputError(t`${fileName} is not JSON.`);
  }
  const fail = (what: string): never => {
    throw new InputError(t`${fileName}: ${what}.`);
  };
  if (!isObject(value)) fail(t`a column map is a JSON object`);
  const map = value as Record<string, unknown>;
  for (const key of Object.keys(map)) if (!KEYS.has(key)) fail(t`"${key}" is not a key of a column map`);
  oneOf(map, 'kind', ['daily', 'hourly', 'stations'], fail, true);
  oneOf(map, 'layout', ['separated', 'blanks', 'fixed'], fail);
  oneOf(map, 'unit', TEMPERATURE_UNITS, fail);
  oneOf(map, 'windUnit', WIND_UNITS, fail);
  oneOf(map, 'decimal', ['.', ','], fail);
  oneOf(map, 'dateOrder', ['auto', 'day first', 'month first'], fail);
  oneOf(map, 'coordinates', ['decimal', 'DMS'], fail);
  if (map.clock !== undefined && typeof map.clock !== 'number') {
    oneOf(map, 'clock', ['utc', 'local standard'], fail);
  }
  if (typeof map.clock === 'number' && !(Math.abs(map.clock) <= 14))
    fail(t`"clock" is at most 14 hours from UTC`);
  for (const key of ['separator', 'comment']) {
    const mark = map[key];
    if (mark !== undefined && (typeof mark !== 'string' || mark.length !== 1 || /["\r\n]/.test(mark))) {
      fail(t`"${key}" is one character`);
    }
  }
  for (const [key, most] of [
    ['skipLines', SKIPPED_MOST],
    ['yearBase', YEAR_BASE_MOST],
  ] as const) {
    if (map[key] !== undefined && !(Number.isInteger(map[key]) && isFrom0To(map[key], most))) {
      fail(t`"${key}" is a whole number from 0 to ${sayCount(most)}`);
    }
  }
  if (map.header !== undefined && typeof map.header !== 'boolean') fail(t`"header" is true or false`);
  if (map.missing !== undefined && !(Array.isArray(map.missing) && map.missing.every(isMark)))
    fail(t`"missing" is a list of marks`);
  checkColumns(map, fail);
  checkParts(map, fail);
  return { ...(map as unknown as ColumnMap), id: text(map.id, fileName), title: text(map.title, fileName) };
}

function checkColumns(map: Record<string, unknown>, fail: (what: string) => never): void {
  if (!isObject(map.columns)) fail(t`"columns" is missing`);
  const columns = map.columns as Record<string, unknown>;
  for (const [role, column] of Object.entries(columns)) {
    if (!(COLUMN_ROLES as readonly string[]).includes(role))
      fail(t`"${role}" in "columns" is not a known role`);
    const fits = map.layout === 'fixed' ? isSpan(column) : isNameOrPosition(column, map.header !== false);
    if (!fits) fail(t`column "${role}" must be ${wanted(map)}`);
  }
  const has = (role: ColumnRole): boolean => columns[role] !== undefined;
  if (map.kind === 'stations') {
    if (!has('station') || !has('lat') || !has('lon')) fail(t`"columns" needs station, lat and lon`);
    return;
  }
  if (!has('date') && !(has('year') && has('month') && has('day'))) {
    fail(t`"columns" needs date, or year, month and day`);
  }
  if (map.kind === 'daily' && !has('tmin')) fail(t`"columns" needs tmin`);
  if (map.kind === 'hourly' && !has('temp')) fail(t`"columns" needs temp`);
}

function checkParts(map: Record<string, unknown>, fail: (what: string) => never): void {
  if (map.signature !== undefined && !isObject(map.signature)) fail(t`"signature" is an object`);
  const { header, lines } = (map.signature ?? {}) as { header?: unknown; lines?: unknown };
  if (header !== undefined && typeof header !== 'string') fail(t`"signature.header" is a line of text`);
  if (lines !== undefined && !isPattern(lines)) fail(t`"signature.lines" is not a pattern`);
  const skip = map.skipRows as { column?: unknown; words?: unknown } | undefined;
  const fits =
    skip === undefined ||
    (isObject(skip) &&
      isNameOrPosition(skip.column, true) &&
      Array.isArray(skip.words) &&
      skip.words.every((word) => typeof word === 'string'));
  if (!fits) fail(t`"skipRows" needs column and words`);
  if (map.station !== undefined) checkStation(map.station, fail);
}

function checkStation(station: unknown, fail: (what: string) => never): void {
  if (!isObject(station)) return fail(t`"station" is an object`);
  for (const key of ['id', 'name']) {
    if (station[key] !== undefined && (typeof station[key] !== 'string' || station[key].trim() === ''))
      fail(t`"${key}" in "station" is a text`);
  }
  for (const [key, most] of [
    ['lat', 90],
    ['lon', 180],
    ['elevation_m', 9000],
  ] as const) {
    const value = station[key];
    if (value !== undefined && !(typeof value === 'number' && Math.abs(value) <= most))
      fail(t`"${key}" in "station" is a number from -${most} to ${most}`);
  }
}

function wanted(map: Record<string, unknown>): string {
  if (map.layout === 'fixed') return t`its first and last character, counted from 1`;
  return map.header === false
    ? t`a position, counted from 1`
    : t`a header name or a position, counted from 1`;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isMark(value: unknown): boolean {
  return typeof value === 'string' || (typeof value === 'number' && Number.isFinite(value));
}

function isFrom0To(value: unknown, most: number): boolean {
  return typeof value === 'number' && value >= 0 && value <= most;
}

function isPattern(value: unknown): boolean {
  if (typeof value !== 'string' || value.length > PATTERN_LONGEST) return false;
  try {
    new RegExp(value);
    return true;
  } catch {
    return false;
  }
}

function isPosition(value: unknown): value is number {
  return Number.isInteger(value) && (value as number) >= 1 && (value as number) <= 1024;
}

function isNameOrPosition(value: unknown, named: boolean): boolean {
  return isPosition(value) || (named && typeof value === 'string' && value.length > 0);
}

function isSpan(value: unknown): boolean {
  return Array.isArray(value) && value.length === 2 && value.every(isPosition) && value[0] <= value[1];
}

function oneOf(
  map: Record<string, unknown>,
  key: string,
  allowed: readonly string[],
  fail: (what: string) => never,
  needed = false,
): void {
  if (map[key] === undefined && !needed) return;
  if (!allowed.includes(map[key] as string)) fail(t`"${key}" is one of ${allowed.join(', ')}`);
}

function text(value: unknown, otherwise: string): string {
  return typeof value === 'string' && value.length > 0 ? value : otherwise;
}
