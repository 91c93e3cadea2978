import { correlationAt, type Covariance, type CovarianceKind } from './covariance.ts';

/** Mean half squared difference of the pairs of stations about one distance apart. */
export interface VariogramBin {
  readonly pairs: number;
  /** Mean distance of those pairs, km. */
  readonly meanKm: number;
  readonly semivariance: number;
}

/**
 * Empirical semivariogram by the method of moments: over the pairs of a distance class, half the mean of their squared
 * differences (Matheron 1962; Cressie 1993, section 2.4). Classes are `(i w, (i+1) w]`; pairs at one place go to the first;
 * empty classes are left out.
 * @param distancesKm n x n by rows.
 * @param values residuals from the trend, or the values themselves when the trend is constant, n.
 * @param binKm width `w` of a class, km.
 * @param cutoffKm pairs beyond are left out, km; a third of the network's diameter is usual.
 */
export function empiricalVariogram(
  distancesKm: Float64Array,
  values: ArrayLike<number>,
  binKm: number,
  cutoffKm: number,
): VariogramBin[] {
  if (!(binKm > 0 && cutoffKm > 0 && cutoffKm < Infinity))
    throw new RangeError(`Distance classes of ${binKm} km up to ${cutoffKm} km can't be made.`);
  const n = values.length;
  const count = Math.ceil(cutoffKm / binKm);
  const pairs = new Float64Array(count);
  const distance = new Float64Array(count);
  const squares = new Float64Array(count);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const h = distancesKm[i * n + j]!;
      if (h > cutoffKm) continue;
      const bin = Math.min(count - 1, Math.max(0, Math.ceil(h / binKm) - 1));
      const difference = values[i]! - values[j]!;
      pairs[bin]!++;
      distance[bin]! += h;
      squares[bin]! += difference * difference;
    }
  }
  const bins: VariogramBin[] = [];
  for (let bin = 0; bin < count; bin++) {
    const here = pairs[bin]!;
    if (here > 0)
      bins.push({
        pairs: here,
        meanKm: distance[bin]! / here,
        semivariance: squares[bin]! / (2 * here),
      });
  }
  return bins;
}

/** A covariance fitted to a variogram, and the weighted sum of squares it leaves. */
export interface VariogramFit {
  readonly covariance: Covariance;
  readonly error: number;
}

/** Ranges looked at first, as parts of the largest distance; the best is then refined. */
const RANGE_STEPS = 60;
const SHORTEST_RANGE = 0.02;
const LONGEST_RANGE = 5;

/**
 * Weighted least squares fit of sill, range and nugget, none negative, with weights `pairs/meanKm^2`, which count the many
 * and the near (gstat's `fit.method = 7`; after Cressie 1985, Mathematical Geology 17(5)). For a given range sill and nugget
 * follow in closed form, so that only the range is searched, and no start is needed. Ranges: 0.02 to 5 times the largest distance.
 * @throws RangeError with fewer than 3 bins at a distance above 0.
 */
export function fitVariogram(bins: readonly VariogramBin[], kind: CovarianceKind): VariogramFit {
  const used = bins.filter((bin) => bin.meanKm > 0);
  if (used.length < 3)
    throw new RangeError(`A variogram fit needs at least 3 distance classes, got ${used.length}.`);
  const farthest = Math.max(...used.map((bin) => bin.meanKm));
  const at = (logRange: number): VariogramFit => fitForRange(used, kind, Math.exp(logRange));
  const from = Math.log(SHORTEST_RANGE * farthest);
  const step = (Math.log(LONGEST_RANGE * farthest) - from) / RANGE_STEPS;
  let best = 0;
  const tried = Array.from({ length: RANGE_STEPS + 1 }, (_, i) => at(from + i * step));
  tried.forEach((fit, i) => {
    if (fit.error < tried[best]!.error) best = i;
  });
  // Golden section between the neighbours of the best.
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = from + Math.max(0, best - 1) * step;
  let high = from + Math.min(RANGE_STEPS, best + 1) * step;
  let left = at(high - golden * (high - low));
  let right = at(low + golden * (high - low));
  while (high - low > 1e-9) {
    if (left.error < right.error) {
      high = Math.log(right.covariance.rangeKm);
      right = left;
      left = at(high - golden * (high - low));
    } else {
      low = Math.log(left.covariance.rangeKm);
      left = right;
      right = at(low + golden * (high - low));
    }
  }
  return [left, right, tried[best]!].reduce((a, b) => (b.error < a.error ? b : a));
}

/** Best sill and nugget, none negative, for one range. */
function fitForRange(bins: readonly VariogramBin[], kind: CovarianceKind, rangeKm: number): VariogramFit {
  let w = 0;
  let wf = 0;
  let wff = 0;
  let wy = 0;
  let wfy = 0;
  let wyy = 0;
  for (const { pairs, meanKm, semivariance } of bins) {
    const weight = pairs / (meanKm * meanKm);
    const lost = 1 - correlationAt(kind, meanKm, rangeKm);
    w += weight;
    wf += weight * lost;
    wff += weight * lost * lost;
    wy += weight * semivariance;
    wfy += weight * lost * semivariance;
    wyy += weight * semivariance * semivariance;
  }
  const candidates: [nugget: number, sill: number][] = [
    [0, Math.max(0, wfy / wff)],
    [Math.max(0, wy / w), 0],
  ];
  const determinant = w * wff - wf * wf;
  if (determinant > 1e-12 * w * wff) {
    const nugget = (wff * wy - wf * wfy) / determinant;
    const sill = (w * wfy - wf * wy) / determinant;
    if (nugget >= 0 && sill >= 0) candidates.push([nugget, sill]);
  }
  const fits = candidates.map(([nugget, sill]) => {
    const squares =
      wyy - 2 * (nugget * wy + sill * wfy) + nugget * nugget * w + 2 * nugget * sill * wf + sill * sill * wff;
    return { covariance: { kind, sill, rangeKm, nugget }, error: Math.max(0, squares) };
  });
  return fits.reduce((a, b) => (b.error < a.error ? b : a));
}
