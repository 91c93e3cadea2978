/** First L-moments of a sample or a distribution: mean, L-scale, and the ratios L-skewness and L-kurtosis. */
export interface LMoments {
  readonly mean: number;
  /** L-scale l2 (half the mean difference of two values), in the values' unit. */
  readonly scale: number;
  /** L-skewness t3 = l3/l2. */
  readonly skewness: number;
  /** L-kurtosis t4 = l4/l2. */
  readonly kurtosis: number;
}

/** Smallest sample that has all four L-moments. */
export const SMALLEST_L_MOMENT_SAMPLE = 4;

/**
 * Sample L-moments from unbiased probability-weighted moments (Hosking and Wallis 1997, M11).
 * All-equal values have scale 0 and ratios 0.
 * @throws RangeError with fewer than 4 values, or a value that is not finite.
 */
export function sampleLMoments(values: ArrayLike<number>): LMoments {
  return lMomentsOfAscending(Float64Array.from(values).sort());
}

/** The same from values in ascending order, which are only read. */
export function lMomentsOfAscending(ascending: Float64Array): LMoments {
  const n = ascending.length;
  if (n < SMALLEST_L_MOMENT_SAMPLE)
    throw new RangeError(`L-moments need at least ${SMALLEST_L_MOMENT_SAMPLE} values, got ${n}.`);
  if (!Number.isFinite(ascending[0]) || !Number.isFinite(ascending[n - 1]))
    throw new RangeError('L-moments need finite values.');
  // Taken from the middle value, so that a large common level can't eat the digits of the differences.
  const middle = ascending[n >> 1]!;
  let b0 = 0;
  let b1 = 0;
  let b2 = 0;
  let b3 = 0;
  for (let i = 0; i < n; i++) {
    const x = ascending[i]! - middle;
    b0 += x;
    b1 += x * i;
    b2 += x * i * (i - 1);
    b3 += x * i * (i - 1) * (i - 2);
  }
  b0 /= n;
  b1 /= n * (n - 1);
  b2 /= n * (n - 1) * (n - 2);
  b3 /= n * (n - 1) * (n - 2) * (n - 3);
  const l2 = 2 * b1 - b0;
  const equal = ascending[0] === ascending[n - 1];
  return {
    mean: middle + b0,
    scale: equal ? 0 : l2,
    skewness: equal ? 0 : (6 * b2 - 6 * b1 + b0) / l2,
    kurtosis: equal ? 0 : (20 * b3 - 30 * b2 + 12 * b1 - b0) / l2,
  };
}
