import { sayFigure } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { DroppedValue, HourlySeries, RawHourlyReadings } from '../records/series.ts';
import { civilDate } from '../units/calendar.ts';
import { isOnEarth } from './bounds.ts';
import { Findings, shown } from './findings.ts';
import { spikeReadings } from './hourly-spikes.ts';
import { restoreFahrenheit } from './restore-fahrenheit.ts';
import { flagReason } from './source-flags.ts';

/** A station's hourly record after cleaning. */
export interface CleanedHourly {
  readonly series: HourlySeries;
  readonly dropped: readonly DroppedValue[];
  readonly doubtful: readonly DroppedValue[];
  readonly notes: readonly string[];
}

/** Readings at the same minute closer than this, °C, are one reading. */
const SAME_READING_C = 1.2;
const SAME_TIME_H = 1 / 120;
/** One value unchanged this long, hours, is a stuck instrument; from the shorter time on it is doubtful. */
const STUCK_H = 48;
const STUCK_DOUBT_H = 24;

/**
 * Hours to add to local standard time for UTC: the zone whose meridian (multiple of 15 degrees) is nearest. Zones on
 * the half hour need a column map with their own offset.
 */
export function zoneOffsetH(lon: number): number {
  return -Math.round(lon / 15);
}

/**
 * Cleans the hourly readings of one station, from one file or several, and turns local standard times to UTC.
 *
 * @param raws at least one; the first one's station is the series' station.
 * @throws {InputError} when times are local and the station's longitude isn't known, or nothing is left.
 */
export function cleanHourly(raws: readonly RawHourlyReadings[]): CleanedHourly {
  const { station } = raws[0]!;
  const findings = new Findings(station.id);
  const solarOffsetH = (station.lon ?? 0) / 15;
  const dayOf = (timeH: number): number => Math.floor((timeH + solarOffsetH) / 24);
  const all = gathered(raws, station.lon);
  const kept = withoutBad(all, dayOf, findings);
  let series = settled(kept, dayOf, findings);
  const restored = restoreFahrenheit([series.tempC], monthsOf(series.timeH));
  if (restored > 0)
    findings.note(t`${restored} values were whole °F stored as tenths of °C; they were restored.`);
  const spikes = new Set(spikeReadings(series.timeH, series.tempC));
  for (const at of spikes) {
    const day = dayOf(series.timeH[at]!);
    const detail = t`temp ${shown(series.tempC[at]!, day)} jumps away from the readings around it and back.`;
    findings.drop(day, 'temp', series.tempC[at]!, 'spike', detail);
  }
  const stuck = stuckReadings(series, dayOf, findings);
  series = selected(series, (at) => !spikes.has(at) && !stuck.has(at));
  if (series.timeH.length === 0)
    throw new InputError(t`Station ${station.id} has no usable hourly readings.`);
  findings.settle();
  return {
    series: { station, timeUtcH: series.timeH, tempC: series.tempC, windMs: series.windMs },
    dropped: findings.dropped,
    doubtful: findings.doubtful,
    notes: findings.notes,
  };
}

interface Readings {
  readonly timeH: Float64Array;
  readonly tempC: Float64Array;
  readonly windMs: Float64Array;
  readonly flag: Uint8Array;
}

/** Readings of all files in order of time, UTC. */
function gathered(raws: readonly RawHourlyReadings[], lon: number | null): Readings {
  const length = raws.reduce((sum, raw) => sum + raw.timeUtcH.length, 0);
  const all: Readings = empty(length);
  let at = 0;
  for (const raw of raws) {
    if (raw.localStandard && lon === null) {
      throw new InputError(
        t`${raw.file}: times are local, so the longitude of station ${raw.station.id} is needed.`,
      );
    }
    const offsetH = raw.localStandard ? zoneOffsetH(lon!) : 0;
    for (let row = 0; row < raw.timeUtcH.length; row += 1, at += 1) {
      all.timeH[at] = raw.timeUtcH[row]! + offsetH;
      all.tempC[at] = raw.tempC[row]!;
      all.windMs[at] = raw.windMs[row]!;
      all.flag[at] = raw.tempFlag?.[row] ?? 0;
    }
  }
  let sorted = true;
  for (let i = 1; i < length && sorted; i += 1) sorted = all.timeH[i]! >= all.timeH[i - 1]!;
  if (sorted) return all;
  const order = Array.from({ length }, (_, i) => i).sort((a, b) => all.timeH[a]! - all.timeH[b]! || a - b);
  return picked(all, order);
}

function withoutBad(all: Readings, dayOf: (timeH: number) => number, findings: Findings): Readings {
  return selected(all, (at) => {
    const value = all.tempC[at]!;
    if (Number.isNaN(value)) return false;
    const day = dayOf(all.timeH[at]!);
    if (all.flag[at] !== 0) {
      findings.drop(
        day,
        'temp',
        value,
        flagReason(all.flag[at]!),
        t`temp ${shown(value, day)} was flagged by its source.`,
      );
      return false;
    }
    if (isOnEarth(value)) return true;
    const detail = t`temp ${shown(value, day)} is beyond any reading on earth.`;
    findings.drop(day, 'temp', value, 'beyond world records', detail);
    return false;
  });
}

/** One reading a minute: equal repeats count once, of different ones the colder stays and is doubtful. */
function settled(all: Readings, dayOf: (timeH: number) => number, findings: Findings): Readings {
  const order: number[] = [];
  let repeats = 0;
  for (let at = 0; at < all.timeH.length; at += 1) {
    const last = order.at(-1);
    if (last === undefined || all.timeH[at]! - all.timeH[last]! > SAME_TIME_H) {
      order.push(at);
      continue;
    }
    const [before, now] = [all.tempC[last]!, all.tempC[at]!];
    if (Number.isNaN(all.windMs[last]!)) all.windMs[last] = all.windMs[at]!;
    if (Math.abs(before - now) <= SAME_READING_C) {
      repeats += 1;
      continue;
    }
    const [cold, warm] = before <= now ? [before, now] : [now, before];
    all.tempC[last] = cold;
    const day = dayOf(all.timeH[last]!);
    const detail = t`temp is written as ${shown(cold, day)} and, at the same time, as ${sayFigure(warm, 1)} °C.`;
    findings.drop(day, 'temp', warm, 'conflicting repeat', detail);
    findings.doubt(day, 'temp', cold, 'conflicting repeat', detail);
  }
  if (repeats > 0) findings.note(t`${repeats} readings were written more than once for the same time.`);
  return picked(all, order);
}

function stuckReadings(series: Readings, dayOf: (timeH: number) => number, findings: Findings): Set<number> {
  const stuck = new Set<number>();
  const { timeH, tempC } = series;
  for (let start = 0; start < tempC.length;) {
    let end = start + 1;
    while (
      end < tempC.length &&
      Math.abs(tempC[end]! - tempC[start]!) < 0.01 &&
      timeH[end]! - timeH[end - 1]! < 7
    )
      end += 1;
    const hours = timeH[end - 1]! - timeH[start]!;
    if (hours >= STUCK_DOUBT_H) {
      const day = dayOf(timeH[start]!);
      const detail = t`temp ${shown(tempC[start]!, day)} stays the same for ${sayFigure(hours, 0)} hours.`;
      if (hours < STUCK_H) findings.doubt(day, 'temp', tempC[start]!, 'stuck value', detail);
      for (let at = start + 1; at < end && hours >= STUCK_H; at += 1) {
        findings.drop(dayOf(timeH[at]!), 'temp', tempC[at]!, 'stuck value', detail);
        stuck.add(at);
      }
    }
    start = end;
  }
  return stuck;
}

function empty(length: number): Readings {
  return {
    timeH: new Float64Array(length),
    tempC: new Float64Array(length),
    windMs: new Float64Array(length),
    flag: new Uint8Array(length),
  };
}

function picked(all: Readings, order: readonly number[]): Readings {
  const some = empty(order.length);
  order.forEach((from, to) => {
    some.timeH[to] = all.timeH[from]!;
    some.tempC[to] = all.tempC[from]!;
    some.windMs[to] = all.windMs[from]!;
    some.flag[to] = all.flag[from]!;
  });
  return some;
}

function selected(all: Readings, keep: (at: number) => boolean): Readings {
  const order: number[] = [];
  for (let at = 0; at < all.timeH.length; at += 1) if (keep(at)) order.push(at);
  return picked(all, order);
}

function monthsOf(timeH: Float64Array): (entry: number) => number {
  let [day, month] = [-1, -1];
  return (entry) => {
    const now = Math.floor(timeH[entry]! / 24);
    if (now === day) return month;
    day = now;
    const date = civilDate(now);
    month = date.year * 12 + date.month;
    return month;
  };
}
