import type { DrawStream } from './draw-stream.ts';
import { gevStandardised } from './gev.ts';
import { gevLSkewness, gevWithShape } from './gev-l-moments.ts';
import { shapeThatAllowsRecord } from './pooled-shape.ts';

/** Equally likely parameter sets of one fit: what the interval of anything computed from it comes from. */
export interface GevDraws {
  readonly location: Float64Array;
  readonly scale: Float64Array;
  /** Hosking's k. */
  readonly k: Float64Array;
}

/** What draws are made from: a sample's L-moments, and the shape believed. */
export interface DrawnFit {
  readonly mean: number;
  readonly lScale: number;
  readonly skewness: number;
  readonly k: number;
  readonly kError: number;
  /** Largest value on record: no draw may make it impossible. */
  readonly largest: number;
}

/** Drawn shapes go no further than this. */
const DRAWN_K_LOW = -0.4;
const DRAWN_K_HIGH = 0.5;

/**
 * Seeded parametric bootstrap, turned the right way round. For each draw: a shape from its own uncertainty; a sample
 * of the same length from the GEV of that shape with mean 0 and L-scale 1; then the mean and L-scale that would have
 * given *our* sample L-moments under that sample's errors `m*`, `s*`: L-scale `lScale/s*`, mean `mean - m* lScale/s*`.
 * These errors don't depend on the true location and scale, so for a known shape the interval has its nominal coverage
 * at every record length, where a plain percentile bootstrap is too short. As our sample's L-skewness is known,
 * `m*` and `log s*` are first moved, along their regression on the drawn samples' skewness, to where a sample with our
 * skewness would have them.
 */
export function drawGev(fit: DrawnFit, stream: DrawStream): GevDraws {
  const { draws } = stream;
  const location = new Float64Array(draws);
  const scale = new Float64Array(draws);
  const shape = new Float64Array(draws);
  const surprise = new Float64Array(draws);
  for (let b = 0; b < draws; b++) {
    const k = Math.min(DRAWN_K_HIGH, Math.max(DRAWN_K_LOW, fit.k + fit.kError * stream.normals[b]!));
    standardSample(k, stream, b, moments);
    const unit = gevWithShape(0, 1, k);
    shape[b] = k;
    location[b] = moments[0]! * unit.scale + unit.location;
    scale[b] = Math.log(moments[1]! * unit.scale);
    surprise[b] = moments[2]! - gevLSkewness(k);
  }
  const meanSlope = slope(surprise, location);
  const scaleSlope = slope(surprise, scale);
  for (let b = 0; b < draws; b++) {
    const move = fit.skewness - gevLSkewness(shape[b]!) - surprise[b]!;
    const lScale = fit.lScale * Math.exp(-(scale[b]! + scaleSlope * move));
    const mean = fit.mean - (location[b]! + meanSlope * move) * lScale;
    const gev = gevWithShape(mean, lScale, shapeThatAllowsRecord(shape[b]!, fit.largest, mean, lScale));
    location[b] = gev.location;
    scale[b] = gev.scale;
    shape[b] = gev.k;
  }
  return { location, scale, k: shape };
}

const moments = new Float64Array(3);

/**
 * Mean, L-scale and L-skewness of the stream's sample `b` as one of the standard GEV of shape `k`: `y` falls as the
 * exponential grows. Away from k = 0 the plain formula is exact enough, and faster.
 */
function standardSample(
  k: number,
  { count, logExponentials }: DrawStream,
  b: number,
  out: Float64Array,
): void {
  const straight = Math.abs(k) > 1e-3;
  const from = b * count;
  let b0 = 0;
  let b1 = 0;
  let b2 = 0;
  for (let i = 0; i < count; i++) {
    const log = logExponentials[from + i]!;
    const y = straight ? (1 - Math.exp(k * log)) / k : gevStandardised(-log, k);
    const below = count - 1 - i;
    b0 += y;
    b1 += y * below;
    b2 += y * below * (below - 1);
  }
  b0 /= count;
  b1 /= count * (count - 1);
  b2 /= count * (count - 1) * (count - 2);
  out[0] = b0;
  out[1] = 2 * b1 - b0;
  out[2] = (6 * b2 - 6 * b1 + b0) / out[1];
}

/** Slope of the least-squares line of `y` on `x`. */
function slope(x: Float64Array, y: Float64Array): number {
  let xMean = 0;
  let yMean = 0;
  for (let i = 0; i < x.length; i++) {
    xMean += x[i]! / x.length;
    yMean += y[i]! / x.length;
  }
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < x.length; i++) {
    xx += (x[i]! - xMean) ** 2;
    xy += (x[i]! - xMean) * (y[i]! - yMean);
  }
  return xx > 0 ? xy / xx : 0;
}
