import { group } from 'd3-array';

import type { AssessRequest } from '../../analysis/answer/assess.ts';
import { limitC, type HitNightCount } from '../../analysis/answer/level-answer.ts';
import type { NightPlan } from '../../analysis/place/night-plan.ts';
import { SUSTAINED_HOURS } from '../../analysis/records/nights.ts';
import sql from '../../analysis/records/sql/hit-nights-count.sql?raw';
import { gainsAt } from '../../analysis/winter/gain-spread.ts';
import { countHitNights as countHits } from '../../analysis/winter/hit-nights.ts';
import type { Gains } from '../../analysis/winter/winter-minima.ts';
import type { PackDatabase } from '../pack/database.ts';
import { readPlaceNights } from '../pack/place-nights.ts';

/** Counts the nights with a hit for every type and level asked about, in one statement for all levels that gain alike. */
export async function countHitNights(
  database: PackDatabase,
  station: string,
  { types, levels, tree, gains }: Pick<AssessRequest, 'types' | 'levels' | 'tree' | 'gains'>,
): Promise<HitNightCount> {
  const counts = new Map<string, number>();
  const byGain = group(levels, (level) => key(gainsAt(gains[level], 'centreC')));
  for (const alike of byGain.values()) {
    const { calmC, windyC } = gainsAt(gains[alike[0]], 'centreC');
    const kept = types
      .flatMap((type) =>
        alike.map((level) => ({ hours: type.thresholds[level].hours, limit: limitC({ type, level, tree }) })),
      )
      .filter(({ hours }) => durationIndex(hours) > 0);
    const rows = await database.rows<{ pair: number; nights: number }>(sql, {
      station,
      durations: kept.map(({ hours }) => durationIndex(hours)).join(','),
      limits_c: kept.map(({ limit }) => limit).join(','),
      calm_c: calmC,
      windy_c: windyC,
    });
    for (const { pair, nights } of rows) {
      const { hours, limit } = kept[pair - 1];
      counts.set(`${hours} ${limit} ${key({ calmC, windyC })}`, nights);
    }
  }
  return (hours, limit, gain) => counts.get(`${hours} ${limit} ${key(gain)}`) ?? null;
}

/** The same at a point between stations, from its estimated nights. */
export async function countPlaceHitNights(database: PackDatabase, plan: NightPlan): Promise<HitNightCount> {
  const nights = await readPlaceNights(database, plan);
  return (hours, limit, gains) =>
    durationIndex(hours) > 0 ? countHits(nights, plan.winters, { hours, limitC: limit, gains }) : null;
}

/** Place of a duration among the kept ones, from 1; 0 when it isn't kept. */
function durationIndex(hours: number): number {
  return SUSTAINED_HOURS.findIndex((kept) => kept === hours) + 1;
}

function key({ calmC, windyC }: Gains): string {
  return `${calmC} ${windyC}`;
}
