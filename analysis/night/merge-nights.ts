import {
  COOL_HOURS_UNKNOWN,
  MISSING_HUNDREDTHS,
  SUSTAINED_COUNT,
  type NightTable,
} from '../records/nights.ts';
import { emptyNights } from './night-table.ts';

/**
 * One table from a station's hourly and daily records: a night is the hourly record's where that knows its minimum, else
 * the daily record's. A duration that the hourly night leaves unknown is filled from the daily night, not below what the
 * shorter durations already show. Nights between the two records that neither covers are unknown.
 */
export function mergeNights(hourly: NightTable, daily: NightTable): NightTable {
  if (hourly.count === 0) return daily;
  if (daily.count === 0) return hourly;
  const first = Math.min(hourly.firstNight, daily.firstNight);
  const end = Math.max(hourly.firstNight + hourly.count, daily.firstNight + daily.count);
  const merged = emptyNights(first, end - first);
  copyNights(daily, merged, () => true);
  copyNights(hourly, merged, (i) => hourly.tmin[i] !== MISSING_HUNDREDTHS);
  return merged;
}

function copyNights(from: NightTable, to: NightTable, chosen: (i: number) => boolean): void {
  const shift = from.firstNight - to.firstNight;
  for (let i = 0; i < from.count; i++) {
    const at = i + shift;
    if (from.coolHours[i] !== COOL_HOURS_UNKNOWN) to.coolHours[at] = from.coolHours[i];
    if (!chosen(i)) continue;
    to.kind[at] = from.kind[i];
    to.basis[at] = from.basis[i];
    to.tmin[at] = from.tmin[i];
    if (from.tmaxBefore[i] !== MISSING_HUNDREDTHS) to.tmaxBefore[at] = from.tmaxBefore[i];
    if (from.tmaxAfter[i] !== MISSING_HUNDREDTHS) to.tmaxAfter[at] = from.tmaxAfter[i];
    copySustained(from, i, to, at);
  }
}

function copySustained(from: NightTable, i: number, to: NightTable, at: number): void {
  let floor = MISSING_HUNDREDTHS;
  for (let j = 0; j < SUSTAINED_COUNT; j++) {
    const value = from.sustained[j][i];
    const column = to.sustained[j];
    if (value !== MISSING_HUNDREDTHS) floor = column[at] = value;
    else if (column[at] !== MISSING_HUNDREDTHS) column[at] = Math.max(column[at], floor);
  }
}
