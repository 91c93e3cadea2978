import type { DailySeries } from '../records/series.ts';
import { dayLengths } from './day-lengths.ts';
import { monthMedians, monthsOf } from './month-medians.ts';
import { neighbourMinima } from './neighbour-minima.ts';
import { NightCurve } from './night-curve.ts';

/**
 * Called for each night with its curve. `tminTwoBefore` is the minimum two days before the night's date, °C; `filled` tells
 * that a value next to the night was missing and is filled in.
 */
export type CurveVisitor = (i: number, curve: NightCurve, tminTwoBefore: number, filled: boolean) => void;

/**
 * Lays the curve through each night of a cleaned daily record that has a minimum, in order of the days. The one curve object
 * is filled again for each. Missing neighbours come from the station's own medians of the month. A record without
 * a day that has both extremes yields no curve.
 *
 * @throws {InputError} when the station has no latitude.
 */
export function eachCurveNight(series: DailySeries, visit: CurveVisitor): void {
  const { tminC, tmaxC, firstDay } = series;
  const count = tminC.length;
  const lengths = dayLengths(series);
  const months = monthsOf(firstDay, count);
  const medians = monthMedians(series, months);
  if (medians.range.every(Number.isNaN)) return;
  const curve = new NightCurve();

  const tminOf = neighbourMinima(series, months, medians.tmin);
  const tmaxOf = (i: number, tmin: number, beside: number): number => {
    const known = i >= 0 && i < count ? tmaxC[i] : NaN;
    return Number.isNaN(known) ? tmin + medians.range[months[beside]] : Math.max(known, tmin);
  };

  for (let i = 0; i < count; i++) {
    const tmin = tminC[i];
    if (Number.isNaN(tmin)) continue;
    const tminTwoBefore = tminOf(i - 2, i);
    curve.setDayLength(lengths[i]);
    curve.tmin = tmin;
    curve.tminBefore = tminOf(i - 1, i);
    curve.tminAfter = tminOf(i + 1, i);
    curve.tmaxTwoBefore = tmaxOf(i - 2, tminTwoBefore, i);
    curve.tmaxBefore = tmaxOf(i - 1, curve.tminBefore, i);
    curve.tmaxAfter = tmaxOf(i, tmin, i);
    const edge = i === 0 || i === count - 1;
    const filled = edge || Number.isNaN(tmaxC[i - 1] + tmaxC[i] + tminC[i - 1] + tminC[i + 1]);
    visit(i, curve, tminTwoBefore, filled);
  }
}
