import type { DemoStation } from './stations.ts';

/** Marks a day without a value in arrays of tenths. */
export const MISSING_TENTHS = -9999;

/**
 * A station's daily readings as its observer wrote them, one entry a day from `firstDay`: tenths of °C, or MISSING_TENTHS.
 * Flags are character codes of the archive's quality flag, 0 for none.
 */
export interface DailyRecord {
  readonly firstDay: number;
  readonly tminTenths: Int16Array;
  readonly tmaxTenths: Int16Array;
  readonly tminFlag: Uint8Array;
  readonly tmaxFlag: Uint8Array;
}

/** Extremes of one observer's day, °C. */
export interface DayExtremes {
  readonly minC: number;
  readonly maxC: number;
  /** Whether the lowest value is the one that was already there at the last reading: a night booked twice. */
  readonly minIsLeftover: boolean;
}

/**
 * Extremes of the hourly curve over the 24 hours that end at the reading hour of day `day` (24: midnight at its end), both
 * ends included since the thermometer is reset to the air's temperature. `null` where the window leaves the curve.
 */
export function dayExtremes(tempC: Float32Array, day: number, readingHour: number): DayExtremes | null {
  const start = day * 24 + readingHour - 24;
  if (start < 0) return null;
  const end = Math.min(tempC.length - 1, start + 24);
  let minC = tempC[start];
  let maxC = minC;
  let minIsLeftover = true;
  for (let i = start + 1; i <= end; i++) {
    const value = tempC[i];
    if (value < minC) {
      minC = value;
      minIsLeftover = false;
    }
    if (value > maxC) maxC = value;
  }
  return { minC, maxC, minIsLeftover };
}

/** A temperature in °C as the station's observer reads and the archive stores it: tenths of °C. */
export function asRead(valueC: number, station: DemoStation): number {
  if (station.reads === 'tenths °C') return Math.round(valueC * 10);
  return Math.round((wholeFahrenheit(valueC) - 32) / 0.18);
}

/** °C to the nearest whole °F. */
export function wholeFahrenheit(valueC: number): number {
  return Math.round(valueC * 1.8 + 32);
}
