import { fahrenheitDifferenceToCelsius } from '../../../analysis/units/temperature.ts';
import { formatCount } from '../../format/numbers.ts';
import { differenceIn, figure } from '../../format/temperatures.ts';
import { unitSymbol, type TemperatureUnit } from '../../format/unit.ts';

/** A table of measured errors, ready to show. */
export interface AccuracyTable {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Errors by hours in °F as the calibration writes them: mean size, and mean (rebuilt less observed). */
interface ErrorRow {
  readonly nights: number;
  readonly maeF: Readonly<Record<string, number>>;
  readonly biasF: Readonly<Record<string, number>>;
}

const HOURS_SHOWN = ['1', '4', '8', '12', '24'];

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
function isErrorRow(value: unknown): value is ErrorRow {
  return isObject(value) && isObject(value.maeF) && isObject(value.biasF);
}
function isNumbers(value: unknown): value is Readonly<Record<string, number>> {
  return (
    isObject(value) &&
    Object.keys(value).length > 0 &&
    Object.values(value).every((entry) => typeof entry === 'number')
  );
}

/** `byDailyWind` and `nyc_jfk` as words. */
export function keyWords(key: string): string {
  const words = key
    .replaceAll('_', ' ')
    .replace(/([a-z\d])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function errorTable(
  title: string,
  rows: readonly (readonly [string, ErrorRow])[],
  unit: TemperatureUnit,
): AccuracyTable {
  const shown = (valueF: number | undefined): string =>
    valueF === undefined || !Number.isFinite(valueF)
      ? '–'
      : figure(differenceIn(fahrenheitDifferenceToCelsius(valueF), unit), 2);
  const hours = HOURS_SHOWN.filter((hour) => rows.some(([, row]) => hour in row.maeF));
  return {
    title: `${title}: mean size of the error, and in brackets its mean (${unitSymbol(unit)})`,
    columns: ['', 'Nights', ...hours.map((hour) => `${hour} h`)],
    rows: rows.map(([name, row]) => [
      keyWords(name),
      formatCount(row.nights),
      ...hours.map((hour) => `${shown(row.maeF[hour])} (${shown(row.biasF[hour])})`),
    ]),
  };
}

function numberTable(
  title: string,
  rows: readonly (readonly [string, Readonly<Record<string, number>>])[],
): AccuracyTable {
  const columns = [...new Set(rows.flatMap(([, row]) => Object.keys(row)))];
  const shown = (value: number | undefined): string =>
    value === undefined || value === null
      ? '–'
      : Number.isInteger(value)
        ? formatCount(value)
        : figure(value, 2);
  return {
    title,
    columns: ['', ...columns.map(keyWords)],
    rows: rows.map(([name, row]) => [keyWords(name), ...columns.map((column) => shown(row[column]))]),
  };
}

/**
 * The calibration's report as tables, in its own order: rows of errors that stand together make one table, so do rows of
 * plain figures (the confusion of calm and windy nights among them); deeper parts follow under their own titles.
 */
export function accuracyTables(
  report: unknown,
  unit: TemperatureUnit,
  path: readonly string[] = [],
): readonly AccuracyTable[] {
  if (!isObject(report)) return [];
  const title = path.length === 0 ? 'Overall' : path.map(keyWords).join(', ');
  const entries = Object.entries(report);
  const errors = entries.filter((entry): entry is [string, ErrorRow] => isErrorRow(entry[1]));
  const numbers = entries.filter((entry): entry is [string, Record<string, number>] => isNumbers(entry[1]));
  const deeper = entries.filter(([, value]) => !isErrorRow(value) && !isNumbers(value));
  return [
    ...(errors.length > 0 ? [errorTable(title, errors, unit)] : []),
    ...(numbers.length > 0 ? [numberTable(title, numbers)] : []),
    ...deeper.flatMap(([key, value]) => accuracyTables(value, unit, [...path, key])),
  ];
}

/** Sentences the report holds, in its order. */
export function accuracyNotes(report: unknown): readonly string[] {
  if (typeof report === 'string') return [report];
  if (Array.isArray(report)) return report.flatMap(accuracyNotes);
  return isObject(report) ? Object.values(report).flatMap(accuracyNotes) : [];
}
