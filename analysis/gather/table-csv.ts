import type { PackStation } from '../records/pack.ts';
import type { WinterTable } from '../records/winters.ts';
import { csvText } from './night-csv.ts';

/** Tables of a pack's database, in the order in which they are filled. */
export const TABLES = ['stations', 'nights', 'winters', 'dropped'] as const;
export type Table = (typeof TABLES)[number];

/** How the lines below are to be read: no header, an empty cell is unknown, a quoted empty cell an empty text. */
export const CSV_FORMAT = "format csv, header false, auto_detect false, nullstr '', allow_quoted_nulls false";

/** Lines of the `stations` table. */
export function stationsCsv(stations: readonly PackStation[]): string {
  return stations
    .map((s) =>
      [
        csvText(s.id),
        csvText(s.name),
        s.lat,
        s.lon,
        s.elevation_m ?? '',
        s.coast_km ?? '',
        s.basis,
        s.winters.complete,
        s.winters.first ?? '',
        s.winters.last ?? '',
      ].join(','),
    )
    .map((line) => `${line}\n`)
    .join('');
}

/** Lines of the `winters` table. */
export function wintersCsv(winters: ReadonlyMap<string, WinterTable>): string {
  return [...winters]
    .flatMap(([id, table]) =>
      Array.from(
        table.winter,
        (label, w) => `${csvText(id)},${label},${table.complete[w] === 1},${csvText(table.reason[w])}\n`,
      ),
    )
    .join('');
}
