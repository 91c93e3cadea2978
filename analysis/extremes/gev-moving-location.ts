import { chiSquareCdf } from '../math/chi-square.ts';
import { minimiseNewton, newtonWorkspace } from '../math/newton.ts';
import { invertPositiveDefinite } from '../math/positive-definite.ts';
import { colesShape, type Gev } from './gev.ts';
import { gevLikelihood, likelihoodPoint } from './gev-likelihood.ts';
import { fitGevByMaximumLikelihood, type LikelihoodFit } from './gev-maximum-likelihood.ts';

/** A GEV whose location moves in a straight line with the winter. */
export interface MovingGev {
  /** Location at `originWinter`, the middle of the winters fitted. */
  readonly location: number;
  readonly originWinter: number;
  /** Change of the location a winter; of negated values, so positive means colder extremes. */
  readonly slope: number;
  readonly slopeError: number | null;
  readonly scale: number;
  /** Hosking's k. */
  readonly k: number;
  readonly logLikelihood: number;
  readonly converged: boolean;
  /** The fit without the slope. */
  readonly stationary: LikelihoodFit;
  /** Likelihood-ratio statistic, chi-square with 1 degree of freedom without a trend, and its chance. */
  readonly ratio: number;
  readonly p: number;
}

/**
 * Fits a GEV with location linear in the winter by maximum likelihood (Coles 2001, chapter 6).
 * @param values negated winter values. @param winters their labels, not all the same.
 * @throws RangeError with fewer than 10 values, all equal, labels of another length or all the same.
 */
export function fitMovingGev(values: ArrayLike<number>, winters: ArrayLike<number>): MovingGev {
  if (winters.length !== values.length)
    throw new RangeError(`${values.length} values need ${values.length} winters, got ${winters.length}.`);
  const stationary = fitGevByMaximumLikelihood(values);
  const y = Float64Array.from(values);
  const n = y.length;
  let originWinter = 0;
  for (let i = 0; i < n; i++) originWinter += winters[i]! / n;
  let spread = 0;
  for (let i = 0; i < n; i++) spread = Math.max(spread, Math.abs(winters[i]! - originWinter));
  if (!(spread > 0)) throw new RangeError(`A trend needs different winters; all are ${winters[0]}.`);
  const t = Float64Array.from({ length: n }, (_, i) => (winters[i]! - originWinter) / spread);
  const { gev } = stationary;
  const x = Float64Array.of(gev.location, Math.log(gev.scale), colesShape(gev.k), 0);
  const point = likelihoodPoint(4);
  const converged = minimiseNewton((at) => gevLikelihood(y, t, at, point), x, point, newtonWorkspace(4));
  const inverse = point.value === Infinity ? null : invertPositiveDefinite(point.hessian, 4);
  const ratio = Math.max(0, 2 * (-point.value - stationary.logLikelihood));
  return {
    location: x[0]!,
    originWinter,
    slope: x[3]! / spread,
    slopeError: inverse && Math.sqrt(inverse[15]!) / spread,
    scale: Math.exp(x[1]!),
    k: colesShape(x[2]!),
    logLikelihood: -point.value,
    converged: converged && stationary.converged,
    stationary,
    ratio,
    p: 1 - chiSquareCdf(ratio, 1),
  };
}

/** The distribution in a given winter. */
export function movingGevAt(moving: MovingGev, winter: number): Gev {
  const location = moving.location + moving.slope * (winter - moving.originWinter);
  return { location, scale: moving.scale, k: moving.k };
}
