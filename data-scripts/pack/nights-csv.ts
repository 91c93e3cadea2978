import { findSubject, type PlaceRequest } from '../../analysis/answer/find-subject.ts';
import { csvLine, type CsvCell } from '../../analysis/records/csv-text.ts';
import type { KeptNights } from '../../analysis/records/kept-nights.ts';
import {
  MISSING_HUNDREDTHS,
  NIGHT_KINDS,
  SUSTAINED_HOURS,
  type NightBasis,
} from '../../analysis/records/nights.ts';
import sql from '../../analysis/records/sql/nights-of-station.sql?raw';
import { formatIsoDay } from '../../analysis/units/calendar.ts';
import { PackDatabase } from './database.ts';
import { Pack } from './open-pack.ts';
import { readPlaceNights } from './place-nights.ts';

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

type NightRow = Readonly<Record<(typeof COLUMNS)[number], CsvCell>>;

/**
 * All kept nights of a place (minimum at or below 10 °C) as CSV with a header, by date; °C, empty for unknown. Those of a
 * point between stations are estimated.
 * @throws InputError when the pack or the place can't be used
 */
export async function nightsCsv(packFolder: string, place: PlaceRequest): Promise<string> {
  const pack = await Pack.open(packFolder);
  const { stationId, nightPlan: plan } = await findSubject(pack, place);
  const database = await PackDatabase.open(await pack.databaseFile());
  try {
    const rows = plan
      ? estimatedRows(await readPlaceNights(database, plan))
      : await database.rows<NightRow>(sql, { station: stationId });
    const lines = rows.map((row) => csvLine(COLUMNS.map((column) => row[column])));
    return [COLUMNS.join(','), ...lines, ''].join('\n');
  } finally {
    database.close();
  }
}

/** Extremes of the days around aren't estimated: only the night's own cold is. */
function estimatedRows({ day, winter, kind, sustained }: KeptNights): NightRow[] {
  return Array.from(day, (date, i) => {
    const levels = SUSTAINED_HOURS.map((hours, j) => {
      const level = sustained[j][i];
      return [`s${hours}_c`, level === MISSING_HUNDREDTHS ? null : level / 100] as const;
    });
    return {
      date: formatIsoDay(date),
      winter: winter[i],
      kind: NIGHT_KINDS[kind[i]],
      basis: 'estimated' satisfies NightBasis,
      tmin_c: sustained[0][i] / 100,
      ...Object.fromEntries(levels),
    } as NightRow;
  });
}
