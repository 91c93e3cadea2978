import { formatIsoDay, parseIsoDay, type DayNumber } from '../../analysis/units/calendar.ts';
import { MISSING_TENTHS, type DailyRecord } from './daily-readings.ts';
import type { RandomStream } from './random-stream.ts';

/** What was done to the readings on purpose, for tests of reading and cleaning. */
export type PlantedKind =
  | 'gap'
  | 'gap across the great freeze'
  | 'flagged value'
  | 'impossible value'
  | 'spike'
  | 'equal bad days'
  | 'stuck values'
  | 'maximum below minimum'
  | 'zero for missing'
  | 'rows out of order'
  | 'row twice'
  | 'morning reading'
  | 'night booked twice'
  | 'station moved'
  | 'hourly gap'
  | 'hourly spike'
  | 'good extreme';

/** One entry of `planted.json`. Days are the station's own dates; temperatures are as stored and as they truly were. */
export interface Planted {
  readonly station: string;
  readonly kind: PlantedKind;
  readonly element?: 'tmin' | 'tmax' | 'both' | 'temp';
  readonly from: string;
  readonly to: string;
  readonly stored_c?: number;
  readonly true_c?: number;
  readonly flag?: string;
  readonly note?: string;
}

/** A record while faults go in: every method changes the readings and writes the manifest. */
export interface Planter {
  readonly entries: Planted[];
  /** Takes out `days` days from `first`, both elements. */
  gap(first: DayNumber, days: number, kind?: PlantedKind): void;
  /** Stores another value on one day; nothing happens where the record has no value. */
  replace(kind: PlantedKind, element: 'tmin' | 'tmax', day: DayNumber, tenths: number, flag?: string): void;
  note(entry: Omit<Planted, 'station'>): void;
  /** Stored value, tenths of °C, or MISSING_TENTHS; days outside the record are missing. */
  value(element: 'tmin' | 'tmax', day: DayNumber): number;
}

/** Starts planting in a station's record. */
export function planterFor(station: string, record: DailyRecord): Planter {
  const entries: Planted[] = [];
  const values = (element: 'tmin' | 'tmax') => (element === 'tmin' ? record.tminTenths : record.tmaxTenths);
  const flags = (element: 'tmin' | 'tmax') => (element === 'tmin' ? record.tminFlag : record.tmaxFlag);
  const value = (element: 'tmin' | 'tmax', day: DayNumber) =>
    values(element)[day - record.firstDay] ?? MISSING_TENTHS;
  return {
    entries,
    value,
    gap(first, days, kind = 'gap') {
      const start = Math.max(0, first - record.firstDay);
      const end = Math.min(record.tminTenths.length, first - record.firstDay + days);
      if (end <= start) return;
      record.tminTenths.fill(MISSING_TENTHS, start, end);
      record.tmaxTenths.fill(MISSING_TENTHS, start, end);
      const [from, to] = [start, end - 1].map((i) => formatIsoDay(record.firstDay + i));
      entries.push({ station, kind, element: 'both', from, to });
    },
    replace(kind, element, day, tenths, flag) {
      const truth = value(element, day);
      if (truth === MISSING_TENTHS) return;
      const i = day - record.firstDay;
      values(element)[i] = tenths;
      if (flag) flags(element)[i] = flag.charCodeAt(0);
      const date = formatIsoDay(day);
      const change = { stored_c: tenths / 10, true_c: truth / 10, ...(flag ? { flag } : {}) };
      entries.push({ station, kind, element, from: date, to: date, ...change });
    },
    note: (entry) => entries.push({ station, ...entry }),
  };
}

/** The entries that still hold: a value that a later gap took out, or a later fault changed, is not in the files. */
export function standingEntries(plant: Planter): Planted[] {
  return plant.entries.filter(({ element, from, stored_c: storedC }) => {
    if (storedC === undefined || (element !== 'tmin' && element !== 'tmax')) return true;
    const day = parseIsoDay(from);
    return day !== null && plant.value(element, day) === Math.round(storedC * 10);
  });
}

/** 9 °F in tenths of °C: whole °F stay whole when a value is moved by it. */
const NINE_FAHRENHEIT_TENTHS = 50;

/** Everyday losses of a long record: single days, some months, and source flags on values that are far out. */
export function plantEverydayFaults(
  plant: Planter,
  record: DailyRecord,
  random: RandomStream,
  flagged: boolean,
): void {
  const days = record.tminTenths.length;
  const pick = () => record.firstDay + Math.floor(random.uniform() * days);
  for (let i = 0; i < days / 500; i++) plant.gap(pick(), 1);
  for (let i = 0; i < days / 3500; i++) plant.gap(pick(), 2 + Math.floor(6 * random.uniform()));
  for (let i = 0; i < days / 5500; i++) plant.gap(pick(), 20 + Math.floor(50 * random.uniform()));
  if (!flagged) return;
  for (let i = 0; i < days / 2500; i++) {
    const element = random.uniform() < 0.7 ? 'tmin' : 'tmax';
    const day = pick();
    const offTenths =
      (random.uniform() < 0.7 ? -1 : 1) * NINE_FAHRENHEIT_TENTHS * (3 + Math.floor(3 * random.uniform()));
    const flag = 'SIGX'[Math.floor(4 * random.uniform())];
    const flags = element === 'tmin' ? record.tminFlag : record.tmaxFlag;
    if (plant.value(element, day) !== MISSING_TENTHS && !flags[day - record.firstDay]) {
      plant.replace('flagged value', element, day, plant.value(element, day) + offTenths, flag);
    }
  }
}
