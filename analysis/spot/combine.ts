import { fahrenheitDifferenceToCelsius } from '../units/temperature.ts';
import type { Coefficients } from './coefficients.ts';
import { MECHANISM_IDS } from './mechanism.ts';
import { SLOT } from './spot-shares.ts';

type Kind = 'calm' | 'windy';

/** Warm offsets of a spot sum to no more than +8 °F on calm and +3 °F on windy nights (handbook). */
export const WARM_CAP_C: Readonly<Record<Kind, number>> = {
  calm: fahrenheitDifferenceToCelsius(8),
  windy: fahrenheitDifferenceToCelsius(3),
};
/** No spot is colder than the coldest end of the table: a low spot on calm, a crest on windy nights. */
export const COLD_FLOOR_C: Readonly<Record<Kind, number>> = {
  calm: fahrenheitDifferenceToCelsius(-8),
  windy: fahrenheitDifferenceToCelsius(-2),
};

const COUNT = MECHANISM_IDS.length;
const WARM = SLOT['warm-wall'];
const HEATED = SLOT['heated-wall'];
const SHELTER = SLOT['wind-shelter'];
const SKY = SLOT['sky-hidden'];

/** One kind of night's coefficients by `SLOT`, °C, and working room for one point. */
export interface KindWeights {
  readonly centre: Float64Array;
  /** How far the low and the high end lie from the centre, both 0 or more. */
  readonly down: Float64Array;
  readonly up: Float64Array;
  readonly capC: number;
  readonly floorC: number;
  /** Share of each mechanism that counts, overwritten at each point. */
  readonly counted: Float64Array;
  /** Low end, centre and high end of the sum, °C, and 1 where the cap or the floor holds the centre. */
  readonly total: Float64Array;
}

export function weightsOf(coefficients: Coefficients, kind: Kind): KindWeights {
  const gains = MECHANISM_IDS.map((id) => coefficients[id].gain[kind]);
  return {
    centre: Float64Array.from(gains, ({ centreC }) => centreC),
    down: Float64Array.from(gains, ({ lowC, centreC }) => centreC - lowC),
    up: Float64Array.from(gains, ({ centreC, highC }) => highC - centreC),
    capC: WARM_CAP_C[kind],
    floorC: COLD_FLOOR_C[kind],
    counted: new Float64Array(COUNT),
    total: new Float64Array(4),
  };
}

/**
 * What upright things do counts once: a wall keeps a spot warm by its own warmth, by hiding cold sky and by holding off
 * the wind, and the table's rows beside a wall hold all three. Of walls' warmth (sun and heating together), shelter and
 * the sky they hide, the largest counts; the sky hidden by crowns and roofs beyond them counts besides.
 */
function countOnce({ centre, counted }: KindWeights, shares: Float64Array, overheadShare: number): void {
  counted.set(shares);
  const walls = centre[WARM] * shares[WARM] + centre[HEATED] * shares[HEATED];
  const shelter = centre[SHELTER] * shares[SHELTER];
  const sky = centre[SKY] * (shares[SKY] - overheadShare);
  if (sky > walls && sky > shelter) {
    counted[WARM] = counted[HEATED] = counted[SHELTER] = 0;
    return;
  }
  counted[SKY] = overheadShare;
  if (shelter > walls) counted[WARM] = counted[HEATED] = 0;
  else counted[SHELTER] = 0;
}

/**
 * Sums the mechanisms at a point into `weights.total`. Centres add; warm ones up to the cap. The ends: each mechanism's
 * distances from its centre add as root of the sum of squares, as errors that know nothing of each other; those of sun
 * and heating at a wall add plainly, because they come from one row. The ends keep to cap and floor too.
 */
export function combine(weights: KindWeights, shares: Float64Array, overheadShare: number): void {
  countOnce(weights, shares, overheadShare);
  const { centre, down, up, counted, total, capC, floorC } = weights;
  let warm = 0;
  let cold = 0;
  let downSquares = 2 * counted[WARM] * down[WARM] * counted[HEATED] * down[HEATED];
  let upSquares = 2 * counted[WARM] * up[WARM] * counted[HEATED] * up[HEATED];
  for (let at = 0; at < COUNT; at++) {
    const share = counted[at];
    const gain = share * centre[at];
    if (gain > 0) warm += gain;
    else cold += gain;
    const below = share * (share < 0 ? up[at] : down[at]);
    const above = share * (share < 0 ? down[at] : up[at]);
    downSquares += below * below;
    upSquares += above * above;
  }
  const sum = Math.min(capC, warm) + cold;
  const middle = Math.max(floorC, sum);
  total[0] = Math.max(floorC, middle - Math.sqrt(downSquares));
  total[1] = middle;
  total[2] = Math.min(capC, middle + Math.sqrt(upSquares));
  total[3] = warm > capC || sum < floorC ? 1 : 0;
}
