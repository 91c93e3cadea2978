import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RawDailyReadings, RawHourlyReadings } from '../../../analysis/records/series.ts';
import { parseIsoDay } from '../../../analysis/units/calendar.ts';

export const STATION = { id: 'ZZ1', name: 'Invented', lat: 30.9, lon: -42, elevationM: 10 };

/** What the invented record is like. */
interface Kind {
  readonly years?: number;
  /** Mean minimum of the coldest and of the warmest time of year, °C. */
  readonly winterC?: number;
  readonly summerC?: number;
  /** Spread of the weather in winter and in summer, °C. */
  readonly winterSpreadC?: number;
  readonly summerSpreadC?: number;
  readonly first?: string;
}

/** Days of an invented station, to be changed by a test before it makes readings of them. */
export class InventedRecord {
  readonly firstDay: number;
  readonly tmin: number[] = [];
  readonly tmax: number[] = [];
  readonly hour: number[] = [];
  readonly flag = new Map<number, string>();

  constructor(kind: Kind = {}) {
    const {
      years = 30,
      winterC = 6,
      summerC = 22,
      winterSpreadC = 5,
      summerSpreadC = 1.5,
      first = '1980-01-01',
    } = kind;
    this.firstDay = parseIsoDay(first)!;
    const random = xoroshiro128plus(7);
    const normal = (): number => {
      let sum = -6;
      for (let i = 0; i < 12; i += 1) sum += (random.next() >>> 0) / 2 ** 32;
      return sum;
    };
    let weather = 0;
    for (let day = 0; day < years * 365.25; day += 1) {
      const season = (1 - Math.cos((2 * Math.PI * (this.firstDay + day - 15)) / 365.2425)) / 2;
      weather = 0.65 * weather + 0.76 * normal();
      const spread = winterSpreadC + (summerSpreadC - winterSpreadC) * season;
      const tmin = winterC + (summerC - winterC) * season + spread * weather;
      this.tmin.push(tenth(tmin));
      this.tmax.push(tenth(tmin + Math.max(2, 10 - 0.4 * spread * weather * 0.5 + 1.5 * normal())));
      this.hour.push(255);
    }
  }

  at(day: string): number {
    return parseIsoDay(day)! - this.firstDay;
  }

  /** Sets days from `day` on: pairs of minimum and maximum, `null` for missing. */
  set(day: string, ...pairs: readonly (readonly [number | null, number | null])[]): this {
    pairs.forEach(([tmin, tmax], i) => {
      this.tmin[this.at(day) + i] = tmin ?? NaN;
      this.tmax[this.at(day) + i] = tmax ?? NaN;
    });
    return this;
  }

  raw(file = 'invented.csv'): RawDailyReadings {
    const length = this.tmin.length;
    return {
      station: STATION,
      day: Int32Array.from({ length }, (_, i) => this.firstDay + i),
      tminC: Float64Array.from(this.tmin),
      tmaxC: Float64Array.from(this.tmax),
      windMs: new Float64Array(length).fill(NaN),
      tminFlag: Uint8Array.from({ length }, (_, i) => this.flag.get(i)?.charCodeAt(0) ?? 0),
      tmaxFlag: new Uint8Array(length),
      readingHour: Uint8Array.from(this.hour),
      file,
      line: Int32Array.from({ length }, (_, i) => i + 2),
    };
  }
}

/** Raw daily readings of single rows: ISO day, minimum, maximum, flag of the minimum. */
export function rawRows(
  rows: readonly (readonly [string, number | null, number | null, string?])[],
): RawDailyReadings {
  return {
    station: STATION,
    day: Int32Array.from(rows, ([day]) => parseIsoDay(day)!),
    tminC: Float64Array.from(rows, ([, tmin]) => tmin ?? NaN),
    tmaxC: Float64Array.from(rows, ([, , tmax]) => tmax ?? NaN),
    windMs: new Float64Array(rows.length).fill(NaN),
    tminFlag: Uint8Array.from(rows, ([, , , flag]) => flag?.charCodeAt(0) ?? 0),
    tmaxFlag: new Uint8Array(rows.length),
    readingHour: new Uint8Array(rows.length).fill(255),
    file: 'rows.csv',
    line: Int32Array.from(rows, (_, i) => i + 2),
  };
}

/** Raw hourly readings from an hour on, one an hour unless times (hours from the start) are given. */
export function rawHours(
  tempC: readonly number[],
  extra: Partial<RawHourlyReadings> & { hours?: readonly number[] } = {},
): RawHourlyReadings {
  const { hours, ...more } = extra;
  return {
    station: STATION,
    timeUtcH: Float64Array.from(tempC, (_, i) => 400_000 + (hours?.[i] ?? i)),
    tempC: Float64Array.from(tempC),
    windMs: new Float64Array(tempC.length).fill(NaN),
    file: 'hours.csv',
    line: Int32Array.from(tempC, (_, i) => i + 2),
    ...more,
  };
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
