import { winterLabels } from './chart-size.ts';
import { ageTicks } from './survival-curve.ts';

/** One planting: the winter its tree met first, and a letter for each winter from then on. */
export interface GridRow {
  readonly winter: number;
  readonly course: string;
}

/** What lines up under each other: the same winter, or trees of the same age. */
export const ALIGNMENTS = ['winter', 'age'] as const;
export type Alignment = (typeof ALIGNMENTS)[number];

/** A winter of a planting: its row, and winters since the first from 0. */
export interface GridCell {
  readonly row: number;
  readonly step: number;
}

/** First column's winter, or 0 for ages, and how many there are. */
export interface GridColumns {
  readonly first: number;
  readonly count: number;
}

export function gridColumns(rows: readonly GridRow[], alignment: Alignment): GridColumns {
  if (alignment === 'age')
    return { first: 0, count: Math.max(0, ...rows.map(({ course }) => course.length)) };
  const first = Math.min(...rows.map(({ winter }) => winter));
  const last = Math.max(...rows.map(({ winter, course }) => winter + course.length - 1));
  return rows.length === 0 ? { first: 0, count: 0 } : { first, count: last - first + 1 };
}

/** Column of a row's first cell. */
export function startColumn(row: GridRow, alignment: Alignment, { first }: GridColumns): number {
  return alignment === 'age' ? 0 : row.winter - first;
}

/** Names of columns with room between them: winters by their January, or ages. */
export function columnLabels(
  { first, count }: GridColumns,
  alignment: Alignment,
  cellPx: number,
): readonly { readonly column: number; readonly text: string }[] {
  if (alignment === 'winter')
    return winterLabels(first, first + count - 1, cellPx).map((winter) => ({
      column: winter - first,
      text: String(winter),
    }));
  return ageTicks(count, cellPx)
    .filter((age) => age > 0)
    .map((age) => ({ column: age - 1, text: String(age) }));
}

/** The cell of a row that stands in a column, or the nearest one the row has. */
export function cellAt(
  rows: readonly GridRow[],
  row: number,
  column: number,
  alignment: Alignment,
): GridCell {
  const at = Math.min(rows.length - 1, Math.max(0, row));
  const start = startColumn(rows[at], alignment, gridColumns(rows, alignment));
  return { row: at, step: Math.min(rows[at].course.length - 1, Math.max(0, column - start)) };
}

const PAGE_ROWS = 10;

/**
 * Where a key leads from a cell; `null` for keys that lead nowhere. Up and down keep to `column`, the one last chosen
 * along a row, so that a freeze can be followed past rows that end before it.
 */
export function cellForKey(
  { key, ctrlKey }: { readonly key: string; readonly ctrlKey: boolean },
  from: GridCell,
  column: number,
  rows: readonly GridRow[],
  alignment: Alignment,
): GridCell | null {
  const lastStep = (row: number): number => rows[row].course.length - 1;
  const last = rows.length - 1;
  switch (key) {
    case 'ArrowLeft':
      return { row: from.row, step: Math.max(0, from.step - 1) };
    case 'ArrowRight':
      return { row: from.row, step: Math.min(lastStep(from.row), from.step + 1) };
    case 'ArrowUp':
      return cellAt(rows, from.row - 1, column, alignment);
    case 'ArrowDown':
      return cellAt(rows, from.row + 1, column, alignment);
    case 'PageUp':
      return cellAt(rows, from.row - PAGE_ROWS, column, alignment);
    case 'PageDown':
      return cellAt(rows, from.row + PAGE_ROWS, column, alignment);
    case 'Home':
      return { row: ctrlKey ? 0 : from.row, step: 0 };
    case 'End':
      return ctrlKey ? { row: last, step: lastStep(last) } : { row: from.row, step: lastStep(from.row) };
    default:
      return null;
  }
}

/** A cell of other rows or another alignment put back inside: the same planting where it is still there. */
export function keptCell(cell: GridCell | null, rows: readonly GridRow[]): GridCell {
  if (rows.length === 0 || cell === null) return { row: 0, step: 0 };
  const row = Math.min(rows.length - 1, cell.row);
  return { row, step: Math.min(rows[row].course.length - 1, cell.step) };
}
