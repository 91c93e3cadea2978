import type { FoundSubject } from '../../analysis/answer/find-subject.ts';
import type { NightPlan } from '../../analysis/place/night-plan.ts';
import { placeNights } from '../../analysis/place/place-nights.ts';
import { keptNights, type KeptNights } from '../../analysis/records/kept-nights.ts';
import sql from '../../analysis/records/sql/kept-nights.sql?raw';
import type { PackDatabase } from './database.ts';

/** The nights of a place: a station's own, or estimated ones. */
export async function readNights(
  database: PackDatabase,
  { stationId, nightPlan }: Pick<FoundSubject, 'stationId' | 'nightPlan'>,
): Promise<KeptNights> {
  if (nightPlan) return readPlaceNights(database, nightPlan);
  if (stationId === null) throw new Error('A place has the nights of a station or a plan for them.');
  return keptNights(await database.table(sql, { station: stationId }));
}

/** The nights of a point between stations, from those of the stations its plan names. */
export async function readPlaceNights(database: PackDatabase, plan: NightPlan): Promise<KeptNights> {
  const nights: KeptNights[] = [];
  for (const station of plan.stationIds) nights.push(keptNights(await database.table(sql, { station })));
  return placeNights(plan, nights);
}
