import { SUSTAINED_COUNT } from '../records/nights.ts';
import { CURVE_FEATURE, NIGHT_FEATURE_COUNT } from './night-features.ts';
import constants from './sustained-correction.json';

/** Constants per duration (SUSTAINED_HOURS, the first is the minimum itself) and feature (NIGHT_FEATURES). */
export type CorrectionConstants = readonly (readonly number[])[];

/** The fitted constants; `provenance` in the same file tells stations, years, script and errors. */
export const SUSTAINED_CONSTANTS: CorrectionConstants = constants.constants;

const FLAT = flatten(SUSTAINED_CONSTANTS);

/** Constants as one typed array, duration by duration. */
export function flatten(table: CorrectionConstants): Float64Array {
  return Float64Array.from(table.flat());
}

/**
 * Corrects the curve's sustained cold in place. `levels[0]`, the minimum, stays; every other level becomes the minimum
 * plus a weighted sum of the features, not below the level of the shorter duration and not above `ceiling` (the warmer of
 * the two afternoons: no window centred in the night is warmer).
 */
export function correctSustained(
  levels: Float64Array,
  features: Float64Array,
  ceiling: number,
  constants: Float64Array = FLAT,
): void {
  const tmin = levels[0];
  let floor = tmin;
  const top = Math.max(tmin, ceiling);
  for (let j = 1; j < SUSTAINED_COUNT; j++) {
    features[CURVE_FEATURE] = levels[j] - tmin;
    let above = 0;
    const at = j * NIGHT_FEATURE_COUNT;
    for (let k = 0; k < NIGHT_FEATURE_COUNT; k++) above += constants[at + k] * features[k];
    const level = Math.min(top, Math.max(floor, tmin + above));
    levels[j] = level;
    floor = level;
  }
}
