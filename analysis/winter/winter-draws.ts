import { seededRandom } from '../math/seeded-random.ts';

/** Winters drawn with replacement, as many as there are: how often each came up. All series of a place share the draws. */
export interface WinterDraws {
  readonly winters: number;
  readonly draws: number;
  /** `times[draw * winters + winter]`. */
  readonly times: Uint16Array;
}

/** @throws RangeError without a winter to draw */
export function winterDraws(winters: number, draws: number, seed: number): WinterDraws {
  if (!(winters >= 1)) throw new RangeError(`Drawing needs at least 1 winter, got ${winters}.`);
  const random = seededRandom(seed);
  const times = new Uint16Array(winters * draws);
  for (let draw = 0; draw < draws; draw++)
    for (let i = 0; i < winters; i++) times[draw * winters + random.index(winters)]++;
  return { winters, draws, times };
}
