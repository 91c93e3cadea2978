import { mkdir, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

import { csvLine } from '../../analysis/records/csv-text.ts';
import type { ChosenStation } from '../../analysis/archive/choose-stations.ts';
import { chooseStations } from '../../analysis/archive/choose-stations.ts';
import { INVENTORY, STATION_LIST, recordPath } from '../../analysis/archive/layout.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { download } from './download.ts';
import { ELEVATION_FILE, fetchElevation } from './fetch-elevation.ts';
import type { CheckedOptions, FetchOptions } from './fetch-options.ts';
import { checkOptions } from './fetch-options.ts';
import { countTminDays, linesOf } from './record-days.ts';
import { SourcesFile, writeWhole } from './sources-file.ts';

/** What happens during a fetch; `file` is the path below the output folder. */
export type FetchEvent =
  | { kind: 'stations'; count: number; km: number }
  /** A file begins: number `position` of `count`, where the count is known. */
  | { kind: 'begin'; file: string; position?: number; count?: number }
  | { kind: 'bytes'; file: string; come: number; total: number | undefined }
  | { kind: 'again'; file: string; reason: string; waitMs: number }
  | { kind: 'end'; file: string; outcome: 'whole' | 'unchanged' | 'missing' };

/** What a fetch has brought. */
export interface FetchReport {
  /** Stations whose records are there, nearest and longest first, with their days that have a minimum. */
  readonly stations: readonly (ChosenStation & { readonly tminDays: number })[];
  /** Ids that the archive lists but has no record of. */
  readonly missing: readonly string[];
  /** Path of the elevation grid, null when none was wanted. */
  readonly elevation: string | null;
}

/**
 * Fetches the records of GHCN-Daily stations around a point into `out`: `ID.csv` for each station, `stations.csv`
 * (`id,name,lat,lon,elevation_m`), `sources.json` (licence, attribution, what was fetched) and the archive's own lists in
 * `lists/`; with `elevation` also tiles in `tiles/` and the grid made of them, `elevation.asc.gz`. A file appears under its name only when it is whole and checked. Run again after an interruption, it goes
 * on where it was; run again later, it fetches only what has changed.
 *
 * Throws {@link InputError} with one sentence when an option is outside its limits, when no station is in reach, or
 * when the archive can't be reached; what has come so far stays.
 */
export async function fetchArchive(
  options: FetchOptions,
  progress: (event: FetchEvent) => void = () => {},
): Promise<FetchReport> {
  const checked = checkOptions(options);
  try {
    return await fetchChecked(checked, progress);
  } catch (error) {
    if (!checked.signal?.aborted) throw error;
    throw new InputError('The fetch was stopped; the same command goes on where it was.');
  }
}

async function fetchChecked(
  options: CheckedOptions,
  progress: (event: FetchEvent) => void,
): Promise<FetchReport> {
  const { out } = options;
  await mkdir(join(out, 'lists'), { recursive: true }).catch((error: NodeJS.ErrnoException) => {
    throw new InputError(`The folder ${out} can't be made (${error.code})`);
  });
  const sources = await SourcesFile.open(out);
  const lists = [`lists/${STATION_LIST}`, `lists/${INVENTORY}`];
  for (const [i, name] of [STATION_LIST, INVENTORY].entries()) {
    progress({ kind: 'begin', file: lists[i] });
    if (!(await bring(name, lists[i], options, sources, progress))) {
      throw new InputError(`${options.archive} is no GHCN-Daily archive: it has no ${name}`);
    }
    await pause(options);
  }
  const chosen = await chooseStations(linesOf(join(out, lists[0])), linesOf(join(out, lists[1])), options);
  if (chosen.length === 0) throw new InputError(noStation(options));
  progress({ kind: 'stations', count: chosen.length, km: options.km });

  await sources.write(options, [], []);
  const stations: (ChosenStation & { tminDays: number })[] = [];
  const missing: string[] = [];
  for (const [i, station] of chosen.entries()) {
    const file = `${station.id}.csv`;
    progress({ kind: 'begin', file, position: i + 1, count: chosen.length });
    if (await bring(recordPath(station.id), file, options, sources, progress)) {
      stations.push({ ...station, tminDays: await daysOrRemove(join(out, file), station.id) });
    } else {
      missing.push(station.id);
    }
    await sources.write(options, stations, missing);
    if (i + 1 < chosen.length) await pause(options);
  }
  await writeWhole(join(out, 'stations.csv'), stationsCsv(stations));
  if (!options.elevation) return { stations, missing, elevation: null };
  if (stations.length === 0)
    throw new InputError('No record came, so there is no place to fetch elevations for');
  await fetchElevation(stations, options, progress);
  return { stations, missing, elevation: join(out, ELEVATION_FILE) };
}

/** Brings one file; whether it is there now. */
async function bring(
  path: string,
  file: string,
  options: CheckedOptions,
  sources: SourcesFile,
  progress: (event: FetchEvent) => void,
): Promise<boolean> {
  const url = new URL(path, options.archive).href;
  const target = join(options.out, file);
  await mkdir(dirname(target), { recursive: true });
  const result = await download(url, target, await sources.known(file, url), options, {
    bytes: (come, total) => progress({ kind: 'bytes', file, come, total }),
    again: (reason, waitMs) => progress({ kind: 'again', file, reason, waitMs }),
  });
  if (result.outcome === 'whole') await sources.add(file, result.body);
  progress({ kind: 'end', file, outcome: result.outcome });
  return result.outcome !== 'missing';
}

/** A file that isn't the station's record is taken away again: nothing wrong stays under a final name. */
async function daysOrRemove(path: string, id: string): Promise<number> {
  try {
    return await countTminDays(path, id);
  } catch (error) {
    await rm(path, { force: true });
    throw error;
  }
}

function noStation({ near, km, minYears }: CheckedOptions): string {
  return (
    `Within ${km} km of ${near.lat},${near.lon} the archive has no station with minima and maxima ` +
    `over ${minYears} years or more: try a greater --km or a smaller --min-years`
  );
}

async function pause({ pauseMs, signal }: CheckedOptions): Promise<void> {
  await wait(pauseMs, undefined, { signal });
}

function stationsCsv(stations: readonly ChosenStation[]): string {
  const rows = stations.map(({ id, name, lat, lon, elevationM }) =>
    csvLine([id, name, lat, lon, elevationM]),
  );
  return `${['id,name,lat,lon,elevation_m', ...rows].join('\n')}\n`;
}
