import type { CsvCell } from '../records/csv-text.ts';
import {
  batchAdvice,
  batchPeriod,
  BATCH_LEVELS,
  type BadRow,
  type BatchAnswer,
  type BatchPlace,
  type BatchRow,
} from './batch.ts';
import type { BatchTold } from './batch-run.ts';

/**
 * Columns of a batch as a table: one row a row of the file and a type. Periods in winters (`low` the frequent end of the 90 %
 * range), empty where there is none; `basis` says how to read them: `fitted` or `counted`, `beyond` (rarer than `low`), `not seen`
 * (could be as often as `low`). `class` is how to grow it. Never rearranged: later columns go behind.
 */
export const BATCH_COLUMNS = [
  ...['line', 'customer', 'label', 'postcode', 'lat', 'lon', 'elevation_m'],
  ...['basis', 'station', 'station_km', 'error_c', 'winters', 'first_winter', 'last_winter'],
  ...['type', 'type_name', 'class'],
  ...BATCH_LEVELS.flatMap((level) => ['period', 'low', 'high', 'basis'].map((part) => `${level}_${part}`)),
] as const;

/** The cells of a row of the file and a type, by the index of the type. */
export function batchCells(
  row: BatchRow,
  { lat, lon }: BatchPlace,
  answer: BatchAnswer,
  type: { readonly id: string; readonly name: string },
  index: number,
): CsvCell[] {
  const { basis, station, stationKm, errorC, winters, first, last, elevationM } = answer;
  return [
    ...[row.line, row.customer, row.label, row.postcode, lat, lon],
    Number.isNaN(elevationM) ? null : toCentimetres(elevationM),
    ...[basis, station, stationKm, errorC, winters, first || null, last || null],
    ...[type.id, type.name, batchAdvice(answer, index)],
    ...BATCH_LEVELS.flatMap((level) => {
      const told = batchPeriod(answer, index, level);
      return [told.period, told.low, told.high, told.basis];
    }),
  ];
}

/** A height given in feet has no end in metres: 210 ft are 64.00800000000001 m. */
function toCentimetres(metres: number): number {
  return Math.round(metres * 100) / 100;
}

/** Rows whose place nothing can be told about, as bad rows. */
export function refusedRows(rows: readonly BatchRow[], answers: readonly (BatchTold | null)[]): BadRow[] {
  return rows.flatMap(({ line, label, postcode, place }) => {
    const answer = answers[place];
    if (!answer || answer.problem === null) return [];
    return [{ line, reason: answer.problem, text: [postcode, label].filter(Boolean).join(' ') }];
  });
}

/** How many rows are estimated for a place whose height nobody knows. */
export function rowsWithoutHeight(rows: readonly BatchRow[], answers: readonly (BatchTold | null)[]): number {
  return rows.filter(({ place }) => {
    const answer = answers[place];
    return answer?.problem === null && answer.errorC > 0 && Number.isNaN(answer.elevationM);
  }).length;
}

/** Bad rows by line. */
export function byLine(rows: readonly BadRow[]): BadRow[] {
  return [...rows].sort((a, b) => a.line - b.line);
}
