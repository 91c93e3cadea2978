import { MINIMUM_FEATURE_COUNT } from '../../analysis/night/minimum-features.ts';
import { CURVE_FEATURE, NIGHT_FEATURE_COUNT } from '../../analysis/night/night-features.ts';
import { SUSTAINED_COUNT } from '../../analysis/records/nights.ts';
import { leastAbsolute } from './least-absolute.ts';
import type { SampleNight } from './night-sample.ts';

/** Nights with a booked minimum up to this enter the fit, °C: those that matter and a margin. */
export const FIT_UP_TO_C = 4;

/**
 * Least absolute deviations of `S_h - S_0` on the night's features, duration by duration. Returns the constants by duration and
 * feature; the first row, the minimum itself, is zero.
 */
export function fitCorrection(nights: readonly SampleNight[]): number[][] {
  const chosen = nights.filter((night) => night.curve[0] <= FIT_UP_TO_C);
  const constants = [new Array<number>(NIGHT_FEATURE_COUNT).fill(0)];
  for (let j = 1; j < SUSTAINED_COUNT; j++) {
    const rows = chosen.map(({ features, curve }) => {
      const row = Float64Array.from(features);
      row[CURVE_FEATURE] = curve[j] - curve[0];
      return row;
    });
    constants.push(leastAbsolute(rows, overMinimum(chosen, j)));
  }
  return constants;
}

/** The same on what the minima alone show of a night. */
export function fitMinimaOnly(nights: readonly SampleNight[]): number[][] {
  const chosen = nights.filter((night) => night.curve[0] <= FIT_UP_TO_C);
  const constants = [new Array<number>(MINIMUM_FEATURE_COUNT).fill(0)];
  for (let j = 1; j < SUSTAINED_COUNT; j++) {
    const rows = chosen.map(({ minimumFeatures }) => Float64Array.from(minimumFeatures));
    constants.push(leastAbsolute(rows, overMinimum(chosen, j)));
  }
  return constants;
}

/** Observed `S_h` above the booked minimum, °C. */
function overMinimum(nights: readonly SampleNight[], j: number): Float64Array {
  return Float64Array.from(nights, ({ observed, curve }) => observed[j] - curve[0]);
}
