import type { DailySeries } from '../records/series.ts';
import { dayOfYear } from '../units/calendar.ts';
import { dayLengths } from './day-lengths.ts';
import type { MinimumCourse } from './minimum-features.ts';
import { monthMedians, monthsOf } from './month-medians.ts';
import { neighbourMinima } from './neighbour-minima.ts';

/**
 * Calls `visit` for each night of a cleaned daily record that has a minimum, in order of the days, with the minima around it.
 * Missing neighbours are judged from the station's median of the month.
 *
 * @throws {InputError} when the station has no latitude.
 */
export function eachMinimumNight(
  series: DailySeries,
  visit: (i: number, course: MinimumCourse) => void,
): void {
  const { tminC, firstDay, station } = series;
  const lengths = dayLengths(series);
  const months = monthsOf(firstDay, tminC.length);
  const medians = monthMedians(series, months).tmin;
  const tminOf = neighbourMinima(series, months, medians);
  for (let i = 0; i < tminC.length; i++) {
    if (Number.isNaN(tminC[i])) continue;
    visit(i, {
      tmin: tminC[i],
      tminBefore: tminOf(i - 1, i),
      tminAfter: tminOf(i + 1, i),
      tminTwoBefore: tminOf(i - 2, i),
      medianOfMonth: medians[months[i]],
      dayLength: lengths[i],
      dayOfYear: dayOfYear(firstDay + i),
      lat: station.lat!,
    });
  }
}
