import { KEPT_NIGHT_MAX_C, NIGHT_BASES, SUSTAINED_COUNT, type NightTable } from '../records/nights.ts';
import type { DailySeries } from '../records/series.ts';
import { coolHoursOfNights, curveCoolHours } from './cool-hours.ts';
import { correctSustained } from './correct-sustained.ts';
import { eachCurveNight } from './curve-nights.ts';
import { sustainedOnCurve } from './curve-sustained.ts';
import { hasFewMaxima } from './few-maxima.ts';
import { MINIMUM_FEATURE_COUNT, minimumFeatures } from './minimum-features.ts';
import { eachMinimumNight } from './minimum-nights.ts';
import { NIGHT_FEATURE_COUNT, nightFeatures } from './night-features.ts';
import { kindByDayWind, kindByTemperatures, UNCLEAR } from './night-kind.ts';
import { emptyNights, storedC } from './night-table.ts';
import { sustainedFromMinima } from './sustained-from-minima.ts';

const DAILY = NIGHT_BASES.indexOf('daily');
const ESTIMATED = NIGHT_BASES.indexOf('estimated');

/**
 * Nights of a cleaned daily record: night `i` belongs to day `series.firstDay + i`, its minimum is that day's. Sustained
 * cold comes from the TM curve through the neighbouring extremes, corrected. It is computed for nights that a pack keeps
 * (minimum at or below 10 °C); warmer nights know their minimum only. Missing neighbours are filled from the station's own
 * medians of the month and the night is marked estimated. A record with too few maxima for such medians has nights estimated
 * from the minima around them.
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
  const fewMaxima = hasFewMaxima(series);
  if (fewMaxima) estimateFromMinima(series, nights);
  eachCurveNight(series, (i, curve, tminTwoBefore, filled) => {
    if (filled && fewMaxima) return;
    curveCoolHours(curve, cool, i);
    nights.basis[i] = filled ? ESTIMATED : DAILY;
    if (curve.tmin > KEPT_NIGHT_MAX_C) return;
    sustainedOnCurve(curve, levels);
    nightFeatures(curve, tminTwoBefore, features);
    correctSustained(levels, features, Math.max(curve.tmaxBefore, curve.tmaxAfter));
    for (let j = 1; j < SUSTAINED_COUNT; j++) nights.sustained[j][i] = storedC(levels[j]);
  });
  coolHoursOfNights(cool, nights.coolHours);
  return nights;
}

/** Fills in the sustained cold of all nights as if there were no maxima; two known afternoons still bound it. */
function estimateFromMinima(series: DailySeries, nights: NightTable): void {
  const { tminC, tmaxC } = series;
  const levels = new Float64Array(SUSTAINED_COUNT);
  const features = new Float64Array(MINIMUM_FEATURE_COUNT);
  eachMinimumNight(series, (i, course) => {
    nights.basis[i] = ESTIMATED;
    if (tminC[i] > KEPT_NIGHT_MAX_C) return;
    const warmest = i > 0 ? Math.max(tmaxC[i - 1], tmaxC[i]) : NaN;
    levels[0] = tminC[i];
    minimumFeatures(course, features);
    sustainedFromMinima(levels, features, Number.isNaN(warmest) ? Infinity : warmest);
    for (let j = 1; j < SUSTAINED_COUNT; j++) nights.sustained[j][i] = storedC(levels[j]);
  });
}

/** By the days' mean wind where either is known, else by temperatures. */
function kindOfDay(series: DailySeries, i: number): number {
  const { tminC, tmaxC, windMs } = series;
  const windBefore = i > 0 ? windMs[i - 1] : NaN;
  if (!Number.isNaN(windBefore) || !Number.isNaN(windMs[i])) return kindByDayWind(windBefore, windMs[i]);
  if (i === 0 || Number.isNaN(tmaxC[i - 1] + tmaxC[i])) return UNCLEAR;
  return kindByTemperatures(i > 1 ? tmaxC[i - 2] : NaN, tmaxC[i - 1], tminC[i], tmaxC[i]);
}
