import { t } from '../language/t.ts';
import {
  KEPT_NIGHT_MAX_C,
  NIGHT_BASES,
  SUSTAINED_COUNT,
  SUSTAINED_HOURS,
  type NightTable,
} from '../records/nights.ts';
import { InputError } from '../records/input-error.ts';
import type { HourlySeries } from '../records/series.ts';
import { dayOfYear } from '../units/calendar.ts';
import { COOL_LEVEL_C, COOL_WINDOW_H, scaledCoolHours } from './cool-hours.ts';
import { kindByNightWind, kindByTemperatures } from './night-kind.ts';
import { emptyNights, storedC } from './night-table.ts';
import { GAP_H, NEAR_H, offerWindows, type Readings } from './reading-windows.ts';
import { dayLengthH, sunriseH, sunsetH } from './sun.ts';

const HOURLY = NIGHT_BASES.indexOf('hourly');
/** The coldest moment of most nights comes within an hour of sunrise: until then no gap is allowed. */
const AFTER_SUNRISE_H = 1;
/** A day's maximum is known from at least so many readings, one of them in the afternoon. */
const DAY_READINGS_MIN = 6;
const AFTERNOON_FROM_H = 11;
const AFTERNOON_TO_H = 17;
/** Wind is averaged over readings so close to the night's lowest, hours, and needs so many of them. */
const WIND_WITHIN_H = 3;
const WIND_READINGS_MIN = 3;

/**
 * Nights of a cleaned hourly (or sub-hourly, or 3-hourly) record, straight from its readings. Local solar time is
 * taken as UTC plus 4 minutes per degree of longitude. A gap over 3 h between sunset and an hour past sunrise makes the
 * night unknown; elsewhere a gap makes the windows over it unknown, and a duration whose unknown windows could be colder
 * than the known ones stays unknown. Nights warmer than 10 °C know their minimum only.
 *
 * @throws {InputError} when the station has no latitude or longitude.
 */
export function nightsFromHourly(series: HourlySeries): NightTable {
  const { lat, lon, id } = series.station;
  if (lat === null || lon === null) {
    throw new InputError(t`Station ${id} has no latitude or longitude, so its nights have no sunrise.`);
  }
  const timeH = series.timeUtcH.map((time) => time + lon / 15);
  const readings: Readings = { timeH, tempC: series.tempC };
  const n = timeH.length;
  if (n === 0) return emptyNights(0, 0);
  const firstNight = nightAt(timeH[0]);
  const count = nightAt(timeH[n - 1]) - firstNight + 1;
  const nights = emptyNights(firstNight, count);
  const whole = nightsWithoutGap(timeH, lat, firstNight, count);
  writeMinima(nights, readings, whole);
  writeSustained(nights, readings, whole);
  writeDayMaxima(nights, readings);
  writeKinds(nights, readings, series.windMs);
  writeCoolHours(nights, readings);
  return nights;
}

/** Number of the night (its morning's day) that holds a moment of local solar time. */
function nightAt(timeH: number): number {
  return Math.floor((timeH + 12) / 24);
}

/** 1 for nights in which no gap over 3 h touches the time from sunset to an hour past sunrise. */
function nightsWithoutGap(timeH: Float64Array, lat: number, firstNight: number, count: number): Uint8Array {
  const whole = new Uint8Array(count).fill(1);
  const mark = (from: number, to: number): void => {
    const last = Math.min(count - 1, nightAt(to) - firstNight + 1);
    for (let i = Math.max(0, nightAt(from) - firstNight - 1); i <= last; i++) {
      const midnight = 24 * (firstNight + i);
      const length = dayLengthH(lat, dayOfYear(firstNight + i));
      const dark = midnight + sunsetH(length) - 24;
      const light = midnight + sunriseH(length) + AFTER_SUNRISE_H;
      if (from < light && to > dark) whole[i] = 0;
    }
  };
  const n = timeH.length;
  mark(timeH[0] - 48, timeH[0] - GAP_H);
  for (let k = 1; k < n; k++) {
    if (timeH[k] - timeH[k - 1] > GAP_H + NEAR_H) mark(timeH[k - 1], timeH[k]);
  }
  mark(timeH[n - 1] + GAP_H, timeH[n - 1] + 48);
  return whole;
}

function writeMinima(nights: NightTable, { timeH, tempC }: Readings, whole: Uint8Array): void {
  const minima = new Float64Array(nights.count).fill(NaN);
  for (let k = 0; k < timeH.length; k++) {
    const i = nightAt(timeH[k]) - nights.firstNight;
    if (!(tempC[k] >= minima[i])) minima[i] = tempC[k];
  }
  for (let i = 0; i < nights.count; i++) {
    nights.basis[i] = HOURLY;
    if (whole[i]) nights.tmin[i] = nights.sustained[0][i] = storedC(minima[i]);
  }
}

function writeSustained(nights: NightTable, readings: Readings, whole: Uint8Array): void {
  const { count, firstNight, sustained } = nights;
  const floor = new Float64Array(count);
  const kept = new Uint8Array(count);
  for (let i = 0; i < count; i++) {
    floor[i] = sustained[0][i] / 100;
    kept[i] = whole[i] && floor[i] <= KEPT_NIGHT_MAX_C ? 1 : 0;
  }
  for (let j = 1; j < SUSTAINED_COUNT; j++) {
    const minima = {
      coldest: new Float64Array(count).fill(Infinity),
      unknownFrom: new Float64Array(count).fill(Infinity),
    };
    offerWindows(readings, SUSTAINED_HOURS[j], firstNight, minima, false);
    offerWindows(readings, SUSTAINED_HOURS[j], firstNight, minima, true);
    for (let i = 0; i < count; i++) {
      if (!kept[i]) continue;
      const level = Math.max(minima.coldest[i], floor[i]);
      if (level === Infinity || minima.unknownFrom[i] < level) continue;
      sustained[j][i] = storedC(level);
      floor[i] = level;
    }
  }
}

function writeDayMaxima(nights: NightTable, { timeH, tempC }: Readings): void {
  const { count, firstNight } = nights;
  const maxima = new Float64Array(count + 1).fill(-Infinity);
  const readingsOf = new Int32Array(count + 1);
  const afternoon = new Uint8Array(count + 1);
  for (let k = 0; k < timeH.length; k++) {
    const day = Math.floor(timeH[k] / 24);
    const d = day - firstNight + 1;
    if (d < 0 || d > count) continue;
    const hour = timeH[k] - 24 * day;
    maxima[d] = Math.max(maxima[d], tempC[k]);
    readingsOf[d]++;
    if (hour >= AFTERNOON_FROM_H && hour <= AFTERNOON_TO_H) afternoon[d] = 1;
  }
  const known = (d: number): number =>
    storedC(readingsOf[d] >= DAY_READINGS_MIN && afternoon[d] ? maxima[d] : NaN);
  for (let i = 0; i < count; i++) {
    nights.tmaxBefore[i] = known(i);
    nights.tmaxAfter[i] = known(i + 1);
  }
}

/** By the wind around the night's lowest reading (the first of equals), else by temperatures where they are known. */
function writeKinds(nights: NightTable, { timeH, tempC }: Readings, windMs: Float64Array): void {
  const { count, firstNight, kind, tmin, tmaxBefore, tmaxAfter } = nights;
  const lowest = new Int32Array(count).fill(-1);
  for (let k = 0; k < timeH.length; k++) {
    const i = nightAt(timeH[k]) - firstNight;
    if (lowest[i] < 0 || tempC[k] < tempC[lowest[i]]) lowest[i] = k;
  }
  for (let i = 0; i < count; i++) {
    if (tmin[i] !== storedC(tempC[lowest[i]])) continue;
    const wind = windAround(timeH, windMs, lowest[i]);
    if (!Number.isNaN(wind)) kind[i] = kindByNightWind(wind);
    else {
      const [two, before, after] = [i > 0 ? tmaxBefore[i - 1] : storedC(NaN), tmaxBefore[i], tmaxAfter[i]];
      const missing = storedC(NaN);
      if (before === missing || after === missing) continue;
      kind[i] = kindByTemperatures(
        two === missing ? NaN : two / 100,
        before / 100,
        tmin[i] / 100,
        after / 100,
      );
    }
  }
}

function windAround(timeH: Float64Array, windMs: Float64Array, k: number): number {
  let sum = 0;
  let known = 0;
  const within = WIND_WITHIN_H + NEAR_H;
  let first = k;
  while (first > 0 && timeH[k] - timeH[first - 1] <= within) first--;
  for (let j = first; j < timeH.length && timeH[j] - timeH[k] <= within; j++) {
    if (Number.isNaN(windMs[j])) continue;
    sum += windMs[j];
    known++;
  }
  return known >= WIND_READINGS_MIN ? sum / known : NaN;
}

/** Readings joined by straight lines; time inside gaps is unknown. */
function writeCoolHours(nights: NightTable, { timeH, tempC }: Readings): void {
  const n = timeH.length;
  const cool = new Float64Array(n);
  const known = new Float64Array(n);
  for (let k = 1; k < n; k++) {
    const span = timeH[k] - timeH[k - 1];
    const gap = span > GAP_H + NEAR_H;
    cool[k] = cool[k - 1] + (gap ? 0 : span * shareAtOrBelow(tempC[k - 1], tempC[k]));
    known[k] = known[k - 1] + (gap ? 0 : span);
  }
  let start = 0;
  let end = 0;
  for (let i = 0; i < nights.count; i++) {
    const noon = 24 * (nights.firstNight + i) + 12;
    while (end < n - 1 && timeH[end + 1] <= noon) end++;
    while (start < n - 1 && timeH[start + 1] <= noon - COOL_WINDOW_H) start++;
    if (timeH[end] > noon) continue;
    nights.coolHours[i] = scaledCoolHours(cool[end] - cool[start], known[end] - known[start]);
  }
}

/** Share of a straight line from `a` to `b` °C that lies at or below the cool level. */
function shareAtOrBelow(a: number, b: number): number {
  const low = Math.min(a, b);
  const high = Math.max(a, b);
  if (high <= COOL_LEVEL_C) return 1;
  return low > COOL_LEVEL_C ? 0 : (COOL_LEVEL_C - low) / (high - low);
}
