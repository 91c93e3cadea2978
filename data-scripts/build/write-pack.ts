import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { FeatureCollection } from 'geojson';
import { postcodesNear, US_POSTCODES_SOURCES } from '../../analysis/archive/us-postcodes.ts';
import { CoastDistance } from '../../analysis/gather/coast-distance.ts';
import { judgedWithNeighbours, type BuiltStation } from '../../analysis/gather/judge-winters.ts';
import { ringsOfLand, ringsOfOutlines } from '../../analysis/gather/land-outlines.ts';
import { packLeaveOut } from '../../analysis/gather/leave-out.ts';
import { boxOf, widened, type PackBox } from '../../analysis/gather/pack-box.ts';
import { packManifest, type PackDescription } from '../../analysis/gather/pack-manifest.ts';
import { packStation } from '../../analysis/gather/pack-station.ts';
import { placeModel } from '../../analysis/gather/place-model.ts';
import { stationsCsv, wintersCsv } from '../../analysis/gather/table-csv.ts';
import { winterTiles } from '../../analysis/gather/winter-tiles.ts';
import { encodeGrid } from '../../analysis/records/grid.ts';
import type { PackManifest, PackPlaces, PackStation } from '../../analysis/records/pack.ts';
import { packTiles } from '../../analysis/records/pack-tiles.ts';
import type { WinterTable } from '../../analysis/records/winters.ts';
import { writeDatabase } from './database.ts';
import { buildGrid } from './grid-file.ts';
import { landForMap, worldLand } from './outlines.ts';
import { readPlaces } from './read-places.ts';
import { listFiles } from './staging.ts';
import { allUsPostcodes } from './us-postcodes.ts';

export interface PackContents {
  readonly description: PackDescription;
  readonly stations: readonly BuiltStation[];
  /** CSV files with the rows of the tables of nights and of dropped values. */
  readonly nightsFile: string;
  readonly droppedFile: string;
  readonly dropped: Readonly<Record<string, number>>;
  readonly doubtful: Readonly<Record<string, number>>;
  readonly notes: readonly string[];
  /** File with postcodes. */
  readonly places?: string;
  /** File with elevations; without it a pack has no grid of cells. */
  readonly elevation?: string;
  /** Outlines of an invented region; Natural Earth's land when left out. */
  readonly land?: FeatureCollection;
  /** Folder for files in between. */
  readonly work: string;
}

/** Room around the stations in which postcodes are kept, degrees. */
const PLACES_MARGIN_DEGREES = 1;

/** Writes all files of a pack into an empty folder. */
export async function writePack(folder: string, contents: PackContents): Promise<void> {
  const { description, land } = contents;
  const winters = judgedWithNeighbours(contents.stations);
  const bbox = boxOf(contents.stations.map(({ station }) => station));
  const coast = new CoastDistance(land ? ringsOfOutlines(land) : ringsOfLand(worldLand()));
  const located = contents.stations.map(({ station }) => station);
  const grid = contents.elevation === undefined ? null : await buildGrid(located, contents.elevation, coast);
  const tiles = packTiles(located);
  const stations = contents.stations.map(({ station, basis }) => {
    const elevationM = station.elevationM ?? grid?.stationsM.get(station.id) ?? null;
    const tile = tiles.get(station.id)!;
    return packStation({ ...station, elevationM }, basis, coast.of(station), winters.get(station.id)!, tile);
  });
  await writeJson(folder, 'stations.json', stations);
  await writeJson(folder, 'land.json', land ?? landForMap(bbox));
  if (grid) await writeFile(path.join(folder, 'grid.bin'), encodeGrid(grid.grid));
  const places = await placesOf(contents, bbox);
  if (places) await writeJson(folder, 'places.json', places.places);
  await writeTiles(folder, stations, winters);
  await writeTables(folder, contents, stations, winters);
  const place = placeModel(stations, winters);
  const leftOut = packLeaveOut(
    stations.map((station) => ({ station, winters: winters.get(station.id)! })),
    place,
  );
  if (leftOut) await writeJson(folder, 'leave-out.json', leftOut.details);
  const manifest = packManifest(description, stations, winters, {
    sources: [...description.sources, ...(places?.sources ?? [])],
    files: await listFiles(folder),
    dropped: contents.dropped,
    doubtful: contents.doubtful,
    notes: [...contents.notes, ...(grid?.notes ?? [])],
    place,
    leave_out: leftOut?.errors,
  });
  await writeJson(folder, 'pack.json', manifest);
}

/** Postcodes of the file given, else those of the United States near the stations; null where there are none. */
async function placesOf(
  { places, description, stations }: PackContents,
  bbox: PackBox,
): Promise<{ places: PackPlaces; sources: PackManifest['sources'] } | null> {
  if (places !== undefined) {
    return { places: await readPlaces(places, widened(bbox, PLACES_MARGIN_DEGREES)), sources: [] };
  }
  if (description.invented) return null;
  const postcodes = postcodesNear(
    allUsPostcodes(),
    stations.map(({ station }) => station),
  );
  return postcodes.length === 0 ? null : { places: { postcodes, towns: [] }, sources: US_POSTCODES_SOURCES };
}

async function writeTiles(
  folder: string,
  stations: readonly PackStation[],
  winters: ReadonlyMap<string, WinterTable>,
): Promise<void> {
  await mkdir(path.join(folder, 'winters'));
  for (const [file, bytes] of winterTiles(stations, winters)) await writeFile(path.join(folder, file), bytes);
}

async function writeTables(
  folder: string,
  { work, nightsFile, droppedFile }: PackContents,
  stations: readonly PackStation[],
  winters: ReadonlyMap<string, WinterTable>,
): Promise<void> {
  const stationsFile = path.join(work, 'stations.csv');
  const wintersFile = path.join(work, 'winters.csv');
  await writeFile(stationsFile, stationsCsv(stations));
  await writeFile(wintersFile, wintersCsv(winters));
  await writeDatabase(path.join(folder, 'records.duckdb'), {
    stations: stationsFile,
    nights: nightsFile,
    winters: wintersFile,
    dropped: droppedFile,
  });
}

async function writeJson(folder: string, name: string, value: unknown): Promise<void> {
  await writeFile(path.join(folder, name), `${JSON.stringify(value)}\n`);
}
