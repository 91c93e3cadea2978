import { t } from '../language/t.ts';
import { InputError, UnknownFormatError } from '../records/input-error.ts';
import type { ColumnMap } from './column-map.ts';
import { Fields } from './fields.ts';
import { knownTable } from './known-tables.ts';

/** A format this room reads. */
export type FormatId = 'ghcn-dly' | 'ghcn-long' | 'isd-lite' | 'wth' | 'value-list' | 'table';

/** What a file's first lines show. */
export interface Recognised {
  readonly format: FormatId;
  /** In words, for messages. */
  readonly title: string;
  /** How the table is written, for format `table`. */
  readonly map: ColumnMap | null;
  /** True where a map was chosen by its signature: say so to the reader. */
  readonly mapChosen: boolean;
}

const DLY = /^[A-Za-z]{2}[A-Za-z0-9_-]{9}\d{4}(0[1-9]|1[0-2])[A-Z]{2}[A-Z0-9]{2}[ \d-]{5}/;
const ISD_LITE = /^\d{4} [01]\d [0-3]\d [0-2]\d(\s+-?\d+){5,8}\s*$/;
const LONG_ROW = /^"?[A-Za-z0-9_-]{3,}"?,"?\d{4}-?\d{2}-?\d{2}"?,"?[A-Z]{2}[A-Z0-9]{2}"?,\s*-?\d+,/;
const VALUE_LIST_SPAN = /^\s*\d{8,10}\s+\d{8,10}\s+\d\s*$/;
const LINES_FOR_SIGNATURE = 5;

/**
 * Tells the format of a file from its first lines (about 20 of them are enough).
 * @param columns the column map the user gave: it decides alone.
 * @param maps maps that may be applied when their signature fits.
 * @throws {UnknownFormatError} when no format fits, saying what was found and what is needed.
 * @throws {InputError} when the file is empty or several maps fit.
 */
export function recognise(
  head: string,
  fileName: string,
  columns: ColumnMap | null = null,
  maps: readonly ColumnMap[] = [],
): Recognised {
  if (columns) return { format: 'table', title: columns.title, map: columns, mapChosen: false };
  const lines = head.split(/\r\n|\n|\r/).filter((line) => line.trim() !== '');
  const first = lines[0];
  if (first === undefined) throw new InputError(t`${fileName} is empty.`);
  const plain = (format: FormatId, title: string): Recognised => ({
    format,
    title,
    map: null,
    mapChosen: false,
  });
  if (DLY.test(first)) return plain('ghcn-dly', t`GHCN-Daily .dly`);
  if (ISD_LITE.test(first)) return plain('isd-lite', t`ISD-Lite hourly`);
  if (/^[*$]WEATHER/i.test(first) || lines.some((line) => /^@\s*INSI\b/.test(line))) {
    return plain('wth', t`.WTH weather file`);
  }
  if (lines.length > 2 && VALUE_LIST_SPAN.test(lines[1]!))
    return plain('value-list', t`list of daily values`);
  if (isLong(first)) return plain('ghcn-long', t`GHCN-Daily long table`);
  const fitting = maps.filter((map) => map.kind !== 'stations' && fits(map, lines));
  if (fitting.length > 1) {
    const names = fitting.map((map) => map.id).join(', ');
    throw new InputError(t`${fileName} fits several column maps (${names}): choose one by --columns.`);
  }
  if (fitting[0]) return { format: 'table', title: fitting[0].title, map: fitting[0], mapChosen: true };
  const separator = separatorOf(first);
  const header = headerNames(first, separator);
  const known = knownTable(header, separator);
  if (known) return { format: 'table', title: known.title, map: known, mapChosen: false };
  const found = header.slice(0, 8).map((name) => name.slice(0, 24));
  throw new UnknownFormatError(
    t`${fileName}, line 1: the columns aren't known (found ${found.join(', ')}): a date and tmin are needed, or a column map by --columns.`,
  );
}

function isLong(first: string): boolean {
  if (LONG_ROW.test(first)) return true;
  const names = headerNames(first, ',').map((name) => name.toLowerCase());
  return names.includes('element') && names.includes('date') && names.some((n) => /^(data_)?value$/.test(n));
}

function fits(map: ColumnMap, lines: readonly string[]): boolean {
  const signature = map.signature;
  if (!signature) return false;
  const after = lines.slice(map.skipLines ?? 0);
  if (signature.header !== undefined) {
    const separator = map.separator ?? ',';
    const wanted = headerNames(signature.header, separator).join('\n').toLowerCase();
    return after[0] !== undefined && headerNames(after[0], separator).join('\n').toLowerCase() === wanted;
  }
  if (signature.lines === undefined) return false;
  const pattern = new RegExp(signature.lines);
  const rows = after.slice(0, LINES_FOR_SIGNATURE);
  return rows.length > 0 && rows.every((row) => pattern.test(row));
}

/** The separator a header line uses: the commonest of semicolon, tab and comma. */
export function separatorOf(line: string): string {
  const counts = [';', '\t', ','].map((mark) => ({ mark, count: line.split(mark).length }));
  return counts.reduce((best, next) => (next.count > best.count ? next : best)).mark;
}

/** Names in a header line, quotes and blanks left out. */
export function headerNames(line: string, separator: string): string[] {
  const fields = new Fields(separator);
  fields.split(line, 0, line.length, 1024);
  return Array.from({ length: fields.count }, (_, index) => fields.text(line, index));
}
