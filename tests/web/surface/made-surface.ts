import type { Surface } from '../../../web/state/ports.ts';

/** One cell as a test gives it: a period in winters, `sea`, or `far` for land out of reach. */
export type MadeCell = number | 'sea' | 'far';

/** A surface of 0.1 by 0.1 degrees a cell from 31° N, 42° W; cells by column and row from the south-west. */
export function madeSurface(
  columns: number,
  rows: number,
  cell: (column: number, row: number) => MadeCell,
  longestClaim = 140,
): Surface {
  const made = Array.from({ length: columns * rows }, (_, i) => cell(i % columns, Math.floor(i / columns)));
  return {
    ...{ columns, rows, west: -42, south: 31, stepLonDeg: 0.1, stepLatDeg: 0.1 },
    periods: Float32Array.from(made, (value) => (typeof value === 'number' ? value : NaN)),
    longestClaims: Float32Array.from(made, (value) => (typeof value === 'number' ? longestClaim : NaN)),
    states: Uint8Array.from(made, (value) => (value === 'sea' ? 0 : value === 'far' ? 2 : 1)),
    knowsElevation: true,
  };
}
