import droppedSql from '../../analysis/records/sql/dropped-by-reason.sql?raw';
import coldestDroppedSql from '../../analysis/records/sql/dropped-coldest.sql?raw';
import stationsSql from '../../analysis/records/sql/winters-by-station.sql?raw';
import type { Asked } from './night-questions.ts';
import type { ResultTable } from './table-rows.ts';

/** What cleaning took out or doubted, counted: verdict, element, reason, count, stations, coldest_c. */
export function droppedByReason(database: Asked): Promise<ResultTable> {
  return database.ask(droppedSql, {});
}

/** The coldest values taken out or doubted: station, date, element, value_c, verdict, reason, detail. */
export function coldestDropped(database: Asked, most: number): Promise<ResultTable> {
  return database.ask(coldestDroppedSql, { most });
}

/** Stations with their winters and nights. */
export function stationsWithNights(database: Asked): Promise<ResultTable> {
  return database.ask(stationsSql, {});
}
