import {
  COOL_HOURS_UNKNOWN,
  MISSING_HUNDREDTHS,
  SUSTAINED_COUNT,
  type NightTable,
} from '../records/nights.ts';
import type { DayNumber } from '../units/calendar.ts';
import { toHundredths } from '../units/temperature.ts';
import { UNCLEAR } from './night-kind.ts';

/** A night table in which nothing is known yet. */
export function emptyNights(firstNight: DayNumber, count: number): NightTable {
  const missing = (): Int16Array => new Int16Array(count).fill(MISSING_HUNDREDTHS);
  return {
    firstNight,
    count,
    kind: new Uint8Array(count).fill(UNCLEAR),
    basis: new Uint8Array(count),
    tmin: missing(),
    tmaxBefore: missing(),
    tmaxAfter: missing(),
    sustained: Array.from({ length: SUSTAINED_COUNT }, missing),
    coolHours: new Int16Array(count).fill(COOL_HOURS_UNKNOWN),
  };
}

/** °C to stored hundredths, NaN to the missing mark. */
export function storedC(valueC: number): number {
  return Number.isNaN(valueC) ? MISSING_HUNDREDTHS : toHundredths(valueC);
}
