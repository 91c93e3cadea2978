import { SUSTAINED_COUNT } from '../records/nights.ts';
import fitted from './minima-only.json';
import { MINIMUM_FEATURE_COUNT } from './minimum-features.ts';

/** Mean size of the error of `S_4` on nights with frost of airports left out of the fit, °F. */
export const MINIMA_ONLY_S4_ERROR_F: number = fitted.provenance.leftOutFrostNightsF.mae['4'];

/** Constants per duration (SUSTAINED_HOURS, the first is the minimum itself) and feature (MINIMUM_FEATURES). */
export const MINIMA_ONLY_CONSTANTS: readonly (readonly number[])[] = fitted.constants;

const FLAT = Float64Array.from(MINIMA_ONLY_CONSTANTS.flat());

/**
 * Sustained cold of a night of which only minima are known: `levels[0]`, the minimum, stays; every other level becomes the
 * minimum plus a weighted sum of the features, not below the level of the shorter duration and not above `ceiling`, °C.
 */
export function sustainedFromMinima(
  levels: Float64Array,
  features: Float64Array,
  ceiling = Infinity,
  constants: Float64Array = FLAT,
): void {
  const tmin = levels[0];
  const top = Math.max(tmin, ceiling);
  for (let j = 1; j < SUSTAINED_COUNT; j++) {
    let above = 0;
    const at = j * MINIMUM_FEATURE_COUNT;
    for (let k = 0; k < MINIMUM_FEATURE_COUNT; k++) above += constants[at + k] * features[k];
    levels[j] = Math.min(top, Math.max(levels[j - 1], tmin + above));
  }
}
