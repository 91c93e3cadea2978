import { readFileSync } from 'node:fs';
import path from 'node:path';
import { gunzipSync } from 'node:zlib';

import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { recordPath } from '../../analysis/archive/layout.ts';
import { stationsNearby } from '../../analysis/archive/stations-nearby.ts';
import { readRecords } from '../../analysis/read/read-records.ts';
import { fetchStations, recordUrl, type StationProgress } from '../../web/archive/fetch-stations.ts';
import { PassingParts } from '../../web/archive/part-store.ts';
import { readStationIndex } from '../../web/archive/read-index.ts';
import { LoopbackArchive } from '../data-scripts/fetch/loopback-archive.ts';
import { haveRealData, REAL_DATA } from './real-records.ts';

/** A station's record in the archive's fixed-width form: months of one element. */
interface RealRecord {
  readonly id: string;
  readonly dly: Buffer;
  /** The same values as the archive's table a station. */
  readonly csv: string;
  readonly years: ReadonlyMap<string, readonly [number, number]>;
  readonly tminDays: number;
}

/** From the columns that section III of the archive's readme gives. */
function realRecord(id: string): RealRecord {
  const dly = gunzipSync(readFileSync(path.join(REAL_DATA, 'ghcn-daily', `${id}.dly.gz`)));
  const rows: string[] = [];
  const years = new Map<string, [number, number]>();
  for (const line of dly.toString('latin1').split('\n')) {
    const [year, month, element] = [line.slice(11, 15), line.slice(15, 17), line.slice(17, 21)];
    for (let day = 0; day < 31; day++) {
      const at = 21 + 8 * day;
      const value = line.slice(at, at + 5).trim();
      if (value === '' || value === '-9999') continue;
      const flags = [...line.slice(at + 5, at + 8)].map((flag) => flag.trim());
      rows.push(
        [id, `${year}${month}${String(day + 1).padStart(2, '0')}`, element, value, ...flags, ''].join(','),
      );
      const [first, last] = years.get(element) ?? [9999, 0];
      years.set(element, [Math.min(first, Number(year)), Math.max(last, Number(year))]);
    }
  }
  const csv = `ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n${rows.join('\n')}\n`;
  return { id, dly, csv, years, tminDays: rows.filter((row) => row.split(',')[2] === 'TMIN').length };
}

/** Days with a minimum and its value, in the order of the days. */
function minima({ day, tminC }: { day: Int32Array; tminC: Float64Array }): [day: number, tminC: number][] {
  return [...day]
    .map((number, i): [number, number] => [number, tminC[i]!])
    .filter(([, value]) => !Number.isNaN(value))
    .sort(([a], [b]) => a - b);
}

describe.skipIf(!haveRealData)('real records, served as the archive lays them out', () => {
  const IDS = ['CA006105976', 'CA006105978', 'USC00305816'];
  const archive = new LoopbackArchive([]);
  const store = new PassingParts();
  let base = '';
  let records: readonly RealRecord[] = [];
  const how = () => ({
    fetcher: fetch,
    store,
    tries: 2,
    backoffMs: 1,
    silenceMs: 5000,
    met: new Set<string>(),
    noIfRange: new Set<string>(),
  });

  beforeAll(async () => {
    records = IDS.map(realRecord);
    base = await archive.open();
    const at = (n: number) => ` ${(45 + n / 100).toFixed(4).padStart(8)} ${(-75).toFixed(4).padStart(9)}`;
    const inventory = records.flatMap(({ id, years }, n) =>
      [...years].map(([element, [first, last]]) => `${id}${at(n)} ${element} ${first} ${last}\n`),
    );
    archive.files.set('/ghcnd-inventory.txt', Buffer.from(inventory.join('')));
    const list = records.map(({ id }, n) => `${id}${at(n)}   79.0    ${'A STATION'.padEnd(30)}\n`);
    archive.files.set('/ghcnd-stations.txt', Buffer.from(list.join('')));
    for (const { id, csv } of records) archive.files.set(`/${recordPath(id)}`, Buffer.from(csv));
  });
  afterAll(() => archive.close());

  it('come whole, and hold the days that the fixed-width files hold', async () => {
    const progress = new Map<string, StationProgress>();
    const politeness = { atOnce: 2, pauseMs: 0 };
    expect(await fetchStations(IDS, base, how(), politeness, (id, heard) => progress.set(id, heard))).toEqual(
      IDS,
    );
    for (const { id, tminDays, dly } of records) {
      expect(progress.get(id)).toMatchObject({ phase: 'there', tminDays });
      const read = async (bytes: Blob, fileName: string) => {
        const { daily } = await readRecords(bytes.stream(), {
          fileName,
          unit: null,
          columns: null,
          maps: [],
        });
        return daily[0]!;
      };
      const fetched = await read(await store.content(recordUrl(id, base)), `${id}.csv`);
      const fixed = await read(new Blob([new Uint8Array(dly)]), `${id}.dly`);
      expect(minima(fetched)).toEqual(minima(fixed));
      expect(fetched.station.id).toBe(id);
    }
  });

  it('are estimated by their years to within half of their size, and hardly too small', async () => {
    const index = await readStationIndex(base, how(), { bytes: () => {}, again: () => {} });
    const nearby = stationsNearby(index, { lat: 45, lon: -75 }, 50);
    expect(nearby).toHaveLength(IDS.length);
    for (const { id, expectedBytes } of nearby) {
      const bytes = records.find((record) => record.id === id)!.csv.length;
      console.log(`${id}: ${bytes} bytes, estimated ${expectedBytes}`);
      expect(expectedBytes / bytes).toBeGreaterThan(0.95);
      expect(expectedBytes / bytes).toBeLessThan(1.5);
    }
  });
});
