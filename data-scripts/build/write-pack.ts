import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { FeatureCollection } from 'geojson';
import {
  PACK_SCHEMA,
  type PackManifest,
  type PackPlaceModel,
  type PackPlaces,
  type PackStation,
} from '../../analysis/records/pack.ts';
import { encodeGrid } from '../../analysis/records/grid.ts';
import type { LocatedStation } from '../../analysis/records/station.ts';
import { packTiles } from '../../analysis/records/pack-tiles.ts';
import { encodeWinterTile } from '../../analysis/records/winter-tile.ts';
import type { WinterTable } from '../../analysis/records/winters.ts';
import { memberOf } from '../../analysis/answer/place-histories.ts';
import { fitPlaceParameters } from '../../analysis/place/fit-parameters.ts';
import { canTakePart } from '../../analysis/place/station-network.ts';
import { judgeCompleteness } from '../../analysis/winter/completeness.ts';
import type { KnownNights } from '../../analysis/winter/known-nights.ts';
import { hemisphereOf, type Hemisphere } from '../../analysis/winter/winter-year.ts';
import { writeDatabase } from './database.ts';
import { csvText } from './night-csv.ts';
import { CoastDistance } from './coast-distance.ts';
import { buildGrid } from './grid-file.ts';
import { packLeaveOut } from './leave-out.ts';
import { ringsOfLand, ringsOfOutlines } from './land-outlines.ts';
import { landForMap, worldLand } from './outlines.ts';
import { readPlaces } from './read-places.ts';
import { regionalFreezes } from './regional-freezes.ts';
import { listFiles } from './staging.ts';
import { US_POSTCODES_SOURCES, usPostcodes } from './us-postcodes.ts';

export interface PackDescription {
  readonly id: string;
  readonly title: string;
  readonly invented: boolean;
  readonly sources: PackManifest['sources'];
}

export interface BuiltStation {
  readonly station: LocatedStation;
  readonly basis: PackStation['basis'];
  readonly hemisphere: Hemisphere;
  /** Winters judged from the station alone. */
  readonly winters: WinterTable;
  readonly known: KnownNights;
}

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
  const place = placeParameters(stations, winters);
  const leftOut = packLeaveOut(
    stations.map((station) => ({ station, winters: winters.get(station.id)! })),
    place,
  );
  if (leftOut) await writeJson(folder, 'leave-out.json', leftOut.details);
  const hemispheres = new Set(contents.stations.map(({ hemisphere }) => hemisphere));
  const manifest: PackManifest = {
    schema: PACK_SCHEMA,
    ...description,
    sources: [...description.sources, ...(places?.sources ?? [])],
    hemisphere: hemispheres.size === 2 ? 'both' : [...hemispheres][0],
    bbox,
    winters: spanOf([...winters.values()]),
    stations: { count: stations.length },
    files: await listFiles(folder),
    dropped: sorted(contents.dropped),
    doubtful: sorted(contents.doubtful),
    notes: [...contents.notes, ...(grid?.notes ?? [])],
    place,
    ...(leftOut ? { leave_out: leftOut.errors } : {}),
  };
  await writeJson(folder, 'pack.json', manifest);
}

/** How winters vary over the land of the stations: fitted by the hemisphere that has most of them. */
function placeParameters(
  stations: readonly PackStation[],
  winters: ReadonlyMap<string, WinterTable>,
): PackPlaceModel {
  const members = stations.map((station) => memberOf(station, winters.get(station.id)!));
  const able = members.filter((member) => canTakePart(member.winters));
  const south = able.filter(({ site }) => hemisphereOf(site.lat) === 'south');
  const north = able.filter(({ site }) => hemisphereOf(site.lat) === 'north');
  return fitPlaceParameters(south.length > north.length ? south : north);
}

/** Postcodes of the file given, else those of the United States near the stations; null where there are none. */
async function placesOf(
  { places, description, stations }: PackContents,
  bbox: readonly [number, number, number, number],
): Promise<{ places: PackPlaces; sources: PackManifest['sources'] } | null> {
  if (places !== undefined) {
    return { places: await readPlaces(places, widened(bbox, PLACES_MARGIN_DEGREES)), sources: [] };
  }
  if (description.invented) return null;
  const postcodes = usPostcodes(stations.map(({ station }) => station));
  return postcodes.length === 0 ? null : { places: { postcodes, towns: [] }, sources: US_POSTCODES_SOURCES };
}

/** The winters of all stations, judged again with what the neighbours show of regional freezes. */
function judgedWithNeighbours(stations: readonly BuiltStation[]): Map<string, WinterTable> {
  const alone = new Map(stations.map(({ station, winters }) => [station.id, winters]));
  const freezes = regionalFreezes(
    stations.map(({ station }) => station),
    alone,
  );
  return new Map(
    stations.map(({ station, hemisphere, winters, known }) => [
      station.id,
      { ...winters, ...judgeCompleteness(winters.winter, hemisphere, known, freezes(station.id)) },
    ]),
  );
}

function packStation(
  { id, name, lat, lon, elevationM }: LocatedStation,
  basis: PackStation['basis'],
  coastKm: number,
  winters: WinterTable,
  tile: string,
): PackStation {
  const complete = [...winters.winter].filter((_, w) => winters.complete[w] === 1);
  return {
    id,
    name: name || id,
    lat,
    lon,
    elevation_m: elevationM,
    coast_km: Number.isFinite(coastKm) ? Math.round(coastKm * 10) / 10 : null,
    winters: { complete: complete.length, first: complete[0] ?? null, last: complete.at(-1) ?? null },
    basis,
    tile,
  };
}

async function writeTiles(
  folder: string,
  stations: readonly PackStation[],
  winters: ReadonlyMap<string, WinterTable>,
): Promise<void> {
  await mkdir(path.join(folder, 'winters'));
  for (const tile of new Set(stations.map((station) => station.tile))) {
    const inside = stations.filter((station) => station.tile === tile);
    const tables = new Map(inside.map(({ id }) => [id, winters.get(id)!]));
    await writeFile(path.join(folder, 'winters', `${tile}.arrow`), encodeWinterTile(tables));
  }
}

async function writeTables(
  folder: string,
  { work, nightsFile, droppedFile }: PackContents,
  stations: readonly PackStation[],
  winters: ReadonlyMap<string, WinterTable>,
): Promise<void> {
  const stationsFile = path.join(work, 'stations.csv');
  const wintersFile = path.join(work, 'winters.csv');
  await writeFile(
    stationsFile,
    stations
      .map(
        (s) =>
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
          ].join(',') + '\n',
      )
      .join(''),
  );
  await writeFile(
    wintersFile,
    [...winters]
      .flatMap(([id, table]) =>
        Array.from(
          table.winter,
          (label, w) => `${csvText(id)},${label},${table.complete[w] === 1},${csvText(table.reason[w])}\n`,
        ),
      )
      .join(''),
  );
  await writeDatabase(path.join(folder, 'records.duckdb'), {
    stations: stationsFile,
    nights: nightsFile,
    winters: wintersFile,
    dropped: droppedFile,
  });
}

/** First and last winter that is complete at some station; of a pack without one, the winters that have any night. */
function spanOf(tables: readonly WinterTable[]): PackManifest['winters'] {
  const of = (counts: (table: WinterTable, w: number) => boolean) =>
    tables.flatMap((table) => [...table.winter].filter((_, w) => counts(table, w)));
  const complete = of((table, w) => table.complete[w] === 1);
  const winters = complete.length > 0 ? complete : of(() => true);
  return { first: winters.reduce((a, b) => Math.min(a, b)), last: winters.reduce((a, b) => Math.max(a, b)) };
}

function boxOf(stations: readonly LocatedStation[]): [number, number, number, number] {
  const lats = stations.map(({ lat }) => lat);
  const lons = stations.map(({ lon }) => lon);
  return [Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)];
}

function widened(
  [west, south, east, north]: readonly number[],
  by: number,
): [number, number, number, number] {
  return [west - by, south - by, east + by, north + by];
}

function sorted(counts: Readonly<Record<string, number>>): Record<string, number> {
  return Object.fromEntries(Object.entries(counts).sort(([a], [b]) => (a < b ? -1 : 1)));
}

async function writeJson(folder: string, name: string, value: unknown): Promise<void> {
  await writeFile(path.join(folder, name), `${JSON.stringify(value)}\n`);
}
