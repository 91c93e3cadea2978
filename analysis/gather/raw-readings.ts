import type { RawDailyReadings, RawHourlyReadings } from '../records/series.ts';

/** One station's readings out of one file, before cleaning. */
export type RawReadings = RawDailyReadings | RawHourlyReadings;

export function isHourly(readings: RawReadings): readings is RawHourlyReadings {
  return 'timeUtcH' in readings;
}

export function isDaily(readings: RawReadings): readings is RawDailyReadings {
  return !isHourly(readings);
}
