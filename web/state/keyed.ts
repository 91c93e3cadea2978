import type { ColdestNight, StationPeriod } from './ports.ts';

export type PeriodsByStation = ReadonlyMap<string, StationPeriod>;

export const NO_PERIODS: PeriodsByStation = new Map();

/** One type's answers at all stations, by station id. */
export function byStation(periods: readonly StationPeriod[]): PeriodsByStation {
  return new Map(periods.map((entry) => [entry.stationId, entry]));
}

export type NightsByWinter = ReadonlyMap<number, ColdestNight>;

export const NO_NIGHTS: NightsByWinter = new Map();

/** Coldest nights by winter. */
export function byWinter(nights: readonly ColdestNight[]): NightsByWinter {
  return new Map(nights.map((night) => [night.winter, night]));
}
