import { createHash } from 'node:crypto';
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { limitC } from '../../../analysis/answer/level-answer.ts';
import { decodeGrid, elevationAt } from '../../../analysis/records/grid.ts';
import { MISSING_HUNDREDTHS, SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import hitsByWinterSql from '../../../analysis/records/sql/hits-by-winter.sql?raw';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { winterMinima } from '../../../analysis/winter/winter-minima.ts';
import { buildPack, type BuildOptions } from '../../../data-scripts/build/build-pack.ts';
import { atEveryLevel } from '../../../analysis/tree/level-gains.ts';
import { countHitNights } from '../../../data-scripts/commands/hit-nights.ts';
import { PackDatabase } from '../../../data-scripts/pack/database.ts';
import { Pack } from '../../../data-scripts/pack/open-pack.ts';
import { certainly } from '../../analysis/answer/certain-gain.ts';
import { DESCRIPTION, SILENT, STATIONS, writeInventedFiles } from './invented-files.ts';

let work: string;
let inputs: Awaited<ReturnType<typeof writeInventedFiles>>;
let out: string;
const build = (options: Partial<BuildOptions> = {}) =>
  buildPack({ out, unit: 'C', description: DESCRIPTION, progress: SILENT, ...inputs, ...options });

beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), 'citrus-winters-test-'));
  inputs = await writeInventedFiles(path.join(work, 'raw'));
  out = path.join(work, 'pack');
  await build();
});
afterAll(() => rm(work, { recursive: true, force: true }));

describe('a built pack', () => {
  it('opens, and lists every file with its size and checksum', async () => {
    const pack = await Pack.open(out);
    expect(pack.manifest.files.map((file) => file.path).sort()).toEqual(
      [
        'land.json',
        'leave-out.json',
        'places.json',
        'records.duckdb',
        'stations.json',
        'winters/n30w042.arrow',
        'winters/n30w044.arrow',
      ].sort(),
    );
    expect(pack.stations.map((station) => station.id)).toEqual(STATIONS.map((station) => station.id));
    for (const station of pack.stations) {
      // 1990 to 2015: the winters 1991 to 2015 are whole, 1990 and 2016 are cut.
      expect(station.winters).toEqual({ complete: 25, first: 1991, last: 2015 });
      // The sea is all around: a station off every shore has no way to the coast.
      expect(station.coast_km).toBe(0);
    }
    expect(pack.places.postcodes).toEqual([
      { code: 'ZZ 1', name: 'Invented Quarter', lat: 31.02, lon: -42.01 },
    ]);
  });

  it('with an elevation file has a grid of cells, and elevations for stations that had none', async () => {
    const elevation = path.join(work, 'elevation.asc');
    const rows = Array.from({ length: 120 }, (_, r) => Array.from({ length: 120 }, () => 10 + r).join(' '));
    const header = 'ncols 120\nnrows 120\nxllcorner -42.6\nyllcorner 30.5\ncellsize 0.01\n';
    await writeFile(elevation, `${header}${rows.join('\n')}\n`);
    const stations = path.join(work, 'bare.csv');
    await writeFile(stations, (await readFile(inputs.stations, 'utf8')).replace(/,10\n$/, ',\n'));
    const folder = path.join(work, 'pack-high');
    await build({ out: folder, stations, elevation });
    const { manifest, stations: listed } = await Pack.open(folder);
    const bytes = await readFile(path.join(folder, 'grid.bin'));
    const entry = manifest.files.find((file) => file.path === 'grid.bin')!;
    expect(entry.bytes).toBe(bytes.length);
    expect(entry.sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
    const grid = decodeGrid(bytes);
    // Row r counts from 31.7 N southwards in steps of 0.01: 31.1 N is between rows 59 and 60.
    expect(elevationAt(grid, 31.1, -42.1)).toBeCloseTo(69.5, 0);
    expect(listed.map((station) => station.elevation_m).slice(0, 3)).toEqual([10, 10, 10]);
    expect(listed[3].elevation_m).toBeGreaterThanOrEqual(69);
    expect(listed[3].elevation_m).toBeLessThanOrEqual(70);
    expect(manifest.notes).toContain(
      'Elevation of station ZZTEST4 taken from elevation.asc, since no file told it.',
    );
  });

  it('is not begun with an elevation file that lies elsewhere', async () => {
    const elevation = path.join(work, 'elsewhere.asc');
    await writeFile(elevation, 'ncols 2\nnrows 2\nxllcorner 5\nyllcorner 5\ncellsize 1\n1 2\n3 4\n');
    const folder = path.join(work, 'pack-elsewhere');
    await expect(build({ out: folder, elevation })).rejects.toThrow(/they don't overlap/);
    await expect(readdir(folder)).rejects.toThrow('ENOENT');
  });

  it('counts the same winters hit by SQL over nights and by the winters table, for every type, level and gain', async () => {
    const pack = await Pack.open(out);
    const database = await PackDatabase.open(await pack.databaseFile());
    try {
      for (const gains of [
        { calmC: 0, windyC: 0 },
        { calmC: 2.5, windyC: 1 },
      ]) {
        const [station] = pack.stations;
        const winters = await pack.winters(station);
        let seen = 0;
        for (const type of CITRUS_TYPES) {
          for (const level of LEVELS) {
            const { hours } = type.thresholds[level];
            const limit = limitC({ type, level, tree: { ...MATURE_TREE, ageYears: 1 } });
            const minima = winterMinima(winters, hours, gains);
            const expected = [...winters.winter].filter(
              (_, w) => minima[w] !== MISSING_HUNDREDTHS && minima[w] <= Math.round(limit * 100),
            );
            const rows = await database.rows<{ winter: number; coldest_c: number }>(hitsByWinterSql, {
              station: station.id,
              duration: SUSTAINED_HOURS.findIndex((kept) => kept === hours) + 1,
              limit_c: limit,
              calm_c: gains.calmC,
              windy_c: gains.windyC,
            });
            expect(
              rows.map((row) => row.winter),
              `${type.id} ${level}`,
            ).toEqual(expected);
            for (const { winter, coldest_c } of rows) {
              expect(Math.round(coldest_c * 100)).toBe(minima[winters.winter.indexOf(winter)]);
            }
            seen += rows.length;
          }
        }
        expect(seen).toBeGreaterThan(200);
      }
    } finally {
      database.close();
    }
  });

  it('counts nights with a hit in one statement as it does winter by winter', async () => {
    const pack = await Pack.open(out);
    const database = await PackDatabase.open(await pack.databaseFile());
    try {
      const [station] = pack.stations;
      const types = CITRUS_TYPES.slice(0, 4);
      const gains = { calmC: 1, windyC: 0 };
      const count = await countHitNights(database, station.id, {
        types,
        levels: LEVELS,
        tree: MATURE_TREE,
        gains: atEveryLevel(certainly(gains.calmC, gains.windyC)),
      });
      for (const type of types) {
        for (const level of LEVELS) {
          const { hours } = type.thresholds[level];
          const limit = limitC({ type, level, tree: MATURE_TREE });
          const rows = await database.rows<{ nights: number; complete: boolean }>(hitsByWinterSql, {
            station: station.id,
            duration: SUSTAINED_HOURS.findIndex((kept) => kept === hours) + 1,
            limit_c: limit,
            calm_c: gains.calmC,
            windy_c: gains.windyC,
          });
          const nights = rows.reduce((sum, row) => sum + (row.complete ? row.nights : 0), 0);
          expect(count(hours, limit, gains)).toBe(nights);
        }
      }
    } finally {
      database.close();
    }
  });

  it('leaves a winter out when its gap holds the night the neighbours had their coldest', async () => {
    const pack = await Pack.open(out);
    const [first, second] = pack.stations;
    const winters = await pack.winters(second);
    const w = winters.winter.indexOf(2003);
    const night = [0, 1, 2]
      .map((kind) => ({ level: winters.coldest[kind][0][w], day: winters.coldestDay[kind][0][w] }))
      .filter(({ level }) => level !== MISSING_HUNDREDTHS)
      .sort((a, b) => a.level - b.level)[0].day;
    const date = new Date(night * 86_400_000).toISOString().slice(0, 10);
    const text = await readFile(inputs.files[0], 'utf8');
    const holed = path.join(work, 'raw-holed', `${first.id}.csv`);
    await cp(path.join(work, 'raw'), path.join(work, 'raw-holed'), { recursive: true });
    await writeFile(
      holed,
      text
        .split('\n')
        .filter((line) => !line.startsWith(date))
        .join('\n'),
    );
    const other = path.join(work, 'pack-holed');
    await build({ out: other, files: [holed, ...inputs.files.slice(1)] });
    const gap = await Pack.open(other);
    const table = await gap.winters(gap.stations[0]);
    expect(table.reason[table.winter.indexOf(2003)]).toMatch(
      new RegExp(`^misses ${date}, the coldest night at \\d of 3`),
    );
  });
});

describe('a build that fails', () => {
  it('leaves the old pack whole and nothing else behind', async () => {
    const before = await readFile(path.join(out, 'pack.json'), 'utf8');
    const entries = (await readdir(work)).sort();
    const bad = path.join(work, 'raw', 'bad.csv');
    await writeFile(bad, 'nothing,of,use\n1,2,3\n');
    await expect(build({ files: [...inputs.files, bad] })).rejects.toThrow('bad.csv');
    expect(await readFile(path.join(out, 'pack.json'), 'utf8')).toBe(before);
    expect((await readdir(work)).sort()).toEqual(entries);
    await rm(bad);
  });

  it('says that stations without coordinates need a list', async () => {
    await expect(build({ out: path.join(work, 'none'), stations: undefined })).rejects.toThrow(
      /4 of 4 stations have no coordinates \(ZZTEST1, ZZTEST2, ZZTEST3, ZZTEST4\); give them by --stations/,
    );
  });

  it('does not replace a folder that holds something else', async () => {
    await expect(build({ out: path.join(work, 'raw') })).rejects.toThrow('holds files but no pack.json');
  });
});

describe('a pack that can not be used', () => {
  const damaged = async (name: string, change: (folder: string) => Promise<void>) => {
    const folder = path.join(work, name);
    await cp(out, folder, { recursive: true });
    await change(folder);
    return folder;
  };

  it('of another schema version is refused with both versions', async () => {
    const folder = await damaged('newer', async (copy) => {
      const file = path.join(copy, 'pack.json');
      const manifest = JSON.parse(await readFile(file, 'utf8')) as object;
      await writeFile(file, JSON.stringify({ ...manifest, schema: 7 }));
    });
    await expect(Pack.open(folder)).rejects.toThrow(
      /schema version 7 can't be read; this program reads versions 1 to 1/,
    );
  });

  it('with a changed byte is refused by its checksum, with a cut file by its size', async () => {
    const changed = await damaged('changed', async (copy) => {
      const file = path.join(copy, 'stations.json');
      await writeFile(file, (await readFile(file, 'utf8')).replace('ZZTEST1', 'ZZTEST7'));
    });
    await expect(Pack.open(changed)).rejects.toThrow(/stations.json is damaged/);
    const cut = await damaged('cut', async (copy) => {
      const file = path.join(copy, 'records.duckdb');
      await writeFile(file, (await readFile(file)).subarray(0, 5000));
    });
    await expect((await Pack.open(cut)).databaseFile()).rejects.toThrow(
      /records.duckdb has 5000 bytes, pack.json says/,
    );
  });

  it('is refused when it is no pack at all', async () => {
    await expect(Pack.open(path.join(work, 'raw'))).rejects.toThrow('is not a pack: it has no pack.json');
  });
});
