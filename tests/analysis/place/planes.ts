/** Distances between points of a plane, n x n by rows. */
export function planeDistances(x: readonly number[], y: readonly number[]): Float64Array {
  const n = x.length;
  return Float64Array.from({ length: n * n }, (_, at) => {
    const i = Math.floor(at / n);
    const j = at % n;
    return Math.hypot(x[i]! - x[j]!, y[i]! - y[j]!);
  });
}

/** Distances from one point of a plane to others. */
export function planeDistancesTo(
  x: readonly number[],
  y: readonly number[],
  px: number,
  py: number,
): number[] {
  return x.map((_, i) => Math.hypot(x[i]! - px, y[i]! - py));
}

/** A trend that is a constant. */
export function constant(n: number): Float64Array {
  return new Float64Array(n).fill(1);
}

/** A constant and more columns, by rows. */
export function trendOf(n: number, ...columns: (readonly number[])[]): Float64Array {
  const p = columns.length + 1;
  return Float64Array.from({ length: n * p }, (_, at) =>
    at % p === 0 ? 1 : columns[(at % p) - 1]![Math.floor(at / p)]!,
  );
}
