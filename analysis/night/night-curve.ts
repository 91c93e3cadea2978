import { sunriseH, sunsetH } from './sun.ts';

/** Share of the day's fall, from its maximum to the next minimum, that is over at sunset (Cesaraccio and others 2001, S39). */
const FALL_BY_SUNSET = 0.39;
/** Hours from the day's maximum to sunset (S39). */
const MAXIMUM_BEFORE_SUNSET_H = 4;
/** The curve needs a forenoon and a night: outside this range (high latitudes) the day is taken as so long. */
const SHORTEST_DAY_H = 6;
const LONGEST_DAY_H = 20;
const PER_QUARTER_TURN = 2 / Math.PI;

/**
 * The TM curve (Cesaraccio and others 2001, S39) through two days around one night. Times are hours of local solar time
 * after the midnight that opens the night's date: the night runs from -12 to 12, the curve from -24 to 24.
 * Temperatures are °C. One object is filled again for each night: making new ones would cost more than the arithmetic.
 */
export class NightCurve {
  tmaxTwoBefore = 0;
  tminBefore = 0;
  tmaxBefore = 0;
  tmin = 0;
  tmaxAfter = 0;
  tminAfter = 0;
  sunrise = 0;
  sunset = 0;
  /** Time of the maximum. */
  warmest = 0;
  nightLength = 0;

  /** Day length in hours; all days of the curve share it. Each maximum must not lie below the minimum of its own day. */
  setDayLength(dayLength: number): void {
    const length = Math.min(LONGEST_DAY_H, Math.max(SHORTEST_DAY_H, dayLength));
    this.sunrise = sunriseH(length);
    this.sunset = sunsetH(length);
    this.warmest = this.sunset - MAXIMUM_BEFORE_SUNSET_H;
    this.nightLength = 24 - length;
  }
}

/** Temperature at sunset of a day with maximum `tmax` before a night with minimum `tmin`, °C. */
export function sunsetTemperatureC(tmax: number, tmin: number): number {
  return tmax - FALL_BY_SUNSET * (tmax - tmin);
}

/** Temperature of the curve at time `t`, -24 to 24 h, °C. */
export function curveTemperatureC(curve: NightCurve, t: number): number {
  if (t <= curve.sunrise - 24)
    return eveningTemperatureC(curve, t + 48, curve.tmaxTwoBefore, curve.tminBefore);
  if (t <= curve.warmest - 24) return morningTemperatureC(curve, t + 24, curve.tminBefore, curve.tmaxBefore);
  if (t <= curve.sunrise) return eveningTemperatureC(curve, t + 24, curve.tmaxBefore, curve.tmin);
  if (t <= curve.warmest) return morningTemperatureC(curve, t, curve.tmin, curve.tmaxAfter);
  return eveningTemperatureC(curve, t, curve.tmaxAfter, curve.tminAfter);
}

function morningTemperatureC(curve: NightCurve, t: number, tmin: number, tmax: number): number {
  const phase = (t - curve.sunrise) / (curve.warmest - curve.sunrise);
  return tmin + (tmax - tmin) * Math.sin(phase / PER_QUARTER_TURN);
}

function eveningTemperatureC(curve: NightCurve, t: number, tmax: number, tmin: number): number {
  const atSunset = sunsetTemperatureC(tmax, tmin);
  if (t > curve.sunset) {
    return atSunset + (tmin - atSunset) * Math.sqrt((t - curve.sunset) / curve.nightLength);
  }
  const phase = (t - curve.warmest) / MAXIMUM_BEFORE_SUNSET_H;
  return atSunset + (tmax - atSunset) * Math.cos(phase / PER_QUARTER_TURN);
}

/** Hours after sunrise at which the rise from `tmin` to `tmax` passes `level`, for tmin <= level <= tmax, tmin < tmax. */
export function riseToH(curve: NightCurve, level: number, tmin: number, tmax: number): number {
  return (curve.warmest - curve.sunrise) * PER_QUARTER_TURN * Math.asin((level - tmin) / (tmax - tmin));
}

/** Hours before the next sunrise at which the way from `tmax` to `tmin` passes `level`, for level between the two, tmin != tmax. */
export function fallBeforeSunriseH(curve: NightCurve, level: number, tmax: number, tmin: number): number {
  const atSunset = sunsetTemperatureC(tmax, tmin);
  const aboveSunset = (level - atSunset) / (tmax - atSunset);
  if (aboveSunset > 0) {
    return (
      curve.nightLength + MAXIMUM_BEFORE_SUNSET_H * PER_QUARTER_TURN * Math.asin(Math.min(1, aboveSunset))
    );
  }
  const fallen = (level - atSunset) / (tmin - atSunset);
  return curve.nightLength * (1 - fallen * fallen);
}

/**
 * Hours of the curve at or below `level` from time `from` to time `to` (-24 <= from <= to <= 24), closed form
 * (handbook daily-to-hourly, section 3).
 */
export function curveHoursAtOrBelow(curve: NightCurve, level: number, from: number, to: number): number {
  let hours = 0;
  for (let segment = 0; segment < SEGMENTS; segment++) {
    const start = Math.max(from, segmentStart(curve, segment, level));
    const end = Math.min(to, segmentEnd(curve, segment, level));
    if (end > start) hours += end - start;
  }
  return hours;
}

/** The curve has five monotone pieces: night, forenoon, night, forenoon, night. */
export const SEGMENTS = 5;

/** Start of the part of a piece at or below `level`; past {@link segmentEnd} when there is none. */
export function segmentStart(curve: NightCurve, segment: number, level: number): number {
  const begin = pieceBegin(curve, segment);
  const first = pieceFirst(curve, segment);
  if (first <= level) return begin;
  const last = pieceLast(curve, segment);
  const end = pieceEnd(curve, segment);
  if (last > level) return end;
  return segment % 2 === 0 ? end - fallBeforeSunriseH(curve, level, first, last) : end;
}

/** End of the part of a piece at or below `level`. */
export function segmentEnd(curve: NightCurve, segment: number, level: number): number {
  const first = pieceFirst(curve, segment);
  const last = pieceLast(curve, segment);
  const end = pieceEnd(curve, segment);
  if (last <= level) return end;
  const begin = pieceBegin(curve, segment);
  if (first > level) return begin;
  if (segment % 2 === 0) return end - fallBeforeSunriseH(curve, level, first, last);
  return begin + riseToH(curve, level, first, last);
}

function pieceBegin(curve: NightCurve, segment: number): number {
  const day = 24 * ((segment + 1) >> 1) - 48;
  return segment % 2 === 0 ? day + curve.warmest : day + curve.sunrise;
}

function pieceEnd(curve: NightCurve, segment: number): number {
  const day = 24 * (segment >> 1) - 24;
  return segment % 2 === 0 ? day + curve.sunrise : day + curve.warmest;
}

function pieceFirst(curve: NightCurve, segment: number): number {
  if (segment === 0) return curve.tmaxTwoBefore;
  if (segment === 1) return curve.tminBefore;
  if (segment === 2) return curve.tmaxBefore;
  return segment === 3 ? curve.tmin : curve.tmaxAfter;
}

function pieceLast(curve: NightCurve, segment: number): number {
  if (segment === 0) return curve.tminBefore;
  if (segment === 1) return curve.tmaxBefore;
  if (segment === 2) return curve.tmin;
  return segment === 3 ? curve.tmaxAfter : curve.tminAfter;
}
