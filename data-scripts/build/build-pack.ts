import { createReadStream } from 'node:fs';
import { appendFile, mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Readable } from 'node:stream';
import type { FeatureCollection } from 'geojson';
import { computeStation } from '../../analysis/gather/compute-station.ts';
import type { BuiltStation } from '../../analysis/gather/judge-winters.ts';
import type { PackDescription } from '../../analysis/gather/pack-manifest.ts';
import { ReasonCount } from '../../analysis/gather/reason-count.ts';
import { StationRegister } from '../../analysis/gather/station-register.ts';
import { parseColumnMap, type ColumnMap } from '../../analysis/read/column-map.ts';
import { readRecords } from '../../analysis/read/read-records.ts';
import { shippedColumnMaps } from '../../analysis/read/shipped-column-maps.ts';
import { findStation, readStationList, type StationList } from '../../analysis/read/station-list.ts';
import type { TemperatureUnit } from '../../analysis/read/units-of-source.ts';
import { InputError, UnknownFormatError } from '../../analysis/records/input-error.ts';
import type { Station } from '../../analysis/records/station.ts';
import { openElevation } from './elevation-file.ts';
import { Spool } from './spool.ts';
import { writeWhole } from './staging.ts';
import { writePack } from './write-pack.ts';

export interface BuildOptions {
  /** Folder of the pack; an old pack there is replaced once the new one is whole. */
  readonly out: string;
  readonly files: readonly string[];
  /** Files that only lay in a folder that was named: passed over, and said so, when their format can't be told. */
  readonly found?: ReadonlySet<string>;
  readonly unit?: TemperatureUnit | null;
  /** File with a column map. */
  readonly columns?: string;
  /** File with the station list. */
  readonly stations?: string;
  /** File with postcodes or places. */
  readonly places?: string;
  /** File with elevations, an Esri ASCII grid or a GeoTIFF; without it the pack has no grid of cells. */
  readonly elevation?: string;
  readonly description: PackDescription;
  /** Outlines for the map; Natural Earth's land when left out. */
  readonly land?: FeatureCollection;
  readonly progress: BuildProgress;
}

export interface BuildProgress {
  /** Bytes of input read, of all. */
  read(bytes: number, total: number, file: string): void;
  /** Stations turned into nights, of all. */
  computed(stations: number, total: number): void;
  tell(sentence: string): void;
}

/**
 * Raw station files to a record pack. Files are read one after another into a spool on disk, stations are then cleaned
 * and computed one after another, so memory stays flat in their number.
 * @throws InputError on the first file that can't be used; nothing is then written
 */
export async function buildPack(options: BuildOptions): Promise<void> {
  const work = await mkdtemp(path.join(tmpdir(), 'citrus-winters-'));
  try {
    // Reading stations may take minutes: a wrong elevation file is told before.
    if (options.elevation !== undefined) await openElevation(options.elevation);
    const listed = await readListedStations(options.stations);
    const register = new StationRegister(listed.byId);
    const spool = new Spool(path.join(work, 'spool'));
    const notes = await readFiles(options, listed, register, spool);
    const computed = await computeStations(options.progress, register, spool, work);
    await writeWhole(options.out, (folder) =>
      writePack(folder, { ...options, ...computed, work, notes: [...notes, ...computed.notes] }),
    );
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}

async function readListedStations(file: string | undefined): Promise<StationList> {
  if (file === undefined) return { byId: new Map(), byFile: new Map() };
  return readStationList(await readFile(file, 'utf8'), path.basename(file), null, shippedColumnMaps());
}

/** Reads every file into the spool; returns what its owner should know. */
async function readFiles(
  options: BuildOptions,
  listed: StationList,
  register: StationRegister,
  spool: Spool,
): Promise<string[]> {
  const columns = options.columns === undefined ? null : await readColumnMap(options.columns);
  const maps = shippedColumnMaps();
  const sizes = await Promise.all(options.files.map(async (file) => (await stat(file)).size));
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const notes: string[] = [];
  let bytes = 0;
  for (const [i, file] of options.files.entries()) {
    const fileName = path.basename(file);
    options.progress.read(bytes, total, fileName);
    const stream = Readable.toWeb(createReadStream(file)) as ReadableStream<Uint8Array>;
    const readings = await readRecords(stream, { fileName, unit: options.unit ?? null, columns, maps }).catch(
      (error: unknown) => {
        if (error instanceof UnknownFormatError && options.found?.has(file)) return error;
        throw error;
      },
    );
    bytes += sizes[i];
    if (readings instanceof UnknownFormatError) {
      notes.push(`Left out: ${readings.message}`);
      options.progress.tell(`left out: ${readings.message}`);
      continue;
    }
    for (const read of [...readings.daily, ...readings.hourly]) {
      const raw = { ...read, station: asListed(read.station, listed, fileName) };
      register.note(raw.station, fileName);
      await spool.add(raw);
    }
    notes.push(...readings.notes);
    for (const { reason, count, lines, example } of readings.badRows) {
      notes.push(`${fileName}: ${count} rows left out, ${reason}, first on line ${lines[0]} ("${example}").`);
    }
  }
  options.progress.read(total, total, '');
  if (spool.stations.length === 0)
    throw new InputError(`none of ${options.files.length} files holds station readings`);
  return notes;
}

/** A station under the id that the list has it by; the list's own words where it knows it by its file alone. */
function asListed(station: Station, list: StationList, fileName: string): Station {
  const found = findStation(list, station.id, fileName);
  if (!found) return station;
  return list.byId.has(found.id) ? { ...station, id: found.id } : found;
}

async function readColumnMap(file: string): Promise<ColumnMap> {
  return parseColumnMap(await readFile(file, 'utf8'), path.basename(file));
}

interface ComputedStations {
  readonly stations: readonly BuiltStation[];
  /** Files with the rows of the database's large tables. */
  readonly nightsFile: string;
  readonly droppedFile: string;
  readonly dropped: Readonly<Record<string, number>>;
  readonly doubtful: Readonly<Record<string, number>>;
  readonly notes: readonly string[];
}

/**
 * @throws InputError when no station has coordinates
 */
async function computeStations(
  progress: BuildProgress,
  register: StationRegister,
  spool: Spool,
  work: string,
): Promise<ComputedStations> {
  const nightsFile = path.join(work, 'nights.csv');
  const droppedFile = path.join(work, 'dropped.csv');
  await Promise.all([nightsFile, droppedFile].map((file) => writeFile(file, '')));
  const ids = [...spool.stations].sort();
  const dropped = new ReasonCount();
  const doubtful = new ReasonCount();
  const notes: string[] = [];
  const stations: BuiltStation[] = [];
  const unplaced: string[] = [];
  for (const [i, id] of ids.entries()) {
    progress.computed(i, ids.length);
    const station = register.located(id);
    const readings = await spool.take(id);
    if (!station) {
      unplaced.push(id);
      continue;
    }
    const computed = computeStation(station, readings);
    await appendFile(nightsFile, computed.nightsCsv);
    await appendFile(droppedFile, computed.droppedCsv);
    dropped.add(computed.dropped);
    doubtful.add(computed.doubtful);
    const moved = register.moved(id);
    notes.push(...(moved ? [moved] : []), ...computed.notes.map((note) => `Station ${id}: ${note}`));
    stations.push(computed.built);
  }
  progress.computed(ids.length, ids.length);
  if (unplaced.length > 0) {
    const some = unplaced.slice(0, 5).join(', ') + (unplaced.length > 5 ? ', …' : '');
    const sentence = `${unplaced.length} of ${ids.length} stations have no coordinates (${some}); give them by --stations FILE.csv with the header id,name,lat,lon,elevation_m`;
    if (stations.length === 0) throw new InputError(sentence);
    notes.push(`Left out: ${sentence}.`);
    progress.tell(`left out: ${sentence}`);
  }
  return { stations, nightsFile, droppedFile, dropped: dropped.counts, doubtful: doubtful.counts, notes };
}
