import type { NightKind } from '../../records/nights.ts';
import type { DayNumber } from '../../units/calendar.ts';

/** One night known on both sides. */
export interface PairedNight {
  readonly day: DayNumber;
  /** As the station's record tells it. */
  readonly kind: NightKind;
  /** Minimum at the station, or as estimated for the place, °C. */
  readonly stationC: number;
  /** Minimum at the spot, °C. */
  readonly readingC: number;
  /** Spot minus station, °C. */
  readonly differenceC: number;
  /** Line of the readings' text. */
  readonly line: number;
}
