import { KEPT_NIGHT_MAX_C, NIGHT_BASES, SUSTAINED_COUNT, type NightTable } from '../records/nights.ts';
import type { DailySeries } from '../records/series.ts';
import { coolHoursOfNights, curveCoolHours } from './cool-hours.ts';
import { correctSustained } from './correct-sustained.ts';
import { eachCurveNight } from './curve-nights.ts';
import { sustainedOnCurve } from './curve-sustained.ts';
import { NIGHT_FEATURE_COUNT, nightFeatures } from './night-features.ts';
import { kindByDayWind, kindByTemperatures, UNCLEAR } from './night-kind.ts';
import { emptyNights, storedC } from './night-table.ts';

const DAILY = NIGHT_BASES.indexOf('daily');
const ESTIMATED = NIGHT_BASES.indexOf('estimated');

/**
 * Nights of a cleaned daily record: night `i` belongs to day `series.firstDay + i`, its minimum is that day's. Sustained
 * cold comes from the TM curve through the neighbouring extremes, corrected. It is computed for nights that a pack keeps
 * (minimum at or below 10 °C); warmer nights know their minimum only. Missing neighbours are filled from the station's own
 * medians of the month and the night is marked estimated; without any maximum on record only the minimum is known.
 *
 * @throws {InputError} when the station has no latitude.
 */
export function nightsFromDaily(series: DailySeries): NightTable {
  const { tminC, tmaxC, firstDay } = series;
  const count = tminC.length;
  const nights = emptyNights(firstDay, count);
  for (let i = 0; i < count; i++) {
    if (Number.isNaN(tminC[i])) continue;
    nights.tmin[i] = nights.sustained[0][i] = storedC(tminC[i]);
    nights.tmaxAfter[i] = storedC(tmaxC[i]);
    nights.tmaxBefore[i] = storedC(i > 0 ? tmaxC[i - 1] : NaN);
    nights.basis[i] = DAILY;
    nights.kind[i] = kindOfDay(series, i);
  }
  const levels = new Float64Array(SUSTAINED_COUNT);
  const features = new Float64Array(NIGHT_FEATURE_COUNT);
  const cool = { whole: new Float32Array(count).fill(NaN), end: new Float32Array(count).fill(NaN) };
  eachCurveNight(series, (i, curve, tminTwoBefore, filled) => {
    curveCoolHours(curve, cool, i);
    if (filled) nights.basis[i] = ESTIMATED;
    if (curve.tmin > KEPT_NIGHT_MAX_C) return;
    sustainedOnCurve(curve, levels);
    nightFeatures(curve, tminTwoBefore, features);
    correctSustained(levels, features, Math.max(curve.tmaxBefore, curve.tmaxAfter));
    for (let j = 1; j < SUSTAINED_COUNT; j++) nights.sustained[j][i] = storedC(levels[j]);
  });
  coolHoursOfNights(cool, nights.coolHours);
  return nights;
}

/** By the days' mean wind where either is known, else by temperatures. */
function kindOfDay(series: DailySeries, i: number): number {
  const { tminC, tmaxC, windMs } = series;
  const windBefore = i > 0 ? windMs[i - 1] : NaN;
  if (!Number.isNaN(windBefore) || !Number.isNaN(windMs[i])) return kindByDayWind(windBefore, windMs[i]);
  if (i === 0 || Number.isNaN(tmaxC[i - 1] + tmaxC[i])) return UNCLEAR;
  return kindByTemperatures(i > 1 ? tmaxC[i - 2] : NaN, tmaxC[i - 1], tminC[i], tmaxC[i]);
}
