import { t } from '../../analysis/language/t.ts';
import hitsSql from '../../analysis/records/sql/hits.sql?raw';
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
function durationIndex(hours: number): number {
  const index = SUSTAINED_HOURS.indexOf(hours as (typeof SUSTAINED_HOURS)[number]);
  if (index < 0) {
    throw new InputError(t`Nights are kept for ${SUSTAINED_HOURS.join(', ')} hours, not for ${hours}.`);
  }
  return index + 1;
}

/** Nights that hit, by date: date, winter, kind, basis, tmin_c, level_c, spell. */
export function nightsThatHit(
  database: Asked,
  { stationId, hours, limitC, gains = NO_GAINS }: HitQuestion,
): Promise<ResultTable> {
  return database.ask(hitsSql, {
    station: stationId,
    duration: durationIndex(hours),
    limit_c: limitC,
    calm_c: gains.calmC,
    windy_c: gains.windyC,
  });
}
