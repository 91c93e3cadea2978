import type { AssessRequest } from '../../analysis/answer/assess.ts';
import { limitC, type HitNightCount } from '../../analysis/answer/level-answer.ts';
import type { NightPlan } from '../../analysis/place/night-plan.ts';
import { SUSTAINED_HOURS } from '../../analysis/records/nights.ts';
import sql from '../../analysis/records/sql/hit-nights-count.sql?raw';
import { countHitNights as countHits } from '../../analysis/winter/hit-nights.ts';
import type { PackDatabase } from '../pack/database.ts';
import { readPlaceNights } from '../pack/place-nights.ts';

/** Counts, in one statement, the nights with a hit for every type and level asked about. */
export async function countHitNights(
  database: PackDatabase,
  station: string,
  { types, levels, tree, gains }: Pick<AssessRequest, 'types' | 'levels' | 'tree' | 'gains'>,
): Promise<HitNightCount> {
  const pairs = types.flatMap((type) =>
    levels.map((level) => ({ hours: type.thresholds[level].hours, limit: limitC({ type, level, tree }) })),
  );
  const kept = pairs.filter(({ hours }) => durationIndex(hours) > 0);
  const rows = await database.rows<{ pair: number; nights: number }>(sql, {
    station,
    durations: kept.map(({ hours }) => durationIndex(hours)).join(','),
    limits_c: kept.map(({ limit }) => limit).join(','),
    calm_c: gains.calmC,
    windy_c: gains.windyC,
  });
  const counts = new Map(
    rows.map(({ pair, nights }) => [key(kept[pair - 1].hours, kept[pair - 1].limit), nights]),
  );
  return (hours, limit) => counts.get(key(hours, limit)) ?? null;
}

/** The same at a point between stations, from its estimated nights. */
export async function countPlaceHitNights(
  database: PackDatabase,
  plan: NightPlan,
  { gains }: Pick<AssessRequest, 'gains'>,
): Promise<HitNightCount> {
  const nights = await readPlaceNights(database, plan);
  return (hours, limit) =>
    durationIndex(hours) > 0 ? countHits(nights, plan.winters, { hours, limitC: limit, gains }) : null;
}

/** Place of a duration among the kept ones, from 1; 0 when it isn't kept. */
function durationIndex(hours: number): number {
  return SUSTAINED_HOURS.findIndex((kept) => kept === hours) + 1;
}

function key(hours: number, limit: number): string {
  return `${hours}:${limit}`;
}
