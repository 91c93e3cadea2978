import { keptNights, type KeptNights } from '../../../analysis/records/kept-nights.ts';
import {
  KEPT_NIGHT_MAX_C,
  MISSING_HUNDREDTHS,
  SUSTAINED_HOURS,
  type NightTable,
} from '../../../analysis/records/nights.ts';
import type { WinterTable } from '../../../analysis/records/winters.ts';
import type { DayNumber } from '../../../analysis/units/calendar.ts';
import { winterOf, type Hemisphere } from '../../../analysis/winter/winter-year.ts';

export interface MadeNight {
  readonly day: DayNumber;
  /** Hundredths of °C, the same for all hours. */
  readonly level?: number;
  readonly kind?: number;
  readonly coolHours?: number;
}

/** Kept nights of a few dates; 5 °C, calm and 400 cool hours unless told. */
export function madeNights(nights: readonly MadeNight[], hemisphere: Hemisphere = 'north'): KeptNights {
  return keptNights(
    nights.map(({ day, level = 500, kind = 0, coolHours = 400 }) => [
      day,
      winterOf(day, hemisphere),
      kind,
      ...SUSTAINED_HOURS.map(() => level),
      coolHours,
    ]),
  );
}

/** The dates from `from` to `to`, both included. */
export function datesFrom(from: DayNumber, to: DayNumber): DayNumber[] {
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

/** What a pack keeps of a station's nights. */
export function keptOf(table: NightTable, hemisphere: Hemisphere): KeptNights {
  const kept = datesFrom(0, table.count - 1).filter((i) => {
    const minimum = table.sustained[0][i];
    return minimum !== MISSING_HUNDREDTHS && minimum <= KEPT_NIGHT_MAX_C * 100;
  });
  return keptNights(
    kept.map((i) => [
      table.firstNight + i,
      winterOf(table.firstNight + i, hemisphere),
      table.kind[i],
      ...table.sustained.map((own) => own[i]),
      table.coolHours[i],
    ]),
  );
}

/** Complete winters with these labels. */
export function completeWinters(...labels: readonly number[]): Pick<WinterTable, 'winter' | 'complete'> {
  return { winter: Int16Array.from(labels), complete: new Uint8Array(labels.length).fill(1) };
}
