import type { SeededRandom } from '../math/seeded-random.ts';
import { CountedCurve } from './counted-curve.ts';
import { FittedWinters, type WinterFit } from './fitted-winters.ts';
import { drawStream } from './draw-stream.ts';
import { drawGev } from './gev-draws.ts';
import type { Gev } from './gev.ts';
import { gevWithShape } from './gev-l-moments.ts';
import { spreadDraws, type InterpolationError } from './interpolation-error.ts';
import { lMomentsOfAscending, type LMoments } from './l-moments.ts';
import {
  shapeAmong,
  shapeFor,
  shapeThatAllowsRecord,
  type ShapeEstimate,
  type StationSkewness,
} from './pooled-shape.ts';
import { negateMinima } from './winter-minimum.ts';

/** Fewest complete winters that are fitted at all (design 3.5). */
export const FEWEST_WINTERS_TO_FIT = 20;

/** Fewest winters with a cold night from which a curve is drawn; with fewer the fit is the count. */
const FEWEST_VALUES_FOR_CURVE = 5;

/** What a fit needs. */
export interface WintersToFit {
  /** One value a complete winter, °C, in any order; NaN: the winter had no cold night at all. */
  readonly valuesC: ArrayLike<number>;
  /** Neighbouring stations to pool the shape with. */
  readonly neighbours?: readonly StationSkewness[];
  /** Where the winters are estimated between stations: how far they may be off. The shape is then the neighbours' alone. */
  readonly interpolation?: InterpolationError | null;
  /** Starts the draws. The same seed for all fits of a place keeps their ranges in step. */
  readonly seed: number;
  /** Number of draws, 1,000 unless told. */
  readonly draws?: number;
}

/** The curve of one place without its range. */
export interface WinterCurve {
  /** Of the negated values of winters with a cold night. */
  readonly gev: Gev;
  readonly shape: ShapeEstimate;
  /** Share of the winters that have a value. */
  readonly share: number;
  /** L-moments of the negated values, and the largest of them. */
  readonly moments: LMoments;
  readonly largest: number;
  readonly count: number;
}

/**
 * GEV by L-moments on the negated values with the shape of {@link shapeFor} (or {@link shapeAmong} between stations).
 * Winters without a cold night enter as a share.
 * @returns null with fewer than 5 values, or all alike: there is no curve then, only the count
 */
function fitCurve({ valuesC, neighbours, interpolation }: Omit<WintersToFit, 'seed'>): WinterCurve | null {
  const among = interpolation && neighbours?.length ? shapeAmong(neighbours) : null;
  return curveThrough(
    negateMinima(valuesC).sort(),
    valuesC.length,
    (own) => among ?? shapeFor(own, neighbours),
  );
}

/**
 * The curve through negated values in ascending order, of `winters` winters in all.
 * @param shapeOf the shape, given what the values themselves say of it
 * @returns null as {@link fitCurve}
 */
export function curveThrough(
  ascending: Float64Array,
  winters: number,
  shapeOf: (own: StationSkewness) => ShapeEstimate,
): WinterCurve | null {
  const count = ascending.length;
  if (count < FEWEST_VALUES_FOR_CURVE) return null;
  const moments = lMomentsOfAscending(ascending);
  const { mean, scale, skewness } = moments;
  if (!(scale > 0)) return null;
  const largest = ascending[count - 1];
  const shape = shapeOf({ skewness, winters: count });
  return {
    gev: gevWithShape(mean, scale, shapeThatAllowsRecord(shape.k, largest, mean, scale)),
    shape,
    share: count / winters,
    moments,
    largest,
    count,
  };
}

/**
 * Fits the winters of one place: the curve of {@link fitCurve}, and seeded draws for ranges. Chance of a hit = share of
 * winters with a cold night x the curve of those. Where no curve can be drawn the fit is the count.
 * @returns null with fewer than 20 complete winters.
 */
export function fitWinters(input: WintersToFit): WinterFit | null {
  const winters = input.valuesC.length;
  if (winters < FEWEST_WINTERS_TO_FIT) return null;
  const curve = fitCurve(input);
  if (!curve) return new CountedCurve(input.valuesC);
  const { gev, shape, share, moments, largest, count } = curve;
  const draws = input.draws ?? 1000;
  const stream = drawStream(input.seed, draws, count);
  const random = stream.after();
  const { mean, scale: lScale, skewness } = moments;
  const drawn = drawGev({ mean, lScale, skewness, k: shape.k, kError: shape.standardError, largest }, stream);
  const interpolation = input.interpolation ?? null;
  return new FittedWinters(
    gev,
    shape,
    interpolation ? spreadDraws(drawn, interpolation, random) : drawn,
    share,
    share < 1 ? drawShares(share, winters, draws, random) : null,
    interpolation,
  );
}

/** Shares of winters with a cold night in resampled records. */
function drawShares(share: number, winters: number, draws: number, random: SeededRandom): Float64Array {
  return new Float64Array(draws).map(() => {
    let cold = 0;
    for (let i = 0; i < winters; i++) if (random.uniform() < share) cold++;
    return cold / winters;
  });
}
