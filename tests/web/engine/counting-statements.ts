import { SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import countSql from '../../../analysis/records/sql/hit-nights-count.sql?raw';
import byWinterSql from '../../../analysis/records/sql/hits-by-winter.sql?raw';
import { NO_GAINS, type Gains } from '../../../analysis/winter/winter-minima.ts';
import type { Asked, HitQuestion } from '../../../web/engine/night-questions.ts';
import type { ResultTable } from '../../../web/engine/table-rows.ts';

/** Place of a duration in the lists of the statements, from 1. */
const durationIndex = (hours: number): number => SUSTAINED_HOURS.indexOf(hours as 4) + 1;

/** Winters with a hit: winter, nights, spells, first_date, last_date, coldest_c, complete. */
export function hitsByWinter(
  database: Asked,
  { stationId, hours, limitC, gains = NO_GAINS }: HitQuestion,
): Promise<ResultTable> {
  return database.ask(byWinterSql, {
    station: stationId,
    duration: durationIndex(hours),
    limit_c: limitC,
    calm_c: gains.calmC,
    windy_c: gains.windyC,
  });
}

/** Nights with a hit in complete winters for several limits at once, in the order of the limits. */
export async function countHitNights(
  database: Asked,
  stationId: string,
  limits: readonly { readonly hours: number; readonly limitC: number }[],
  gains: Gains,
): Promise<number[]> {
  const { rows } = await database.ask(countSql, {
    station: stationId,
    durations: limits.map(({ hours }) => durationIndex(hours)).join(','),
    limits_c: limits.map(({ limitC }) => limitC).join(','),
    calm_c: gains.calmC,
    windy_c: gains.windyC,
  });
  return rows.map(([, nights]) => Number(nights));
}
