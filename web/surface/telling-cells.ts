import type { Surface } from '../state/ports.ts';

/** Which cells stand for which, since outlines are finer than cells. All arrays have one entry a cell. */
export interface TellingCells {
  /**
   * The land cell that tells about each cell: itself on land, the nearest one up to two cells off the shore, so that land
   * in a cell whose centre is wet has an answer too; -1 on the open sea.
   */
  readonly telling: Int32Array;
  /** The answered cell nearest to each cell, however far; -1 only where no cell is answered. Used to carry bands to the shore. */
  readonly answered: Int32Array;
}

/** How many cells off the shore a land cell still tells about. */
const SHORE_CELLS = 2;

const known = new WeakMap<Surface, TellingCells>();

/** Worked out once a surface. */
export function tellingCells(surface: Surface): TellingCells {
  let cells = known.get(surface);
  if (!cells) known.set(surface, (cells = workOut(surface)));
  return cells;
}

function workOut(surface: Surface): TellingCells {
  const { states, periods } = surface;
  const isAnswered = (i: number): boolean => states[i] === 1 && !Number.isNaN(periods[i]);
  return {
    telling: nearestOf(surface, (i) => states[i] !== 0, SHORE_CELLS),
    answered: nearestOf(surface, isAnswered, Infinity),
  };
}

/** For each cell the nearest one that `from` picks, by steps in eight directions, at most `reach` of them. */
function nearestOf({ columns, rows }: Surface, from: (cell: number) => boolean, reach: number): Int32Array {
  const source = new Int32Array(columns * rows).fill(-1);
  let front: number[] = [];
  for (let i = 0; i < source.length; i++) {
    if (!from(i)) continue;
    source[i] = i;
    front.push(i);
  }
  for (let step = 0; step < reach && front.length > 0; step++) {
    const next: number[] = [];
    for (const cell of front) {
      const [column, row] = [cell % columns, Math.floor(cell / columns)];
      for (let r = Math.max(0, row - 1); r <= Math.min(rows - 1, row + 1); r++) {
        for (let c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c++) {
          const at = r * columns + c;
          if (source[at] !== -1) continue;
          source[at] = source[cell];
          next.push(at);
        }
      }
    }
    front = next;
  }
  return source;
}
