import type { SeededRandom } from '../math/seeded-random.ts';
import type { GevDraws } from './gev-draws.ts';
import { gevQuantile } from './gev.ts';
import { fitMovingGev, movingGevAt, type MovingGev } from './gev-moving-location.ts';

/**
 * How else the curve of one winter could have come out: records of the same winters drawn from the fit and fitted again, each
 * with a location that moves by itself (parametric bootstrap).
 * @param moving the fit. @param winters labels it was made from. @param at the winter wanted.
 */
export function drawMovingGev(
  moving: MovingGev,
  winters: ArrayLike<number>,
  at: number,
  draws: number,
  random: SeededRandom,
): GevDraws {
  const [location, scale, k] = [new Float64Array(draws), new Float64Array(draws), new Float64Array(draws)];
  const values = new Float64Array(winters.length);
  for (let b = 0; b < draws; b++) {
    for (let i = 0; i < values.length; i++)
      values[i] = gevQuantile(random.uniform(), movingGevAt(moving, winters[i]!));
    const gev = movingGevAt(fitMovingGev(values, winters), at);
    location[b] = gev.location;
    scale[b] = gev.scale;
    k[b] = gev.k;
  }
  return { location, scale, k };
}
