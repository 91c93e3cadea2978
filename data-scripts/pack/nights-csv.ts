import sql from '../../analysis/records/sql/nights-of-station.sql?raw';
import { PackDatabase } from './database.ts';
import { Pack } from './open-pack.ts';

const COLUMNS = [
  'date',
  'winter',
  'kind',
  'basis',
  'tmin_c',
  'tmax_before_c',
  'tmax_after_c',
  's0_c',
  's1_c',
  's2_c',
  's3_c',
  's4_c',
  's5_c',
  's6_c',
  's8_c',
  's10_c',
  's12_c',
  's18_c',
  's24_c',
] as const;

/**
 * All kept nights of a station (minimum at or below 10 °C) as CSV with a header, by date; °C, empty for unknown.
 * @throws InputError when the pack or the station can't be used
 */
export async function nightsCsv(packFolder: string, stationId: string): Promise<string> {
  const pack = await Pack.open(packFolder);
  const station = pack.station(stationId);
  const database = await PackDatabase.open(await pack.databaseFile());
  try {
    const rows = await database.rows<Record<(typeof COLUMNS)[number], unknown>>(sql, { station: station.id });
    const lines = rows.map((row) => COLUMNS.map((column) => row[column] ?? '').join(','));
    return [COLUMNS.join(','), ...lines, ''].join('\n');
  } finally {
    database.close();
  }
}
