import { normalQuantile } from '../math/normal.ts';

/** Range of a chance. */
export interface ChanceRange {
  readonly low: number;
  readonly high: number;
}

/**
 * Wilson's score interval of a share `hits`/`trials` (Wilson 1927).
 * @param level two-sided confidence, 0.9 unless told.
 * @throws RangeError when `trials` is below 1, or `hits` outside 0 to `trials`, or the level outside (0, 1).
 */
export function wilsonInterval(hits: number, trials: number, level = 0.9): ChanceRange {
  if (!(trials >= 1)) throw new RangeError(`A share needs at least 1 winter, got ${trials}.`);
  if (!(hits >= 0 && hits <= trials)) throw new RangeError(`Hits must lie in 0 to ${trials}, got ${hits}.`);
  if (!(level > 0 && level < 1)) throw new RangeError(`A level must lie between 0 and 1, not ${level}.`);
  const z = normalQuantile((1 + level) / 2);
  const share = hits / trials;
  const widen = (z * z) / trials;
  const centre = (share + widen / 2) / (1 + widen);
  const half = (z / (1 + widen)) * Math.sqrt((share * (1 - share)) / trials + widen / (4 * trials));
  return {
    low: hits === 0 ? 0 : Math.max(0, centre - half),
    high: hits === trials ? 1 : Math.min(1, centre + half),
  };
}
