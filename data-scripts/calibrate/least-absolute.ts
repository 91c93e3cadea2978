import { cholesky, solveCholesky } from '../../analysis/math/positive-definite.ts';

/** Ridge on coefficients of standardised features: holds back what few nights speak for. */
const RIDGE = 5;
/** Deviations below this count as squares, above as absolute values: a front night then weighs no more than it should, °C. */
const SQUARE_BELOW_C = 0.15;
const ROUNDS = 25;

/**
 * Least absolute deviations of `target` (°C) on the features in `rows`, by iterated weighted least squares with a small ridge. The
 * first feature is the constant. `rows` are scaled in place. Returns a constant a feature.
 */
export function leastAbsolute(rows: readonly Float64Array[], target: Float64Array): number[] {
  const size = rows[0].length;
  const scale = deviations(rows, size);
  for (const row of rows) for (let k = 0; k < size; k++) row[k] /= scale[k];
  let weights = new Float64Array(rows.length).fill(1);
  let solution = new Float64Array(size);
  for (let round = 0; round < ROUNDS; round++) {
    solution = weightedRidge(rows, target, weights, size);
    weights = Float64Array.from(rows, (row, i) => {
      const residual = target[i] - dot(row, solution);
      return 1 / Math.sqrt(residual * residual + SQUARE_BELOW_C * SQUARE_BELOW_C);
    });
  }
  return Array.from(solution, (value, k) => value / scale[k]);
}

/** Standard deviation of each feature; 1 for the constant. */
function deviations(rows: readonly Float64Array[], size: number): Float64Array {
  const scale = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    const mean = rows.reduce((sum, row) => sum + row[k], 0) / rows.length;
    scale[k] = Math.sqrt(rows.reduce((sum, row) => sum + (row[k] - mean) ** 2, 0) / rows.length);
  }
  scale[0] = 1;
  return scale;
}

function weightedRidge(
  rows: readonly Float64Array[],
  target: Float64Array,
  weights: Float64Array,
  size: number,
): Float64Array<ArrayBuffer> {
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  rows.forEach((row, i) => {
    for (let a = 0; a < size; a++) {
      const weighted = weights[i] * row[a];
      right[a] += weighted * target[i];
      for (let b = 0; b <= a; b++) matrix[a * size + b] += weighted * row[b];
    }
  });
  for (let a = 1; a < size; a++) matrix[a * size + a] += RIDGE;
  const factor = new Float64Array(size * size);
  if (!cholesky(matrix, size, factor)) throw new Error('the features of the sample depend on each other');
  solveCholesky(factor, size, right, right);
  return right;
}

function dot(row: Float64Array, solution: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < row.length; k++) sum += row[k] * solution[k];
  return sum;
}
