import { dateText, hourOf } from './date-text.ts';
import { numberText, unitNamed } from './number-text.ts';
import type { ReadingUnit } from './spot-reading.ts';
import type { TextRow } from './text-rows.ts';

/** Where in a row what stands, by index. */
export interface ReadingColumns {
  readonly date: number;
  /** Times beside the date; -1 for none, or in the same field. */
  readonly time: number;
  readonly minimum: number;
  /** -1 for none. */
  readonly maximum: number;
  /** What heading or values say of the unit, `null` for nothing. */
  readonly unit: ReadingUnit | null;
}

/** Rows that decide on the columns. */
const ROWS_TO_TELL = 400;
const NOT_AIR =
  /hum|\brh\b|dew|batt|volt|wind|gust|rain|prec|press|hpa|mbar|inhg|lux|light|solar|soil|index|#|\bno\b|\bid\b|record|count|signal|rssi|elev|alt|\blat|\blon/i;
const MINIMUM = /min|mín|\blow|\btn\b|tiefst/i;
const MAXIMUM = /max|máx|\bhigh|\bhi\b|\btx\b|höchst/i;
const AIR = /temp|°|deg|celsius|fahrenheit|\bt\b|air|reading|value|sensor|\bch/i;

/** Finds the columns from headings, and from what stands below them; `null` where no row has a date and a number. */
export function readingColumns(rows: readonly TextRow[]): ReadingColumns | null {
  const dated = rowsWithDates(rows);
  if (dated.length === 0) return null;
  const width = Math.max(...dated.map(({ fields }) => fields.length));
  const shareOf = (column: number, is: (field: string) => boolean): number =>
    dated.filter(({ fields }) => is(fields[column] ?? '')).length / dated.length;
  const columns = Array.from({ length: width }, (_, index) => index);
  const shares = columns.map((column) => shareOf(column, (field) => dateText(field) !== null));
  const date = shares.indexOf(Math.max(...shares));
  const time = columns.find((c) => c !== date && shareOf(c, (f) => !Number.isNaN(hourOf(f))) > 0.5) ?? -1;
  const heading = headingBefore(rows, dated[0]!.line);
  const names = columns.map((column) => heading[column] ?? '');
  const numeric = columns.filter(
    (c) => c !== date && c !== time && !NOT_AIR.test(names[c]!) && shareOf(c, isNumber) > 0.25,
  );
  if (numeric.length === 0) return null;
  const { minimum, maximum } = chosen(numeric, names, date, dated);
  const written = dated.map(({ fields }) => numberText(fields[minimum] ?? '')?.unit ?? null);
  const unit =
    unitNamed(names[minimum]!) ??
    written.find((found) => found !== null) ??
    unitNamed(
      rows
        .filter(({ line }) => line < dated[0]!.line)
        .map((row) => row.written)
        .join('\n'),
    );
  return { date, time, minimum, maximum, unit };
}

/** The first rows with a date, enough of them to tell the columns. */
function rowsWithDates(rows: readonly TextRow[]): TextRow[] {
  const found: TextRow[] = [];
  for (const row of rows) {
    if (row.fields.some((field) => dateText(field) !== null)) found.push(row);
    if (found.length === ROWS_TO_TELL) break;
  }
  return found;
}

function isNumber(field: string): boolean {
  return numberText(field) !== null;
}

/** The last line before the data with more than one field: loggers put their own lines above it. */
function headingBefore(rows: readonly TextRow[], line: number): readonly string[] {
  return rows.findLast((row) => row.line < line && row.fields.length > 1)?.fields ?? [];
}

function chosen(
  numeric: readonly number[],
  names: readonly string[],
  date: number,
  dated: readonly TextRow[],
): { minimum: number; maximum: number } {
  const named = (pattern: RegExp): number => numeric.find((c) => pattern.test(names[c]!)) ?? -1;
  const maximum = named(MAXIMUM);
  const minimum = named(MINIMUM);
  if (minimum >= 0) return { minimum, maximum };
  const air = numeric.find((c) => c !== maximum && AIR.test(names[c]!)) ?? -1;
  if (air >= 0) return { minimum: air, maximum };
  // Numbers before the date count the rows; without names the lower of two is the minimum.
  const after = numeric.filter((c) => c > date && c !== maximum);
  const [first, second] = after.length > 0 ? after : numeric;
  if (second === undefined || maximum >= 0) return { minimum: first!, maximum };
  const both = dated
    .map(({ fields }) => [numberText(fields[first!] ?? ''), numberText(fields[second] ?? '')] as const)
    .filter(([a, b]) => a && b);
  const share = (holds: (a: number, b: number) => boolean): number =>
    both.filter(([a, b]) => holds(a!.value, b!.value)).length / Math.max(both.length, 1);
  if (share((a, b) => a >= b) > 0.95) return { minimum: second, maximum: first! };
  if (share((a, b) => a <= b) > 0.95) return { minimum: first!, maximum: second };
  return { minimum: first!, maximum: -1 };
}
