import type { DayNumber } from '../units/calendar.ts';
import type { Station } from './station.ts';

/**
 * One station's daily readings as a source wrote them, before cleaning. Arrays are parallel, one entry a day that has
 * a row, in the order of the file (days may repeat or run backwards: cleaning finds that).
 */
export interface RawDailyReadings {
  readonly station: Station;
  readonly day: Int32Array;
  /** °C, NaN where the source has no value. */
  readonly tminC: Float64Array;
  readonly tmaxC: Float64Array;
  /** Daily mean wind, m/s, NaN where the source has none. */
  readonly windMs: Float64Array;
  /** Quality flag of the source as a character code, 0 for none. */
  readonly tminFlag: Uint8Array;
  readonly tmaxFlag: Uint8Array;
  /** Hour of the daily reading, local time 0-24 (24: midnight at the day's end), 255 where unknown. */
  readonly readingHour: Uint8Array;
  /** Source file and line of each entry, for messages. */
  readonly file: string;
  readonly line: Int32Array;
}

/** One station's hourly (or sub-hourly, or 3-hourly) readings, in the order of the file. */
export interface RawHourlyReadings {
  readonly station: Station;
  /** Hours since 1970-01-01 00:00 UTC; local standard time as long as `localStandard` is true. */
  readonly timeUtcH: Float64Array;
  /** °C, NaN where missing. */
  readonly tempC: Float64Array;
  /** m/s, NaN where missing. */
  readonly windMs: Float64Array;
  /** Quality flag of the source as a character code, 0 for none; absent where the source has no flags. */
  readonly tempFlag?: Uint8Array;
  /** True while times are local standard time: cleaning turns them to UTC once the longitude is known. */
  readonly localStandard?: boolean;
  readonly file: string;
  readonly line: Int32Array;
}

/** A cleaned daily record: dense, one entry a calendar day from `firstDay`, NaN where nothing trustworthy is known. */
export interface DailySeries {
  readonly station: Station;
  readonly firstDay: DayNumber;
  /** Minimum of the day, °C, booked on the morning it belongs to. */
  readonly tminC: Float64Array;
  /** Maximum of the day, °C, booked on the afternoon it belongs to. */
  readonly tmaxC: Float64Array;
  /** Daily mean wind, m/s. */
  readonly windMs: Float64Array;
}

/** A cleaned hourly record, times strictly increasing. */
export interface HourlySeries {
  readonly station: Station;
  readonly timeUtcH: Float64Array;
  readonly tempC: Float64Array;
  readonly windMs: Float64Array;
}

/** A value that cleaning took out, or marked as doubtful, with the rule that did it. */
export interface DroppedValue {
  readonly stationId: string;
  readonly day: DayNumber;
  readonly element: 'tmin' | 'tmax' | 'temp';
  readonly valueC: number;
  /** Rule id, for counts: `source flag`, `spike`, `stuck`, ... */
  readonly reason: string;
  /** One sentence with the numbers that led to it. */
  readonly detail: string;
}
