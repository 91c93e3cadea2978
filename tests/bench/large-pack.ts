import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { listFiles, writeWhole } from '../../data-scripts/build/staging.ts';
import { boxOf } from '../../analysis/gather/pack-box.ts';
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
import { writeInventedNights } from './invented-nights.ts';
import { inventedOutlines, inventedPlaces } from './invented-places.ts';

/** What of a pack to make. */
export interface LargePackPlan {
  readonly id: string;
  /** With an edition, so that a pack made by an older script is made again. */
  readonly title: string;
  readonly stations: number;
  /** A database of nights, outlines and postcodes too, as a site would serve: for 5,000 stations some minutes and 1 GB. */
  readonly whole: boolean;
}

const CONTINENT: LargePackPlan = {
  id: 'large',
  title: 'Invented continent 4',
  stations: 5000,
  whole: false,
};
const WINTERS = 60;
/** Stations lie in a box around the middle, km: 5,000 in one of this size are as dense as the public network of the United States. */
const WIDE_KM = 3600;
const HIGH_KM = 2200;
const TOWNS = 120;
const COLUMNS = 125;
const ROWS = 80;

/** A land of 10,000 cells with stations of 60 winters each, all invented; 5,000 of them without a database of nights, unless told. */
export async function ensureLargePack(folder: string, plan = CONTINENT): Promise<void> {
  const made = await readFile(path.join(folder, 'pack.json'), 'utf8').catch(() => '{}');
  if ((JSON.parse(made) as Partial<PackManifest>).title === plan.title) return;
  await mkdir(path.dirname(folder), { recursive: true });
  await writeWhole(folder, (staged) => writePack(staged, plan));
}

async function writePack(folder: string, plan: LargePackPlan): Promise<void> {
  const land = new InventedLand({ seed: 77, winters: WINTERS, share: 0.8, middleC: -2 });
  const random = seededRandom(78);
  const box = boxFor(plan.stations);
  const members = stationSites(land, plan.stations, box).map((site, i) => {
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
  const grid = gridOf(land, box);
  await write('grid.bin', encodeGrid(grid));
  for (const tile of new Set(tiles.values())) {
    const own = members.filter(({ id }) => tiles.get(id) === tile);
    await write(
      `winters/${tile}.arrow`,
      encodeWinterTile(new Map(own.map(({ id, winters }) => [id, winters]))),
    );
  }
  if (plan.whole) {
    await write('places.json', JSON.stringify(inventedPlaces(listed)));
    await write('land.json', JSON.stringify(inventedOutlines(boxOf(listed))));
    await writeInventedNights(path.join(folder, 'records.duckdb'), listed);
  }
  await write('pack.json', JSON.stringify(await manifestOf(folder, members, plan)));
}

interface Box {
  readonly wideKm: number;
  readonly highKm: number;
  readonly towns: number;
}

/** As dense a network for fewer stations. */
function boxFor(stations: number): Box {
  const share = stations / CONTINENT.stations;
  return {
    wideKm: WIDE_KM * Math.sqrt(share),
    highKm: HIGH_KM * Math.sqrt(share),
    towns: Math.round(TOWNS * share),
  };
}

/** Half of the stations anywhere, half around towns, as networks are. */
function stationSites(land: InventedLand, stations: number, box: Box): Site[] {
  const random = seededRandom(79);
  const anywhere = (): [number, number] => [
    (random.uniform() - 0.5) * box.wideKm,
    (random.uniform() - 0.5) * box.highKm,
  ];
  const towns = Array.from({ length: box.towns }, anywhere);
  return Array.from({ length: stations }, (_, i) => {
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

function gridOf(land: InventedLand, { wideKm, highKm }: Box): PlaceGrid {
  const corner = land.site(-wideKm / 2, -highKm / 2);
  const far = land.site(wideKm / 2, highKm / 2);
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
    const east = ((lon - corner.lon) / (far.lon - corner.lon) - 0.5) * wideKm;
    const north = ((lat - corner.lat) / (far.lat - corner.lat) - 0.5) * highKm;
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

async function manifestOf(
  folder: string,
  members: readonly Member[],
  { id, title }: LargePackPlan,
): Promise<PackManifest> {
  const files = await listFiles(folder);
  return {
    schema: PACK_SCHEMA,
    id,
    title,
    invented: true,
    hemisphere: 'north',
    bbox: boxOf(members.map(({ site }) => site)),
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
