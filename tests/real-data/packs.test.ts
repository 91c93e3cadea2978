import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { completeValuesC } from '../../analysis/answer/winter-values.ts';
import type { TemperatureUnit } from '../../analysis/read/units-of-source.ts';
import { celsiusToFahrenheit, fahrenheitToCelsius } from '../../analysis/units/temperature.ts';
import { NO_GAINS, winterMinima } from '../../analysis/winter/winter-minima.ts';
import { buildPack } from '../../data-scripts/build/build-pack.ts';
import { PackDatabase } from '../../data-scripts/pack/database.ts';
import { Pack } from '../../data-scripts/pack/open-pack.ts';
import { haveRealData, REAL_DATA } from './real-records.ts';

const SILENT = { read: () => {}, computed: () => {}, tell: () => {} };
let work: string;

beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), 'citrus-winters-test-'));
});
afterAll(() => rm(work, { recursive: true, force: true }));

interface Folder {
  readonly files?: readonly string[];
  readonly unit?: TemperatureUnit;
  readonly stations?: string;
}

async function build(
  folder: string,
  { files, unit = 'C', stations = 'stations.csv' }: Folder = {},
): Promise<Pack> {
  const out = path.join(work, folder.replaceAll('/', '-'));
  const inside = (await readdir(path.join(REAL_DATA, folder), { withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(REAL_DATA, folder, entry.name));
  const list = path.isAbsolute(stations) ? stations : path.join(REAL_DATA, stations);
  const chosen = (files ? files.map((file) => path.join(REAL_DATA, folder, file)) : inside).filter(
    (file) => file !== list,
  );
  const description = { id: 'real', title: folder, invented: false, sources: [] };
  await buildPack({
    out,
    files: chosen,
    found: new Set(inside),
    unit,
    stations: list,
    description,
    progress: SILENT,
  });
  return Pack.open(out);
}

async function minimumOn(pack: Pack, station: string, date: string): Promise<number | null> {
  const database = await PackDatabase.open(await pack.databaseFile());
  try {
    const sql = 'select tmin_c::double as c from nights where station = $station and date = $date::date';
    const rows = await database.rows<{ c: number }>(sql, { station, date });
    return rows[0]?.c ?? null;
  } finally {
    database.close();
  }
}

describe.skipIf(!haveRealData)('packs of real records', () => {
  it('hold the great freezes the archives report', async () => {
    const pack = await build('ghcn-daily', {
      files: [
        'USW00012916_new_orleans.csv.gz',
        'USW00012816_1960-2022_degF.csv.gz',
        'USW00013960_dallas_love.csv.gz',
      ],
      unit: 'F',
    });
    // NOAA GHCN-Daily: 11 °F at New Orleans and 1 °F at Dallas on 23 December 1989, 10 °F at Gainesville on 21 January 1985.
    for (const [station, date, lowF] of [
      ['USW00012916', '1989-12-23', 11],
      ['USW00012816', '1985-01-21', 10],
      ['USW00013960', '1989-12-23', 1],
    ] as const) {
      expect(await minimumOn(pack, station, date), station).toBeCloseTo(fahrenheitToCelsius(lowF), 2);
    }
  }, 120_000);

  // USDA: a zone is the mean of the yearly lowest minimum over 1991-2020 in bands of 5 °F; the map's published zone of the
  // station's ZIP code. The map interpolates between stations, so the station's own mean may lie up to 3 °F outside.
  it('have mean yearly minima 1991-2020 in the published hardiness zone of their ZIP code', async () => {
    const zones = [
      ['USW00012916', '70062', 25, 30],
      ['USW00013960', '75235', 15, 20],
      ['USW00023271', '95826', 25, 30],
      ['USW00014739', '02128', 0, 5],
      ['USW00014826', '48507', -10, -5],
    ] as const;
    const pack = await build('ghcn-daily', {
      files: [
        'USW00012916_new_orleans.csv.gz',
        'USW00013960_dallas_love.csv.gz',
        'USW00023271.csv.gz',
        'USW00014739_boston.csv.gz',
        'USW00014826_flint.csv.gz',
      ],
      unit: 'F',
    });
    for (const [id, zip, fromF, toF] of zones) {
      const winters = await pack.winters(pack.station(id));
      const span = {
        ...winters,
        complete: winters.complete.map((whole, w) =>
          winters.winter[w] >= 1991 && winters.winter[w] <= 2020 ? whole : 0,
        ),
      };
      const values = completeValuesC(span, winterMinima(span, 0, NO_GAINS));
      expect(values.length, id).toBeGreaterThanOrEqual(28);
      const meanF = celsiusToFahrenheit(values.reduce((sum, value) => sum + value, 0) / values.length);
      expect(meanF, `${id} in ZIP ${zip}`).toBeGreaterThan(fromF - 3);
      expect(meanF, `${id} in ZIP ${zip}`).toBeLessThan(toF + 3);
    }
  }, 180_000);

  it.each<[string, number, Folder]>([
    ['agweather-southeast-us', 9, {}],
    ['ghcn-daily-michigan', 13, {}],
    ['other-daily', 6, {}],
    ['trentino-italy', 31, {}],
    ['us-cornbelt-network', 111, {}],
    ['aemet-spain-1950-2024', 34, {}],
    ['aemet-spain', 78, { stations: 'aemet-spain/stations_maestro.csv' }],
    ['australia-bom', 5, {}],
  ])(
    'are built from the whole folder %s',
    async (folder, stations, options) => {
      const pack = await build(folder, options);
      expect(pack.stations.length).toBeGreaterThanOrEqual(stations);
      expect(pack.stations.filter((station) => station.winters.complete > 0).length).toBeGreaterThan(
        stations / 2,
      );
    },
    240_000,
  );

  it('are built from hourly files, daily and hourly stations alike', async () => {
    const list = path.join(work, 'airports.csv');
    await writeFile(
      list,
      'id,name,lat,lon,elevation_m\n071690-99999,Troyes,48.32,4.02,112\n071800-99999,Nancy,48.69,6.22,212\n' +
        '071810-99999,Ochey,48.58,5.95,336\n071900-99999,Strasbourg,48.54,7.63,150\n317350-99999,Khabarovsk,48.53,135.19,75\n',
    );
    const pack = await build('hourly/isd-lite', { stations: list });
    expect(pack.stations.map((station) => station.basis)).toEqual(new Array(5).fill('hourly'));
  }, 120_000);
});
