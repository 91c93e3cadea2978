import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { rankTypes } from '../../../analysis/answer/assess.ts';
import { findSubject, type PlaceRequest } from '../../../analysis/answer/find-subject.ts';
import { PlaceHistories } from '../../../analysis/answer/place-histories.ts';
import { fitPlaceParameters } from '../../../analysis/place/fit-parameters.ts';
import { cellCentre, encodeGrid } from '../../../analysis/records/grid.ts';
import { packTiles } from '../../../analysis/records/pack-tiles.ts';
import { PACK_SCHEMA } from '../../../analysis/records/pack.ts';
import { encodeWinterTile } from '../../../analysis/records/winter-tile.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { strictProtection } from '../../../analysis/answer/protection.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { listFiles } from '../../../data-scripts/build/staging.ts';
import { Pack } from '../../../data-scripts/pack/open-pack.ts';
import { PackAnswers } from '../../../web/workers/pack-answers.ts';
import { WinterTiles } from '../../../web/workers/winter-tiles.ts';
import { InventedLand } from '../place/invented-land.ts';
import { inventedGrid, inventedSource } from './invented-source.ts';

const URL = 'http://pack.test/made/';
const never = async (): Promise<boolean> => false;
const tree = { ...MATURE_TREE, ageYears: 3 };

/** A pack on disk of 30 stations and 63 cells, read by the command from its files and by the page over HTTP. */
async function writePack(folder: string): Promise<void> {
  const land = new InventedLand({ seed: 51, winters: 45, share: 0.8 });
  const members = land.members(land.scattered(30, 150, 500), (i, w) => (3 * w + i) % 17 !== 0);
  const corner = land.site(-200, -160);
  const layout = {
    ...{ columns: 9, rows: 7, west: corner.lon, south: corner.lat },
    ...{ stepLonDeg: 0.5, stepLatDeg: 0.45 },
  };
  const { stations } = inventedSource(members);
  const tiles = packTiles(stations);
  const listed = stations.map((station) => ({ ...station, tile: tiles.get(station.id)! }));
  await mkdir(path.join(folder, 'winters'));
  await writeFile(path.join(folder, 'stations.json'), JSON.stringify(listed));
  await writeFile(
    path.join(folder, 'grid.bin'),
    encodeGrid(inventedGrid(layout, (cell) => (cell * 37) % 600)),
  );
  for (const tile of new Set(tiles.values())) {
    const own = members.filter(({ id }) => tiles.get(id) === tile);
    const bytes = encodeWinterTile(new Map(own.map(({ id, winters }) => [id, winters])));
    await writeFile(path.join(folder, `winters/${tile}.arrow`), bytes);
  }
  const manifest = {
    schema: PACK_SCHEMA,
    ...{ id: 'made', title: 'Made', invented: true, hemisphere: 'north', bbox: [-45, 29, -39, 33] },
    winters: { first: 1960, last: 2004 },
    stations: { count: members.length },
    ...{ sources: [], dropped: {}, doubtful: {}, notes: [] },
    files: await listFiles(folder),
    place: fitPlaceParameters(members),
  };
  await writeFile(path.join(folder, 'pack.json'), JSON.stringify(manifest));
}

describe('a place in the page and on the command line', () => {
  let folder: string;
  let pack: Pack;
  let answers: PackAnswers;
  const fetched: string[] = [];
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'place-pack-'));
    await writePack(folder);
    pack = await Pack.open(folder);
    const tiles = await WinterTiles.open(URL, async (url) => {
      fetched.push(url.slice(URL.length));
      const bytes = new Uint8Array(await readFile(path.join(folder, url.slice(URL.length))));
      return { ok: true, status: 200, arrayBuffer: async () => bytes.buffer };
    });
    answers = new PackAnswers(tiles);
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  const commandAnswer = async (place: PlaceRequest, years = 10) => {
    const { subject } = await findSubject(pack, place);
    return rankTypes(subject, {
      types: CITRUS_TYPES,
      levels: LEVELS,
      tree,
      gains: NO_LEVEL_GAIN_SPREADS,
      years,
    });
  };

  it('is answered to the last digit alike, with and without a height, between stations and on one', async () => {
    const on = pack.stations[11];
    const points: PlaceRequest[] = [
      { by: 'point', label: 'a', lat: 31.02, lon: -42.13, elevationM: null },
      { by: 'point', label: 'b', lat: 31.9, lon: -41.2, elevationM: 333 },
      { by: 'point', label: 'c', lat: 29.99, lon: -43.01, elevationM: 0 },
      { by: 'point', label: 'd', lat: on.lat, lon: on.lon, elevationM: on.elevation_m },
    ];
    for (const place of points) {
      const page = await answers.assess({ packUrl: URL, protection: null, place, tree, years: 10 });
      expect(page).toEqual(await commandAnswer(place));
      expect(page.place.basis).toBe('history');
      expect(page.place.error_c! > 0).toBe(place !== points[3]);
    }
  });

  it.each([
    ['meyer_lemon', 'fruit', null],
    ['meyer_lemon', 'kill', 'soil-bank'],
    ['satsuma_owari', 'wood', 'cloth-light,tied'],
    ['mexican_lime', 'leaf', null],
  ] as const)(
    '%s, %s, cover %s: is on the surface what it is alone, cell by cell',
    async (typeId, level, cover) => {
      const texts = {
        ...{ spot: 'out-of-wind', yard: null, measured: null, cover },
        ...({ hemisphere: 'north', container: false } as const),
      };
      const protection = cover === null ? null : texts;
      const gains = protection ? strictProtection(protection).gains : NO_LEVEL_GAIN_SPREADS;
      const type = CITRUS_TYPES.find(({ id }) => id === typeId)!;
      expect(type).toBeDefined();
      const surface = (await answers.surface(
        { packUrl: URL, protection, tree, typeId, level, winters: 'all' },
        never,
      ))!;
      const histories = new PlaceHistories(pack);
      let told = 0;
      for (let cell = 0; cell < surface.states.length; cell++) {
        const { lat, lon } = cellCentre(surface, cell);
        const place = { by: 'point' as const, label: 'cell', lat, lon, elevationM: null };
        if (surface.states[cell] === 2) {
          expect(surface.periods[cell]).toBeNaN();
          await expect(findSubject(pack, place)).rejects.toThrow('from the nearest station');
          continue;
        }
        told++;
        const { subject } = await findSubject(pack, place, histories);
        const question = {
          types: [type],
          levels: [level],
          tree,
          gains,
          years: 10,
          draws: 20,
        };
        const { fitted, counted } = rankTypes(subject, question).types[0].levels[0];
        expect(surface.longestClaims[cell]).toBe(2 * counted.winters);
        if (fitted!.period === null) expect(surface.periods[cell]).toBeGreaterThan(1e12);
        else expect(surface.periods[cell] / fitted!.period).toBeCloseTo(1, 6);
      }
      expect(told).toBeGreaterThan(30);
      expect(told).toBeLessThan(surface.states.length);
    },
  );

  it('loads each file of the pack once', () => {
    expect(new Set(fetched).size).toBe(fetched.length);
    expect(fetched).toContain('grid.bin');
  });
});
