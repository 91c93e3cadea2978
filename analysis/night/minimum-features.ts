/**
 * What the minima alone tell of the course of a night, each a number used by the estimate of sustained cold where a record has
 * no maxima. "Above" and "lower" are measured from the night's minimum, °C.
 *
 * - `previousAbove`, `nextAbove` with a bend each: how far the neighbouring nights stayed warmer; `previousLower`,
 *   `nextLower`: the night is a step of a longer cooling or warming.
 * - `depth`: how far the minimum lies below the station's median of the month, `deep` the same where it does.
 * - `dayLength` and `season` (late winter is sunnier than early winter at the same length of day).
 */
export const MINIMUM_FEATURES = [
  'constant',
  'previousAbove',
  'previousAboveFirst',
  'previousLower',
  'nextAbove',
  'nextAboveFirst',
  'nextLower',
  'twoBefore',
  'depth',
  'deep',
  'dayLength',
  'season',
] as const;
export const MINIMUM_FEATURE_COUNT = MINIMUM_FEATURES.length;

/** Beyond what the fitted airports show, features are held, not continued: °C, hours, degrees of latitude. */
const DEPTH_MAX_C = 15;
const DAY_LENGTH_H = [8, 16] as const;
const FULL_SEASON_LAT = 30;

/** The minima around a night, °C; length of the day in hours; day of the year 1-366; latitude in degrees north. */
export interface MinimumCourse {
  readonly tmin: number;
  readonly tminBefore: number;
  readonly tminAfter: number;
  readonly tminTwoBefore: number;
  readonly medianOfMonth: number;
  readonly dayLength: number;
  readonly dayOfYear: number;
  readonly lat: number;
}

/** Writes the features of a night. */
export function minimumFeatures(course: MinimumCourse, out: Float64Array): void {
  const { tmin, lat } = course;
  const previous = course.tminBefore - tmin;
  const next = course.tminAfter - tmin;
  const depth = within(course.medianOfMonth - tmin, -DEPTH_MAX_C, DEPTH_MAX_C);
  out[0] = 1;
  out[1] = Math.max(0, previous);
  out[2] = Math.min(out[1], 4);
  out[3] = Math.max(0, -previous);
  out[4] = Math.max(0, next);
  out[5] = Math.min(out[4], 4);
  out[6] = Math.max(0, -next);
  out[7] = course.tminTwoBefore - tmin;
  out[8] = depth;
  out[9] = Math.max(0, depth);
  out[10] = within(course.dayLength, ...DAY_LENGTH_H);
  out[11] = within(lat / FULL_SEASON_LAT, -1, 1) * Math.sin((2 * Math.PI * course.dayOfYear) / 365.25);
}

function within(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
