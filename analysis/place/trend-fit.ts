import { cholesky, solveCholesky, solveLower, solveUpper } from '../math/positive-definite.ts';

/**
 * A linear trend fitted to data whose errors are correlated: generalised least squares, with the factors kept for
 * everything that is asked of them later. Data `z = X b + e`, `e` of covariance `C` (Cressie 1993, section 3.4.5).
 *
 * A coefficient may have a prior of mean 0 and known variance. That is the same as adding `variance x x'` to `C` and
 * leaving the column out, and it keeps a trend sane where stations are too few to find it.
 */
export class TrendFit {
  /** Cholesky factor `L` of `C`, n x n. */
  readonly factor: Float64Array;
  /** `W = L^-1 X`, one array of length n a column. */
  readonly whitened: readonly Float64Array[];
  /** Cholesky factor of `M = W'W + 1/prior variances`, q x q. */
  readonly normalFactor: Float64Array;

  /**
   * @param covariance `C`, n x n by rows.
   * @param columns `X`, one array of length n a column.
   * @param priorVariance one a column; Infinity where nothing is known.
   * @throws RangeError when `C` or `M` is not positive definite.
   */
  constructor(
    covariance: Float64Array,
    readonly size: number,
    columns: readonly Float64Array[],
    priorVariance: readonly number[],
  ) {
    this.factor = new Float64Array(size * size);
    if (!cholesky(covariance, size, this.factor))
      throw new RangeError(`The covariance of ${size} stations is not positive definite.`);
    this.whitened = columns.map((column) => this.whiten(column));
    const q = columns.length;
    const normal = new Float64Array(q * q);
    for (let j = 0; j < q; j++) {
      for (let m = 0; m <= j; m++)
        normal[j * q + m] = normal[m * q + j] = dot(this.whitened[j]!, this.whitened[m]!);
      normal[j * q + j]! += 1 / priorVariance[j]!;
    }
    this.normalFactor = new Float64Array(q * q);
    if (!cholesky(normal, q, this.normalFactor))
      throw new RangeError(`The ${q} trend columns of ${size} stations say the same twice.`);
  }

  /** `L^-1 z`, in which errors are independent with variance 1. */
  whiten(values: Float64Array): Float64Array {
    const whitened = new Float64Array(this.size);
    solveLower(this.factor, this.size, values, whitened);
    return whitened;
  }

  /** `W' v` for a whitened vector `v`. */
  alongTrend(whitened: Float64Array): Float64Array {
    return Float64Array.from(this.whitened, (column) => dot(column, whitened));
  }

  /** Solves `M x = right` in place. */
  solveNormal(right: Float64Array): Float64Array {
    solveCholesky(this.normalFactor, right.length, right, right);
    return right;
  }

  /** Coefficients `b = M^-1 X' C^-1 z`. */
  coefficients(values: Float64Array): Float64Array {
    return this.solveNormal(this.alongTrend(this.whiten(values)));
  }

  /** `C^-1 (z - X b)`: what each station adds to an estimate per unit of its covariance with the point. */
  dualWeights(values: Float64Array): Float64Array {
    const whitened = this.whiten(values);
    this.addTrend(whitened, this.solveNormal(this.alongTrend(whitened)), -1);
    solveUpper(this.factor, this.size, whitened, whitened);
    return whitened;
  }

  /** Weighted square sum of the residuals, `z' C^-1 (z - X b)`. */
  squareSum(values: Float64Array): number {
    const whitened = this.whiten(values);
    const along = this.alongTrend(whitened);
    const coefficients = this.solveNormal(along.slice());
    return Math.max(0, dot(whitened, whitened) - dot(along, coefficients));
  }

  /** Adds `sign * W coefficients` to a whitened vector. */
  addTrend(whitened: Float64Array, coefficients: Float64Array, sign: 1 | -1): void {
    for (let j = 0; j < coefficients.length; j++) {
      const column = this.whitened[j]!;
      const factor = sign * coefficients[j]!;
      for (let i = 0; i < whitened.length; i++) whitened[i]! += factor * column[i]!;
    }
  }
}

/** Sum of products of two arrays of the same length. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
