/**
 * Sample quantile of ascending values, linear between order statistics (type 7 of Hyndman and Fan 1996, the default of
 * R and NumPy).
 * @param p in 0 to 1.
 * @throws RangeError when there is no value or `p` is outside [0, 1].
 */
export function quantileType7Sorted(ascending: ArrayLike<number>, p: number): number {
  const n = ascending.length;
  if (n === 0) throw new RangeError('A quantile needs at least 1 value, got 0.');
  if (!(p >= 0 && p <= 1)) throw new RangeError(`A quantile's share must lie in 0 to 1, not ${p}.`);
  const position = (n - 1) * p;
  const below = Math.floor(position);
  const low = ascending[below]!;
  const high = ascending[Math.min(below + 1, n - 1)]!;
  const share = position - below;
  return share === 0 || low === high ? low : low + share * (high - low);
}

/** As {@link quantileType7Sorted} for values in any order; leaves them as they are. */
export function quantileType7(values: ArrayLike<number>, p: number): number {
  return quantileType7Sorted(Float64Array.from(values).sort(), p);
}

/** As {@link quantileType7}, but reorders `values` instead of copying: for hot paths with a scratch array. */
export function quantileType7InPlace(values: Float64Array, p: number): number {
  const n = values.length;
  if (n === 0) throw new RangeError('A quantile needs at least 1 value, got 0.');
  if (!(p >= 0 && p <= 1)) throw new RangeError(`A quantile's share must lie in 0 to 1, not ${p}.`);
  const position = (n - 1) * p;
  const below = Math.floor(position);
  const low = select(values, below);
  const share = position - below;
  if (share === 0) return low;
  let high = Infinity;
  for (let i = below + 1; i < n; i++) if (values[i]! < high) high = values[i]!;
  return low === high ? low : low + share * (high - low);
}

/** Hoare's selection: afterwards the value of rank `rank` (from 0) is in its place, smaller ones before it. */
function select(values: Float64Array, rank: number): number {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[(left + right) >> 1]!;
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i <= j) {
        const swap = values[i]!;
        values[i++] = values[j]!;
        values[j--] = swap;
      }
    }
    if (rank <= j) right = j;
    else if (rank >= i) left = i;
    else break;
  }
  return values[rank]!;
}
