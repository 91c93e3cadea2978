import type { SeededRandom } from '../math/seeded-random.ts';
import type { GevDraws } from './gev-draws.ts';

/**
 * How far the winters of a place without a station may be off as a whole: one error of their mean and one of their scale,
 * shared by all winters. Standard errors.
 */
export interface InterpolationError {
  /** Mean of the winters, °C, about which the scale turns. */
  readonly meanC: number;
  readonly meanErrorC: number;
  /** Of the logarithm of the scale. */
  readonly logScaleError: number;
  /** Correlation of the two errors, 0 where left out: hollows are colder than thought and vary more, so it is below 0. */
  readonly correlation?: number;
}

/** Five-point Gauss-Hermite rule for a standard normal: Abramowitz and Stegun 1964, table 25.10, abscissae times sqrt 2. */
const NODES = [-2.8569700138728, -1.3556261799742659, 0, 1.3556261799742659, 2.8569700138728];
const NODE_WEIGHTS = [
  0.011257411327720691, 0.22207592200561266, 0.5333333333333333, 0.22207592200561266, 0.011257411327720691,
];

/** Standard error of a level at `levelC`: of the mean, of the scale by how far the level lies from the
 * mean, and of both together. */
export function levelErrorC(
  { meanC, meanErrorC, logScaleError, correlation = 0 }: InterpolationError,
  levelC: number,
): number {
  const stretch = logScaleError * (levelC - meanC);
  const square = meanErrorC ** 2 + stretch ** 2 + 2 * correlation * meanErrorC * stretch;
  return Math.sqrt(Math.max(0, square));
}

/**
 * Chance of a winter at or below a threshold when the winters may be off: the mean of the curve's chance over the error.
 * Thresholds in the tail get a larger chance than the curve alone gives them, as they should: an error towards the cold
 * adds more than one towards the warm takes away.
 * @param chance of the curve as it stands, by threshold in °C
 */
export function averagedChance(
  chance: (thresholdC: number) => number,
  thresholdC: number,
  error: InterpolationError,
): number {
  const step = levelErrorC(error, thresholdC);
  let sum = 0;
  for (let i = 0; i < NODES.length; i++) sum += NODE_WEIGHTS[i]! * chance(thresholdC + NODES[i]! * step);
  return sum;
}

/** Draws of the curve (of negated values) moved and stretched, each by a pair of errors of its own. */
export function spreadDraws(draws: GevDraws, error: InterpolationError, random: SeededRandom): GevDraws {
  const location = draws.location.slice();
  const scale = draws.scale.slice();
  const { correlation = 0 } = error;
  const apart = Math.sqrt(1 - correlation ** 2);
  for (let b = 0; b < location.length; b++) {
    const warmer = random.normal();
    const wider = correlation * warmer + apart * random.normal();
    const stretch = Math.exp(error.logScaleError * wider);
    location[b] = -error.meanC - error.meanErrorC * warmer + stretch * (location[b]! + error.meanC);
    scale[b] = stretch * scale[b]!;
  }
  return { location, scale, k: draws.k };
}
