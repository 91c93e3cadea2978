import { parseArgs } from 'node:util';
import droppedSql from '../../analysis/records/sql/dropped-by-reason.sql?raw';
import coldestSql from '../../analysis/records/sql/dropped-coldest.sql?raw';
import stationsSql from '../../analysis/records/sql/winters-by-station.sql?raw';
import type { PackLeaveOutErrors } from '../../analysis/records/pack.ts';
import { PackDatabase } from '../pack/database.ts';
import { checkedPath, Pack } from '../pack/open-pack.ts';
import { print, UsageError } from './run-command.ts';

export const CHECK_HELP = `npm run records -- check PACK [--most N]

What is in a pack, what was dropped and what is doubtful; first every file is held against its checksum.

  --most N  how many of the coldest dropped and doubtful values to list (default: 40)
`;

interface StationRow {
  station: string;
  name: string;
  lat: number;
  lon: number;
  elevation_m: number | null;
  basis: string;
  winters_complete: number;
  first_winter: number | null;
  last_winter: number | null;
  nights: number;
  calm: number;
  windy: number;
}
interface ReasonRow {
  verdict: string;
  element: string;
  reason: string;
  count: number;
  stations: number;
  coldest_c: number;
}
interface DroppedRow {
  station: string;
  date: string;
  element: string;
  value_c: number;
  verdict: string;
  reason: string;
  detail: string;
}

/** `records check`. */
export async function recordsCheck(args: string[]): Promise<void> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { most: { type: 'string' } },
  });
  const [folder] = positionals;
  if (positionals.length !== 1) throw new UsageError('exactly one PACK is needed');
  const pack = await Pack.open(folder);
  for (const { path } of pack.manifest.files) await checkedPath(folder, pack.manifest, path);
  const database = await PackDatabase.open(await pack.databaseFile());
  try {
    const stations = await database.rows<StationRow>(stationsSql);
    const reasons = await database.rows<ReasonRow>(droppedSql);
    const coldest = await database.rows<DroppedRow>(coldestSql, { most: Number(values.most ?? 40) });
    await print(
      [...aboutPack(pack), ...aboutStations(stations), ...aboutDropped(reasons, coldest), ''].join('\n'),
    );
  } finally {
    database.close();
  }
}

function aboutPack({ manifest }: Pack): string[] {
  const { title, invented, winters, stations, files, sources, notes } = manifest;
  const bytes = files.reduce((sum, file) => sum + file.bytes, 0);
  return [
    `${title}${invented ? ' (invented)' : ''}: ${stations.count} stations, winters ${winters.first} to ${winters.last}`,
    `${files.length} files, ${(bytes / 1e6).toFixed(1)} MB, every checksum as listed`,
    ...sources.map(({ name, licence, attribution }) => `Source: ${name} (${licence}); ${attribution}`),
    ...notes.map((note) => `Note: ${note}`),
    ...aboutLeaveOut(manifest),
    '',
  ];
}

function aboutLeaveOut({ leave_out: leaveOut }: Pack['manifest']): string[] {
  if (!leaveOut) return [];
  const lines = (how: string, errors: readonly PackLeaveOutErrors[]) =>
    errors.map((found) => {
      const { hours, stations, interval, same_winters: same, hit_ratio: ratio } = found;
      return (
        `Left out ${how}, S_${hours} that 1 winter in 10 reaches at ${stations} stations: mean error ` +
        `${found.mean_error_c.toFixed(2)} °C (bias ${found.bias_c.toFixed(2)}; nearest station ${found.nearest_mean_error_c.toFixed(2)}, ` +
        `inverse distance ${found.inverse_distance_mean_error_c.toFixed(2)}); 90 % interval holds ${percent(interval.coverage)}, ` +
        `width ${interval.mean_width_c.toFixed(1)}; same winters, interpolation alone ${percent(same.coverage)}, ` +
        `width ${same.mean_width_c.toFixed(1)}${ratio === null ? '' : `; winters hit, predicted over observed ${ratio.toFixed(2)}`}`
      );
    });
  return [...lines('by thirds', leaveOut.third), ...lines('one by one', leaveOut.one)];
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

function aboutStations(rows: readonly StationRow[]): string[] {
  return [
    'Stations (complete winters, nights at or below 10 °C, of them calm and windy):',
    ...rows.map((row) => {
      const span = row.first_winter === null ? '' : ` ${row.first_winter}-${row.last_winter}`;
      const height = row.elevation_m === null ? '' : ` ${Math.round(row.elevation_m)} m`;
      return `  ${row.station} ${row.name} (${row.lat}, ${row.lon}${height}, ${row.basis}): ${row.winters_complete} winters${span}, ${row.nights} nights, ${row.calm} calm, ${row.windy} windy`;
    }),
    '',
  ];
}

function aboutDropped(reasons: readonly ReasonRow[], coldest: readonly DroppedRow[]): string[] {
  if (reasons.length === 0) return ['Nothing dropped, nothing doubtful.'];
  return [
    'Dropped and doubtful values by reason:',
    ...reasons.map(
      (row) =>
        `  ${row.verdict} ${row.element}: ${row.count} at ${row.stations} stations, ${row.reason} (coldest ${row.coldest_c.toFixed(1)} °C)`,
    ),
    '',
    'The coldest of them:',
    ...coldest.map(
      (row) =>
        `  ${row.station} ${row.date} ${row.element} ${row.value_c.toFixed(1)} °C, ${row.verdict}: ${row.reason}; ${row.detail}`,
    ),
  ];
}
