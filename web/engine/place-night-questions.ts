import type { NightPlan } from '../../analysis/place/night-plan.ts';
import { placeNights } from '../../analysis/place/place-nights.ts';
import { keptNights, type KeptNights } from '../../analysis/records/kept-nights.ts';
import type { NightBasis } from '../../analysis/records/nights.ts';
import keptSql from '../../analysis/records/sql/kept-nights.sql?raw';
import { formatIsoDay } from '../../analysis/units/calendar.ts';
import { hitNights, type HitLimit } from '../../analysis/winter/hit-nights.ts';
import type { Asked } from './night-questions.ts';
import type { ResultTable } from './table-rows.ts';

/** Every kept night of a station in arrays. */
export async function keptNightsOf(database: Asked, station: string): Promise<KeptNights> {
  const { rows } = await database.ask(keptSql, { station });
  return keptNights(rows as readonly (readonly number[])[]);
}

/** The nights of a point between stations, from those of the stations its plan names, read one after another. */
export async function nightsOfPlace(database: Asked, plan: NightPlan): Promise<KeptNights> {
  const nights: KeptNights[] = [];
  for (const id of plan.stationIds) nights.push(await keptNightsOf(database, id));
  return placeNights(plan, nights);
}

/** Estimated nights that hit, in the columns that `hits.sql` has for a station. */
export function estimatedNightsThatHit(nights: KeptNights, limit: HitLimit): ResultTable {
  const basis: NightBasis = 'estimated';
  return {
    columns: ['date', 'winter', 'kind', 'basis', 'tmin_c', 'level_c', 'spell'],
    types: ['text', 'integer', 'text', 'text', 'number', 'number', 'integer'],
    rows: hitNights(nights, limit).map(({ day, winter, kind, minimumC, levelC, spell }) => [
      formatIsoDay(day),
      winter,
      kind,
      basis,
      minimumC,
      levelC,
      spell,
    ]),
    truncated: false,
  };
}
