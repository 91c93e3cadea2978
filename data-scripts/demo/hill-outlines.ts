import type { NamedLine } from './geography.ts';
import { elevationAt } from './relief.ts';
import type { LonLat } from './shoreline.ts';

/** Heights whose outlines the map shows, m. */
export const HILL_OUTLINES_M = [120, 220, 340, 450] as const;

const WEST = -43.95;
const EAST = -41.3;
const SOUTH = 30.6;
const NORTH = 32.45;
const STEP = 0.02;
const SMALLEST_RING = 10;

/** A closed outline of the ground at or above a height. */
export interface HillOutline extends NamedLine {
  readonly elevationM: number;
}

/** Outlines of the hills at HILL_OUTLINES_M, by marching squares on a grid of 0.02 degrees; rings are not closed. */
export function hillOutlines(): HillOutline[] {
  const columns = Math.round((EAST - WEST) / STEP) + 1;
  const rows = Math.round((NORTH - SOUTH) / STEP) + 1;
  const grid = new Float64Array(columns * rows);
  for (let row = 1; row < rows - 1; row++) {
    for (let column = 1; column < columns - 1; column++) {
      grid[row * columns + column] = elevationAt(SOUTH + row * STEP, WEST + column * STEP);
    }
  }
  return HILL_OUTLINES_M.flatMap((elevationM) =>
    trace(grid, columns, rows, elevationM)
      .filter((ring) => ring.length >= SMALLEST_RING)
      .map((points) => ({ name: nameOf(points), elevationM, points })),
  );
}

/** Joins the level's crossings of the grid's cells into rings, high ground kept on the left. */
function trace(grid: Float64Array, columns: number, rows: number, level: number): LonLat[][] {
  const next = new Map<number, number>();
  const point = new Map<number, LonLat>();
  const edge = (column: number, row: number, vertical: boolean) => {
    const key = (row * columns + column) * 2 + (vertical ? 1 : 0);
    const a = grid[row * columns + column];
    const b = vertical ? grid[(row + 1) * columns + column] : grid[row * columns + column + 1];
    const share = (level - a) / (b - a);
    const lon = WEST + (column + (vertical ? 0 : share)) * STEP;
    const lat = SOUTH + (row + (vertical ? share : 0)) * STEP;
    point.set(key, [lon, lat]);
    return key;
  };
  for (let row = 0; row + 1 < rows; row++) {
    for (let column = 0; column + 1 < columns; column++) {
      const corner = row * columns + column;
      const high = [grid[corner], grid[corner + 1], grid[corner + columns + 1], grid[corner + columns]].map(
        (m) => m >= level,
      );
      const sides = [
        () => edge(column, row, false),
        () => edge(column + 1, row, true),
        () => edge(column, row + 1, false),
        () => edge(column, row, true),
      ];
      for (let side = 0; side < 4; side++) {
        // Walking a cell's border counter-clockwise, a ring leaves where the ground falls and came in where it rose before.
        if (!(high[side] && !high[(side + 1) % 4])) continue;
        let entry = side;
        do entry = (entry + 3) % 4;
        while (!(!high[entry] && high[(entry + 1) % 4]));
        next.set(sides[side](), sides[entry]());
      }
    }
  }
  const rings: LonLat[][] = [];
  for (const start of [...next.keys()]) {
    if (!next.has(start)) continue;
    const ring: LonLat[] = [];
    let at: number | undefined = start;
    while (at !== undefined && next.has(at)) {
      ring.push(point.get(at)!);
      const following: number = next.get(at)!;
      next.delete(at);
      at = following;
    }
    rings.push(ring);
  }
  return rings;
}

function nameOf(ring: readonly LonLat[]): string {
  const lon = ring.reduce((sum, point) => sum + point[0], 0) / ring.length;
  return lon < -42.3 ? 'Corrow Hills' : 'Gannet Downs';
}
