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

/**
 * Checks a column map read from JSON.
 * @throws {InputError} naming the file and the first thing that is wrong.
 */
export function parseColumnMap(json: string, fileName: string): ColumnMap {
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
    if (map[key] !== undefined && (typeof map[key] !== 'string' || map[key].length !== 1)) {
      fail(t`"${key}" is one character`);
    }
  }
  for (const key of ['skipLines', 'yearBase']) {
    if (map[key] !== undefined && !(Number.isInteger(map[key]) && (map[key] as number) >= 0)) {
      fail(t`"${key}" is a whole number from 0`);
    }
  }
  if (map.missing !== undefined && !Array.isArray(map.missing)) fail(t`"missing" is a list of marks`);
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
  const lines = (map.signature as { lines?: unknown } | undefined)?.lines;
  if (lines !== undefined) {
    try {
      new RegExp(String(lines));
    } catch {
      fail(t`"signature.lines" is not a pattern`);
    }
  }
  const skip = map.skipRows as { column?: unknown; words?: unknown } | undefined;
  if (skip !== undefined && !(isObject(skip) && skip.column !== undefined && Array.isArray(skip.words))) {
    fail(t`"skipRows" needs column and words`);
  }
  if (map.station !== undefined && !isObject(map.station)) fail(t`"station" is an object`);
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
