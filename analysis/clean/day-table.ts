import { sayFigure } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { RawDailyReadings } from '../records/series.ts';
import type { DayNumber } from '../units/calendar.ts';
import { shown, type Findings } from './findings.ts';

/** Hour of reading where unknown, as in the raw readings. */
export const HOUR_UNKNOWN = 255;
/** Repeats closer than this (°C) are the same reading written with another grain. */
const SAME_READING_C = 0.35;

/** One station's days in a row, one entry a calendar day, NaN where there is no value. Rules change it in place. */
export interface DayTable {
  readonly firstDay: DayNumber;
  readonly length: number;
  readonly tminC: Float64Array;
  readonly tmaxC: Float64Array;
  readonly windMs: Float64Array;
  readonly tminFlag: Uint8Array;
  readonly tmaxFlag: Uint8Array;
  readonly readingHour: Uint8Array;
}

/**
 * Puts the readings of all files of a station on one calendar. A day written twice with the same value counts once; of
 * two different values the one without a flag stays, else the colder minimum (the first maximum), marked doubtful.
 */
export function dayTable(raws: readonly RawDailyReadings[], findings: Findings): DayTable {
  let [first, last] = [Infinity, -Infinity];
  for (const raw of raws) {
    for (const day of raw.day) {
      if (day < first) first = day;
      if (day > last) last = day;
    }
  }
  if (!(last >= first)) throw new InputError(t`Station ${raws[0]?.station.id ?? ''} has no daily readings.`);
  const length = last - first + 1;
  const table: DayTable = {
    firstDay: first,
    length,
    tminC: new Float64Array(length).fill(NaN),
    tmaxC: new Float64Array(length).fill(NaN),
    windMs: new Float64Array(length).fill(NaN),
    tminFlag: new Uint8Array(length),
    tmaxFlag: new Uint8Array(length),
    readingHour: new Uint8Array(length).fill(HOUR_UNKNOWN),
  };
  let repeats = 0;
  for (const raw of raws) {
    for (let row = 0; row < raw.day.length; row += 1) {
      const at = raw.day[row]! - first;
      const tmin = put(table, 'tmin', at, raw.tminC[row]!, raw.tminFlag[row]!, findings);
      const tmax = put(table, 'tmax', at, raw.tmaxC[row]!, raw.tmaxFlag[row]!, findings);
      if (tmin || tmax) repeats += 1;
      if (Number.isNaN(table.windMs[at]!)) table.windMs[at] = raw.windMs[row]!;
      if (table.readingHour[at] === HOUR_UNKNOWN) table.readingHour[at] = raw.readingHour[row]!;
    }
  }
  if (repeats > 0) findings.note(t`${repeats} days were written more than once with the same value.`);
  return table;
}

/** Puts one value; true when the day held the same value already. */
function put(
  table: DayTable,
  element: 'tmin' | 'tmax',
  at: number,
  value: number,
  flag: number,
  findings: Findings,
): boolean {
  if (Number.isNaN(value)) return false;
  const values = element === 'tmin' ? table.tminC : table.tmaxC;
  const flags = element === 'tmin' ? table.tminFlag : table.tmaxFlag;
  const before = values[at]!;
  const day = table.firstDay + at;
  const take = (): void => {
    values[at] = value;
    flags[at] = flag;
  };
  if (Number.isNaN(before)) {
    take();
    return false;
  }
  if (Math.abs(before - value) <= SAME_READING_C) {
    if (flags[at] !== 0 && flag === 0) take();
    return true;
  }
  const swap =
    flags[at] !== 0 && flag === 0
      ? true
      : flags[at] === 0 && flag === 0 && element === 'tmin' && value < before;
  const [kept, lost] = swap ? [value, before] : [before, value];
  if (swap) take();
  const detail = t`${element} is written as ${shown(kept, day)} and as ${sayFigure(lost, 1)} °C.`;
  findings.drop(day, element, lost, 'conflicting repeat', detail);
  findings.doubt(day, element, kept, 'conflicting repeat', detail);
  return false;
}
