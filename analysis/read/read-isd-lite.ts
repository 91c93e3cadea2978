import { t } from '../language/t.ts';
import type { BadRows } from './bad-rows.ts';
import { DateFields } from './dates.ts';
import { digitsAt, numberAt } from './fields.ts';
import { Stations, type RecordReader } from './record-reader.ts';

/** `USAF-WBAN` of a file named `USAF-WBAN-YEAR...`, so that the years of a station come together. */
function isdStationId(fileId: string): string {
  return /^([A-Za-z0-9]{5,6}-\d{5})-\d{4}$/.exec(fileId)?.[1] ?? fileId;
}

/** ISD-Lite: fixed width, a line an hour in UTC; tenths of °C from character 14, tenths of m/s from 39; -9999 missing. */
export class IsdLiteReader implements RecordReader {
  readonly hourly = true;
  readonly unit = 'tenthsC';
  readonly windUnit = 'tenths m/s';
  readonly localStandard = false;
  readonly stations = new Stations(true);
  private readonly dates = new DateFields();
  private readonly bad: BadRows;
  private readonly stationId: string;

  constructor(bad: BadRows, fileId: string) {
    this.bad = bad;
    this.stationId = isdStationId(fileId);
  }

  readonly line = (text: string, from: number, to: number, line: number, unfinished: boolean): void => {
    if (to === from) return;
    if (to - from < 19 || (unfinished && to - from < 43)) {
      this.bad.add(t`row cut short`, line, text.slice(from, to));
      return;
    }
    const day = this.dates.day(
      digitsAt(text, from, from + 4),
      digitsAt(text, from + 5, from + 7),
      digitsAt(text, from + 8, from + 10),
    );
    const hour = digitsAt(text, from + 11, from + 13);
    if (Number.isNaN(day) || hour < 0 || hour > 23) {
      this.bad.add(t`impossible date`, line, text.slice(from, from + 13));
      return;
    }
    const temperature = numberAt(text, from + 13, from + 19);
    if (Number.isNaN(temperature)) {
      this.bad.add(t`not a number`, line, text.slice(from + 13, from + 19));
      return;
    }
    if (temperature === -9999) return;
    const rows = this.stations.of(this.stationId);
    const row = rows.add(day, line);
    rows.hour[row] = hour;
    rows.first[row] = temperature;
    const wind = to - from >= 43 ? numberAt(text, from + 37, from + 43) : NaN;
    rows.wind[row] = wind >= 0 ? wind : NaN;
  };
}
