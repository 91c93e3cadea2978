import type { DayNumber } from '../../units/calendar.ts';

/** Unit an own thermometer is read in. */
export type ReadingUnit = 'C' | 'F';

/** The minimum of one night at the spot, as written. */
export interface SpotReading {
  /** The morning it belongs to. */
  readonly day: DayNumber;
  /** Minimum in the unit of the text. */
  readonly minimum: number;
  /** Maximum of that day where the text has one, else `null`. */
  readonly maximum: number | null;
  /** Line of the text, from 1. */
  readonly line: number;
}

/** The same in °C. */
export interface NightReading {
  readonly day: DayNumber;
  readonly minimumC: number;
  readonly maximumC: number | null;
  readonly line: number;
}
