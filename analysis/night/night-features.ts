import type { NightCurve } from './night-curve.ts';

/**
 * What a daily record says about the course of a night, each a number in °C that is used by the correction of sustained
 * cold. "Below" and "above" are measured from the night's minimum. The first, the constant, is followed by the
 * sustained cold of the uncorrected curve, which differs from duration to duration and is therefore filled in by the
 * caller.
 *
 * - Front nights: `nextLower` (the next minimum lies lower, so this one was perhaps booked at midnight, at the end of the
 *   day), `nextLowerCooling` (the same while the afternoon cools), `previousLower`.
 * - Radiation nights: `fall` and its root (from the afternoon before), `riseRoot` and `riseFirst` (to the afternoon after).
 * - Weather between the two: `cooledBefore`, `warmedAfter`, `previousAbove` with its bends, `twoBefore`.
 */
export const NIGHT_FEATURES = [
  'constant',
  'curve',
  'fall',
  'fallRoot',
  'riseRoot',
  'riseFirst',
  'previousAbove',
  'previousAboveFirst',
  'previousAboveFar',
  'previousLower',
  'nextLower',
  'nextLowerCooling',
  'cooledBefore',
  'warmedAfter',
  'twoBefore',
] as const;
export const NIGHT_FEATURE_COUNT = NIGHT_FEATURES.length;
/** Index of the feature that the caller fills in. */
export const CURVE_FEATURE = 1;

/** Writes the features of a night; `tminTwoBefore` is the minimum two days before the night's date, °C. */
export function nightFeatures(curve: NightCurve, tminTwoBefore: number, out: Float64Array): void {
  const { tmin, tmaxBefore, tmaxAfter } = curve;
  const fall = tmaxBefore - tmin;
  const rise = tmaxAfter - tmin;
  const previous = curve.tminBefore - tmin;
  const nextLower = Math.max(0, tmin - curve.tminAfter);
  const warming = tmaxAfter - tmaxBefore;
  out[0] = 1;
  out[2] = fall;
  out[3] = Math.sqrt(Math.max(0, fall));
  out[4] = Math.sqrt(Math.max(0, rise));
  out[5] = Math.min(rise, 8);
  out[6] = previous;
  out[7] = Math.min(Math.max(0, previous), 4);
  out[8] = Math.max(0, previous - 6);
  out[9] = Math.max(0, -previous);
  out[10] = nextLower;
  out[11] = Math.min(nextLower, Math.max(0, -warming));
  out[12] = Math.max(0, curve.tmaxTwoBefore - tmaxBefore);
  out[13] = Math.max(0, warming);
  out[14] = tminTwoBefore - tmin;
}
