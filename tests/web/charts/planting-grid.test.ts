import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ALIGNMENTS,
  cellAt,
  cellForKey,
  columnLabels,
  gridColumns,
  keptCell,
  startColumn,
  type Alignment,
  type GridCell,
  type GridRow,
} from '../../../web/charts/planting-grid.ts';

const rows: readonly GridRow[] = [
  { winter: 1960, course: '..cck' },
  { winter: 1961, course: '..ck' },
  { winter: 1963, course: '.k' },
  { winter: 1964, course: 'l.cc' },
];
const press = (
  key: string,
  from: GridCell,
  column: number,
  alignment: Alignment = 'winter',
  ctrlKey = false,
) => cellForKey({ key, ctrlKey }, from, column, rows, alignment);

describe('the planting grid', () => {
  it('has a column for every winter from the first planting to the last course, or for every age', () => {
    expect(gridColumns(rows, 'winter')).toEqual({ first: 1960, count: 8 });
    expect(gridColumns(rows, 'age')).toEqual({ first: 0, count: 5 });
    expect(gridColumns([], 'winter').count).toBe(0);
    expect(startColumn(rows[3], 'winter', gridColumns(rows, 'winter'))).toBe(4);
  });

  it('names columns by the January of their winter, or by age', () => {
    expect(columnLabels({ first: 1958, count: 20 }, 'winter', 10)).toEqual([
      { column: 2, text: '1960' },
      { column: 7, text: '1965' },
      { column: 12, text: '1970' },
      { column: 17, text: '1975' },
    ]);
    expect(
      columnLabels({ first: 0, count: 12 }, 'age', 10).map(({ column, text }) => [column, text]),
    ).toEqual([
      [4, '5'],
      [9, '10'],
    ]);
  });

  it('lets a freeze be followed up and down: the same winter, or the nearest a row has', () => {
    expect(press('ArrowDown', { row: 0, step: 4 }, 4)).toEqual({ row: 1, step: 3 });
    expect(press('ArrowDown', { row: 1, step: 3 }, 4)).toEqual({ row: 2, step: 1 });
    expect(press('ArrowDown', { row: 2, step: 1 }, 4)).toEqual({ row: 3, step: 0 });
    expect(press('PageUp', { row: 3, step: 3 }, 7)).toEqual({ row: 0, step: 4 });
    expect(press('ArrowDown', { row: 0, step: 3 }, 3, 'age')).toEqual({ row: 1, step: 3 });
  });

  it('goes along a planting and to its ends, with Ctrl to the first and last', () => {
    expect(press('ArrowRight', { row: 0, step: 4 }, 4)).toEqual({ row: 0, step: 4 });
    expect(press('Home', { row: 1, step: 2 }, 3)).toEqual({ row: 1, step: 0 });
    expect(press('End', { row: 1, step: 0 }, 1)).toEqual({ row: 1, step: 3 });
    expect(press('Home', { row: 3, step: 2 }, 6, 'winter', true)).toEqual({ row: 0, step: 0 });
    expect(press('End', { row: 0, step: 0 }, 0, 'winter', true)).toEqual({ row: 3, step: 3 });
    expect(press('Tab', { row: 0, step: 0 }, 0)).toBeNull();
  });

  it('never leaves the grid, and every cell can be reached', () => {
    const grids = fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 15 });
    const keys = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'PageUp', 'PageDown', 'Home', 'End'];
    fc.assert(
      fc.property(
        grids,
        fc.constantFrom(...ALIGNMENTS),
        fc.array(fc.constantFrom(...keys)),
        (made, how, presses) => {
          const grid = made.map((length, i) => ({ winter: 1950 + 2 * i, course: 'c'.repeat(length) }));
          let at = keptCell(null, grid);
          for (const key of presses) {
            const column = startColumn(grid[at.row], how, gridColumns(grid, how)) + at.step;
            at = cellForKey({ key, ctrlKey: false }, at, column, grid, how)!;
            expect(at.row).toBeGreaterThanOrEqual(0);
            expect(at.row).toBeLessThan(grid.length);
            expect(at.step).toBeGreaterThanOrEqual(0);
            expect(at.step).toBeLessThan(grid[at.row].course.length);
          }
          for (const [row, { course }] of grid.entries())
            for (let step = 0; step < course.length; step++) {
              const column = startColumn(grid[row], how, gridColumns(grid, how)) + step;
              expect(cellAt(grid, row, column, how)).toEqual({ row, step });
            }
        },
      ),
    );
  });

  it('keeps a cell inside when the plantings change', () => {
    expect(keptCell({ row: 9, step: 30 }, rows)).toEqual({ row: 3, step: 3 });
    expect(keptCell({ row: 0, step: 1 }, [])).toEqual({ row: 0, step: 0 });
  });
});
