import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { listFiles, writeWhole } from '../../data-scripts/build/staging.ts';
import { packTiles } from '../../analysis/records/pack-tiles.ts';
import { seededRandom } from '../../analysis/math/seeded-random.ts';
import { fitPlaceParameters } from '../../analysis/place/fit-parameters.ts';
import type { Site } from '../../analysis/place/site.ts';
import type { Member } from '../../analysis/place/station-network.ts';
import { cellCentre, encodeGrid, type PlaceGrid } from '../../analysis/records/grid.ts';
import { PACK_SCHEMA, type PackManifest, type PackStation } from '../../analysis/records/pack.ts';
import { encodeWinterTile } from '../../analysis/records/winter-tile.ts';
import { inventedStation } from '../analysis/answer/invented-source.ts';
import { InventedLand } from '../analysis/place/invented-land.ts';

/** Part of the title, so that a pack made by an older script is made again. */
const EDITION = 4;
const TITLE = `Invented continent ${EDITION}`;
const STATIONS = 5000;
const WINTERS = 60;
/** Stations lie in a box of this size around the middle, km: as dense as the public network of the United States. */
const WIDE_KM = 3600;
const HIGH_KM = 2200;
const COLUMNS = 125;
const ROWS = 80;

/** A land of 10,000 cells with 5,000 stations and 60 winters each, all invented. Without a database of nights. */
export async function ensureLargePack(folder: string): Promise<void> {
  const made = await readFile(path.join(folder, 'pack.json'), 'utf8').catch(() => '{}');
  if ((JSON.parse(made) as Partial<PackManifest>).title === TITLE) return;
  await mkdir(path.dirname(folder), { recursive: true });
  await writeWhole(folder, writePack);
}

async function writePack(folder: string): Promise<void> {
  const land = new InventedLand({ seed: 77, winters: WINTERS, share: 0.8, middleC: -2 });
  const random = seededRandom(78);
  const members = stationSites(land).map((site, i) => {
    const first = Math.floor(25 * random.uniform());
    return land.member(
      `Z${String(i).padStart(5, '0')}`,
      site,
      i,
      (w) => w >= first && (w * 7 + i) % 23 !== 0,
    );
  });
  const stations = members.map(stationOf);
  const tiles = packTiles(stations);
  const listed = stations.map((station) => ({ ...station, tile: tiles.get(station.id)! }));
  const write = async (name: string, content: Uint8Array | string): Promise<void> => {
    await mkdir(path.dirname(path.join(folder, name)), { recursive: true });
    await writeFile(path.join(folder, name), content);
  };
  await write('stations.json', JSON.stringify(listed));
  const grid = gridOf(land);
  await write('grid.bin', encodeGrid(grid));
  for (const tile of new Set(tiles.values())) {
    const own = members.filter(({ id }) => tiles.get(id) === tile);
    await write(
      `winters/${tile}.arrow`,
      encodeWinterTile(new Map(own.map(({ id, winters }) => [id, winters]))),
    );
  }
  await write('pack.json', JSON.stringify(await manifestOf(folder, members)));
}

/** Half of the stations anywhere, half around 120 towns, as networks are. */
function stationSites(land: InventedLand): Site[] {
  const random = seededRandom(79);
  const anywhere = (): [number, number] => [
    (random.uniform() - 0.5) * WIDE_KM,
    (random.uniform() - 0.5) * HIGH_KM,
  ];
  const towns = Array.from({ length: 120 }, anywhere);
  return Array.from({ length: STATIONS }, (_, i) => {
    let [east, north] = anywhere();
    if (i % 2 === 1) {
      const [townEast, townNorth] = towns[i % towns.length];
      east = townEast + 40 * random.normal();
      north = townNorth + 40 * random.normal();
    }
    return siteAt(land, east, north, 30 * random.normal());
  });
}

function siteAt(land: InventedLand, east: number, north: number, above = 0): Site {
  const hills =
    350 + 300 * Math.sin(east / 170) * Math.cos(north / 210) + 200 * Math.sin((east + north) / 60);
  const coastKm = Math.max(0, HIGH_KM / 2 + north);
  return land.site(east, north, Math.max(0, Math.round(hills + above)), Math.round(coastKm * 10) / 10);
}

function gridOf(land: InventedLand): PlaceGrid {
  const corner = land.site(-WIDE_KM / 2, -HIGH_KM / 2);
  const far = land.site(WIDE_KM / 2, HIGH_KM / 2);
  const layout = {
    columns: COLUMNS,
    rows: ROWS,
    west: corner.lon,
    south: corner.lat,
    stepLonDeg: (far.lon - corner.lon) / (COLUMNS - 1),
    stepLatDeg: (far.lat - corner.lat) / (ROWS - 1),
  };
  const sites = Array.from({ length: COLUMNS * ROWS }, (_, cell) => {
    const { lat, lon } = cellCentre(layout, cell);
    const east = ((lon - corner.lon) / (far.lon - corner.lon) - 0.5) * WIDE_KM;
    const north = ((lat - corner.lat) / (far.lat - corner.lat) - 0.5) * HIGH_KM;
    return siteAt(land, east, north);
  });
  return {
    ...layout,
    elevationM: Float32Array.from(sites, ({ elevationM }) => elevationM!),
    coastKm: Float32Array.from(sites, ({ coastKm }) => coastKm!),
    // Four cells in five: 8,000 of them.
    land: Uint8Array.from(sites, (_, cell) => (cell % 5 === 4 ? 0 : 1)),
  };
}

function stationOf(member: Member): PackStation {
  const { lat, lon } = member.site;
  return {
    ...inventedStation(member),
    lat: Math.round(lat * 1e4) / 1e4,
    lon: Math.round(lon * 1e4) / 1e4,
    tile: '',
  };
}

async function manifestOf(folder: string, members: readonly Member[]): Promise<PackManifest> {
  const lats = members.map(({ site }) => site.lat);
  const lons = members.map(({ site }) => site.lon);
  const files = await listFiles(folder);
  return {
    schema: PACK_SCHEMA,
    id: 'large',
    title: TITLE,
    invented: true,
    hemisphere: 'north',
    bbox: [Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)],
    winters: { first: 1960, last: 1960 + WINTERS - 1 },
    stations: { count: members.length },
    sources: [],
    files,
    dropped: {},
    doubtful: {},
    notes: ['Invented for measuring.'],
    place: fitPlaceParameters(members),
  };
}
