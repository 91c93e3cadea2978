import type { StationPeriod } from './ports.ts';

export type PeriodsByStation = ReadonlyMap<string, StationPeriod>;

export const NO_PERIODS: PeriodsByStation = new Map();

/** One type's answers at all stations, by station id. */
export function byStation(periods: readonly StationPeriod[]): PeriodsByStation {
  return new Map(periods.map((entry) => [entry.stationId, entry]));
}
