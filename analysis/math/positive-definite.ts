/**
 * Cholesky factor of a symmetric matrix stored by rows, written into the lower triangle of `factor`.
 * @returns false when the matrix is not positive definite.
 */
export function cholesky(matrix: Float64Array, size: number, factor: Float64Array): boolean {
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * size + j]!;
      for (let m = 0; m < j; m++) sum -= factor[i * size + m]! * factor[j * size + m]!;
      if (i === j) {
        if (!(sum > 1e-14 * Math.abs(matrix[i * size + i]!))) return false;
        factor[i * size + i] = Math.sqrt(sum);
      } else {
        factor[i * size + j] = sum / factor[j * size + j]!;
      }
    }
  }
  return true;
}

/** Solves `matrix x = right` given the Cholesky factor; `x` may be `right` itself. */
export function solveCholesky(
  factor: Float64Array,
  size: number,
  right: Float64Array,
  x: Float64Array,
): void {
  solveLower(factor, size, right, x);
  solveUpper(factor, size, x, x);
}

/** Inverse of a symmetric positive definite matrix stored by rows, or null when it isn't positive definite. */
export function invertPositiveDefinite(matrix: Float64Array, size: number): Float64Array | null {
  const factor = new Float64Array(size * size);
  if (!cholesky(matrix, size, factor)) return null;
  const inverse = new Float64Array(size * size);
  const column = new Float64Array(size);
  for (let j = 0; j < size; j++) {
    column.fill(0);
    column[j] = 1;
    solveCholesky(factor, size, column, column);
    for (let i = 0; i < size; i++) inverse[i * size + j] = column[i]!;
  }
  return inverse;
}

/** Solves `L x = right` for the lower triangle `L` of a Cholesky factor; `x` may be `right` itself. */
export function solveLower(factor: Float64Array, size: number, right: Float64Array, x: Float64Array): void {
  for (let i = 0; i < size; i++) {
    const row = i * size;
    let sum = right[i]!;
    for (let m = 0; m < i; m++) sum -= factor[row + m]! * x[m]!;
    x[i] = sum / factor[row + i]!;
  }
}

/** Natural logarithm of the determinant of a matrix, from its Cholesky factor. */
export function logDeterminant(factor: Float64Array, size: number): number {
  let sum = 0;
  for (let i = 0; i < size; i++) sum += Math.log(factor[i * size + i]!);
  return 2 * sum;
}

/** Solves `L' x = right` for the lower triangle `L` of a Cholesky factor; `x` may be `right` itself. */
export function solveUpper(factor: Float64Array, size: number, right: Float64Array, x: Float64Array): void {
  if (x !== right) x.set(right);
  // By rows of L, which lie together in memory.
  for (let i = size - 1; i >= 0; i--) {
    const row = i * size;
    const solved = x[i]! / factor[row + i]!;
    x[i] = solved;
    for (let m = 0; m < i; m++) x[m]! -= factor[row + m]! * solved;
  }
}
