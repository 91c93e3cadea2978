import { NIGHT_KINDS, type NightKind } from '../records/nights.ts';

export const CALM = NIGHT_KINDS.indexOf('calm' satisfies NightKind);
export const WINDY = NIGHT_KINDS.indexOf('windy' satisfies NightKind);
export const UNCLEAR = NIGHT_KINDS.indexOf('unclear' satisfies NightKind);

/** Mean wind beside the night's lowest reading, m/s at 10 m: 5 and 10 miles an hour, the trade's bounds of a radiation night and an advective freeze. */
const CALM_BELOW_MS = 2.24;
const WINDY_FROM_MS = 4.47;
/** The same for the mean wind of whole days, which hold the windier afternoon; chosen on hourly airports (night-accuracy.json). */
const CALM_DAY_UP_TO_MS = 3;
const WINDY_DAY_FROM_MS = 5;

/** Rules of `handbook/microsites.md`, °C. */
const CALM_RANGE_FROM_C = 11;
const CALM_CHANGE_BELOW_C = 4;
const WINDY_DROP_FROM_C = 8;
const WINDY_RANGE_BELOW_C = 7;
const WINDY_TMAX_BELOW_C = 4;

/** Kind by the mean wind, m/s, of the hours around the night's lowest reading. */
export function kindByNightWind(windMs: number): number {
  if (windMs < CALM_BELOW_MS) return CALM;
  return windMs >= WINDY_FROM_MS ? WINDY : UNCLEAR;
}

/** Kind by the mean wind, m/s, of the days before and after the night's midnight (one of them may be NaN, not both). */
export function kindByDayWind(before: number, after: number): number {
  const mean = Number.isNaN(before) ? after : Number.isNaN(after) ? before : (before + after) / 2;
  if (mean <= CALM_DAY_UP_TO_MS) return CALM;
  return mean >= WINDY_DAY_FROM_MS ? WINDY : UNCLEAR;
}

/**
 * Kind by temperatures alone, °C: a day's range of 11 or more with afternoons alike is calm; an afternoon 8 or more colder
 * than the day before, or a range under 7 on a day that stays below 4, is windy; else unclear. `tmaxTwoBefore` and
 * `tmaxBefore` belong to the two days before the night's date, `tmin` and `tmaxAfter` to its own day; the first may be NaN.
 */
export function kindByTemperatures(
  tmaxTwoBefore: number,
  tmaxBefore: number,
  tmin: number,
  tmaxAfter: number,
): number {
  const range = tmaxAfter - tmin;
  if (tmaxTwoBefore - tmaxBefore >= WINDY_DROP_FROM_C) return WINDY;
  if (tmaxBefore - tmaxAfter >= WINDY_DROP_FROM_C) return WINDY;
  if (range < WINDY_RANGE_BELOW_C && tmaxAfter < WINDY_TMAX_BELOW_C) return WINDY;
  if (range >= CALM_RANGE_FROM_C && Math.abs(tmaxAfter - tmaxBefore) < CALM_CHANGE_BELOW_C) return CALM;
  return UNCLEAR;
}
