import type { DailySeries, HourlySeries } from '../../../analysis/records/series.ts';
import type { Station } from '../../../analysis/records/station.ts';

export const STATION: Station = { id: 'invented', name: 'Invented', lat: 30, lon: 0, elevationM: null };

/** A daily record; wind unknown unless given. */
export function daily(
  firstDay: number,
  tminC: readonly number[],
  tmaxC: readonly number[],
  more: { windMs?: readonly number[]; station?: Station } = {},
): DailySeries {
  return {
    station: more.station ?? STATION,
    firstDay,
    tminC: Float64Array.from(tminC),
    tmaxC: Float64Array.from(tmaxC),
    windMs: Float64Array.from(more.windMs ?? tminC.map(() => NaN)),
  };
}

/** An hourly record at longitude 0, where UTC is local solar time; `timeH` in hours since the epoch. */
export function hourly(
  timeH: readonly number[],
  tempC: readonly number[],
  more: { windMs?: readonly number[]; station?: Station } = {},
): HourlySeries {
  return {
    station: more.station ?? STATION,
    timeUtcH: Float64Array.from(timeH),
    tempC: Float64Array.from(tempC),
    windMs: Float64Array.from(more.windMs ?? timeH.map(() => NaN)),
  };
}

/** Whole hours from `from` to `to`, both included. */
export function hours(from: number, to: number, step = 1): number[] {
  return Array.from({ length: Math.floor((to - from) / step + 1e-9) + 1 }, (_, k) => from + k * step);
}
