import { sayCount } from '../../language/figures.ts';
import { t } from '../../language/t.ts';
import { DateOrderEvidence, isUnordered, ordered, type DateOrder } from '../../read/dates.ts';
import { InputError, UnclearError } from '../../records/input-error.ts';
import { dateText, hourOf } from './date-text.ts';
import { nightsFromLog } from './nights-from-log.ts';
import { numberText } from './number-text.ts';
import { readingColumns, type ReadingColumns } from './reading-columns.ts';
import type { ReadingUnit, SpotReading } from './spot-reading.ts';
import { textRows, type TextRow } from './text-rows.ts';

export type SettledOrder = 'day first' | 'month first';

/** A line left out, with the reason in a few words. */
export interface SkippedLine {
  readonly line: number;
  readonly written: string;
  readonly reason: string;
}

/** What a text of readings holds. */
export interface ReadReadings {
  /** One entry a night, by date. */
  readonly readings: readonly SpotReading[];
  /** What the text says of its unit. */
  readonly unit: ReadingUnit | null;
  /** Order in which dates were read, `null` where they need none (2024-01-05). */
  readonly order: SettledOrder | null;
  /** Whether that order was a guess: nothing in the text tells, and nobody chose. */
  readonly orderGuessed: boolean;
  /** Readings a night: 1 for a diary, more for a logger. */
  readonly perNight: number;
  readonly skipped: readonly SkippedLine[];
  readonly notes: readonly string[];
}

/** One row that could be read. */
interface DatedValue {
  readonly code: number;
  readonly hour: number;
  readonly value: number;
  readonly maximum: number | null;
  readonly row: TextRow;
}

/** No air temperature at the ground lies beyond these in °F or °C: what does stands for "missing". */
const COLDEST_WRITTEN = -90;
const WARMEST_WRITTEN = 140;
/** Most bytes of a file of readings: a logger's ten years by the quarter of an hour. */
export const READINGS_BYTES_MAX = 10_000_000;
/** Nights that can tell anything. */
export const READINGS_MIN = 3;

/**
 * Reads dates and minima from any table: separators, headings, decimal commas, month names, times of day as they come. A
 * logger's many readings become each night's minimum, noon to noon.
 * @param order where dates such as 02/03/2024 don't tell it themselves
 * @throws {InputError} without dates, numbers, or at least three nights: one sentence with the line and what stands there
 */
export function readReadings(text: string, name: string, order: DateOrder = 'auto'): ReadReadings {
  if (text.length > READINGS_BYTES_MAX)
    throw new InputError(
      t`${name} has ${sayCount(text.length)} letters; at most ${sayCount(READINGS_BYTES_MAX)} of readings are taken.`,
    );
  const rows = textRows(text);
  if (rows.length === 0)
    throw new InputError(t`${name} is empty: a date and a minimum in each line are needed.`);
  const columns = readingColumns(rows);
  if (!columns) throw nothingFound(rows, name);
  const skipped: SkippedLine[] = [];
  const values = datedValues(rows, columns, skipped);
  const settled = settleOrder(values, order, name);
  const days = values.flatMap(({ code, ...rest }) => {
    const day = settled.order && isUnordered(code) ? ordered(code, settled.order) : code;
    if (!Number.isNaN(day)) return [{ ...rest, day }];
    skipped.push({ line: rest.row.line, written: rest.row.written, reason: t`no such date` });
    return [];
  });
  const { readings, perNight, notes } = nightsFromLog(days);
  if (readings.length < READINGS_MIN) throw tooFew(readings, rows, skipped, name);
  skipped.sort((a, b) => a.line - b.line);
  return { readings, unit: columns.unit, ...settled, perNight, skipped, notes };
}

function datedValues(
  rows: readonly TextRow[],
  columns: ReadingColumns,
  skipped: SkippedLine[],
): DatedValue[] {
  const found: DatedValue[] = [];
  for (const row of rows) {
    const skip = (reason: string): void => {
      // Lines above the first reading are headings, not losses.
      if (found.length > 0 || dateText(row.fields[columns.date] ?? '') !== null) {
        skipped.push({ line: row.line, written: row.written, reason });
      }
    };
    const date = dateText(row.fields[columns.date] ?? '');
    const number = numberText(row.fields[columns.minimum] ?? '');
    if (!date) skip(t`no date`);
    else if (Number.isNaN(date.code)) skip(t`no such date`);
    else if (!number) skip(t`no number`);
    else if (number.value < COLDEST_WRITTEN || number.value > WARMEST_WRITTEN) {
      skip(t`beyond any air temperature`);
    } else {
      const hour = columns.time < 0 ? date.hour : hourOf(row.fields[columns.time] ?? '');
      const maximum = columns.maximum < 0 ? null : numberText(row.fields[columns.maximum] ?? '');
      found.push({ code: date.code, hour, value: number.value, maximum: maximum?.value ?? null, row });
    }
  }
  return found;
}

function settleOrder(
  values: readonly DatedValue[],
  chosen: DateOrder,
  name: string,
): { order: SettledOrder | null; orderGuessed: boolean } {
  const evidence = new DateOrderEvidence();
  for (const { code, row } of values) evidence.add(code, row.line);
  const told = evidence.decide();
  if (told === null) return { order: null, orderGuessed: false };
  if (chosen !== 'auto') return { order: chosen, orderGuessed: false };
  if (told === 'both') {
    throw new UnclearError(
      t`${name}: the date in line ${evidence.dayFirstLine} can only be day first, the one in line ${evidence.monthFirstLine} only month first; choose which is right.`,
      'dateOrder',
    );
  }
  if (told !== 'unclear') return { order: told, orderGuessed: false };
  // Nights that someone writes down lie near each other: the order with the shorter span.
  const span = (order: SettledOrder): number => {
    const days = values.map(({ code }) => ordered(code, order)).filter((day) => !Number.isNaN(day));
    return days.reduce((a, b) => Math.max(a, b), -Infinity) - days.reduce((a, b) => Math.min(a, b), Infinity);
  };
  return { order: span('day first') < span('month first') ? 'day first' : 'month first', orderGuessed: true };
}

function nothingFound(rows: readonly TextRow[], name: string): InputError {
  const dated = rows.find(({ fields }) => fields.some((field) => dateText(field) !== null));
  const { line, written } = dated ?? rows[Math.min(1, rows.length - 1)]!;
  const lack = dated ? t`no line has a temperature beside its date` : t`no line has a date`;
  return new InputError(
    t`${name}: ${lack} (line ${line}: “${short(written)}”); lines such as 2024-01-05, 28.4 are needed.`,
  );
}

function tooFew(
  readings: readonly SpotReading[],
  rows: readonly TextRow[],
  skipped: readonly SkippedLine[],
  name: string,
): InputError {
  const row = rows.find(({ line }) => line === readings.at(-1)?.line) ?? rows.at(-1)!;
  const lost = skipped[0];
  const left = lost
    ? t`; ${skipped.length} more could not be read, the first in line ${lost.line} (“${short(lost.written)}”: ${lost.reason})`
    : '';
  const count =
    readings.length === 0
      ? t`no nights were read`
      : readings.length === 1
        ? t`1 night was read`
        : t`${readings.length} nights were read`;
  return new InputError(
    t`${name}: ${count}, up to line ${row.line} (“${short(row.written)}”), and at least ${READINGS_MIN} are needed${left}.`,
  );
}

function short(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)} …` : text;
}
