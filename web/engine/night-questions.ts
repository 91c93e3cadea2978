import coldestSql from '../../analysis/records/sql/coldest-nights.sql?raw';
import countSql from '../../analysis/records/sql/hit-nights-count.sql?raw';
import byWinterSql from '../../analysis/records/sql/hits-by-winter.sql?raw';
import hitsSql from '../../analysis/records/sql/hits.sql?raw';
import nightsSql from '../../analysis/records/sql/nights-of-station.sql?raw';
import { InputError } from '../../analysis/records/input-error.ts';
import { SUSTAINED_HOURS } from '../../analysis/records/nights.ts';
import { NO_GAINS, type Gains } from '../../analysis/winter/winter-minima.ts';
import type { Parameter } from './bind-named.ts';
import type { ResultTable } from './table-rows.ts';

/** Whoever can ask a named statement; `RecordsDatabase` does. */
export interface Asked {
  ask(sql: string, values: Readonly<Record<string, Parameter>>): Promise<ResultTable>;
}

/** Which nights hit: hours, and threshold plus penalties in °C. */
export interface HitQuestion {
  readonly stationId: string;
  /** One of SUSTAINED_HOURS. */
  readonly hours: number;
  readonly limitC: number;
  readonly gains?: Gains;
}

/** Place of a duration in the columns `s0_c`…`s24_c`, counted from 1 as SQL lists are. */
export function durationIndex(hours: number): number {
  const index = SUSTAINED_HOURS.indexOf(hours as (typeof SUSTAINED_HOURS)[number]);
  if (index < 0) {
    throw new InputError(`Nights are kept for ${SUSTAINED_HOURS.join(', ')} hours, not for ${hours}.`);
  }
  return index + 1;
}

function hitValues({ stationId, hours, limitC, gains = NO_GAINS }: HitQuestion): Record<string, Parameter> {
  return {
    station: stationId,
    duration: durationIndex(hours),
    limit_c: limitC,
    calm_c: gains.calmC,
    windy_c: gains.windyC,
  };
}

/** Nights that hit, by date: date, winter, kind, basis, tmin_c, level_c, spell. */
export function nightsThatHit(database: Asked, question: HitQuestion): Promise<ResultTable> {
  return database.ask(hitsSql, hitValues(question));
}

/** Winters with a hit: winter, nights, spells, first_date, last_date, coldest_c, complete. */
export function hitsByWinter(database: Asked, question: HitQuestion): Promise<ResultTable> {
  return database.ask(byWinterSql, hitValues(question));
}

/** All kept nights of a station with their sustained cold, as the command `records nights` prints them. */
export function nightsOfStation(database: Asked, stationId: string): Promise<ResultTable> {
  return database.ask(nightsSql, { station: stationId });
}

/** The coldest nights of a station for some hours: date, winter, kind, basis, tmin_c, level_c. */
export function coldestNights(
  database: Asked,
  stationId: string,
  hours: number,
  count: number,
): Promise<ResultTable> {
  return database.ask(coldestSql, { station: stationId, duration: durationIndex(hours), count });
}

/** Nights with a hit in complete winters for several limits at once, in the order of the limits. */
export async function countHitNights(
  database: Asked,
  stationId: string,
  limits: readonly { readonly hours: number; readonly limitC: number }[],
  gains: Gains = NO_GAINS,
): Promise<number[]> {
  if (limits.length === 0) return [];
  const { rows } = await database.ask(countSql, {
    station: stationId,
    durations: limits.map(({ hours }) => durationIndex(hours)).join(','),
    limits_c: limits.map(({ limitC }) => limitC).join(','),
    calm_c: gains.calmC,
    windy_c: gains.windyC,
  });
  return rows.map(([, nights]) => Number(nights));
}
