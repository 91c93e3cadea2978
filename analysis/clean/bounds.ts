import { t } from '../language/t.ts';
import type { DayTable } from './day-table.ts';
import { shown, type Findings } from './findings.ts';

/** Coldest and warmest air temperatures measured on earth, °C (World Meteorological Organization: Vostok 1983, Furnace Creek 1913). */
export const COLDEST_ON_EARTH_C = -89.2;
export const WARMEST_ON_EARTH_C = 56.7;

/** Whether a temperature (°C) lies within what has been measured on earth. */
export function isOnEarth(valueC: number): boolean {
  return valueC >= COLDEST_ON_EARTH_C && valueC <= WARMEST_ON_EARTH_C;
}

/** Drops values beyond any reading on earth. */
export function dropImpossible(table: DayTable, findings: Findings): void {
  for (const element of ['tmin', 'tmax'] as const) {
    const values = element === 'tmin' ? table.tminC : table.tmaxC;
    for (let at = 0; at < table.length; at += 1) {
      const value = values[at]!;
      if (Number.isNaN(value) || isOnEarth(value)) continue;
      const day = table.firstDay + at;
      const detail = t`${element} ${shown(value, day)} is beyond ${COLDEST_ON_EARTH_C} to ${WARMEST_ON_EARTH_C} °C, the records of the earth.`;
      findings.drop(day, element, value, 'beyond world records', detail);
      values[at] = NaN;
    }
  }
}
