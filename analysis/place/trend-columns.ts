import { dot } from './trend-fit.ts';

/** Part of a column's square length that must be new, else it counts as a combination of those before it. */
const NEW_PART = 1e-10;

/**
 * Which columns of a trend matrix a network can bear: from left to right, those that are no linear combination of the
 * ones kept before (elevation where all stations lie equally high repeats the constant), until one fewer than there are
 * stations are kept, so that something is left to judge the trend by. The first column that isn't 0 everywhere is always
 * kept, so a single station has its constant.
 * @param columns n x p by rows, as a network has it.
 * @returns indices of the columns to keep, ascending.
 */
export function bearableColumns(columns: Float64Array, n: number, p: number): number[] {
  const most = Math.max(1, n - 1);
  const kept: number[] = [];
  const directions: Float64Array[] = [];
  for (let j = 0; j < p && kept.length < most; j++) {
    const column = Float64Array.from({ length: n }, (_, i) => columns[i * p + j]!);
    const whole = dot(column, column);
    // Twice, since one sweep of Gram and Schmidt leaves rounding errors of the size of what it takes away.
    for (const direction of [...directions, ...directions]) {
      const part = dot(direction, column);
      for (let i = 0; i < n; i++) column[i]! -= part * direction[i]!;
    }
    const left = dot(column, column);
    if (!(left > NEW_PART * whole)) continue;
    kept.push(j);
    directions.push(column.map((x) => x / Math.sqrt(left)));
  }
  return kept;
}

/** Columns with a prior, and of the free ones those that the network can bear. */
export function keptColumns(trend: Float64Array, n: number, prior: readonly number[]): number[] {
  const p = prior.length;
  const free = prior.flatMap((variance, j) => (variance === Infinity ? [j] : []));
  const freeTrend = Float64Array.from(
    { length: n * free.length },
    (_, at) => trend[Math.floor(at / free.length) * p + free[at % free.length]!]!,
  );
  const kept = new Set(bearableColumns(freeTrend, n, free.length).map((j) => free[j]!));
  return prior.flatMap((variance, j) => (variance < Infinity || kept.has(j) ? [j] : []));
}
