import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { DailySeries } from '../records/series.ts';
import { dayOfYear } from '../units/calendar.ts';
import { dayLengthH } from './sun.ts';

/**
 * Hours of daylight of each day of a record.
 *
 * @throws {InputError} when the station has no latitude.
 */
export function dayLengths(series: DailySeries): Float64Array {
  const { lat, id } = series.station;
  if (lat === null) throw new InputError(t`Station ${id} has no latitude, so its nights have no sunrise.`);
  const byDay = new Float64Array(367);
  for (let day = 1; day <= 366; day++) byDay[day] = dayLengthH(lat, day);
  const lengths = new Float64Array(series.tminC.length);
  let day = dayOfYear(series.firstDay);
  for (let i = 0; i < lengths.length; i++, day++) {
    if (day > 365) day = dayOfYear(series.firstDay + i);
    lengths[i] = byDay[day];
  }
  return lengths;
}
