import { expect, it } from 'vitest';
import { assemblePack, type JoinedPack, type PackParts } from '../../../analysis/gather/assemble-pack.ts';
import { computeStation } from '../../../analysis/gather/compute-station.ts';
import { isDaily, type RawReadings } from '../../../analysis/gather/raw-readings.ts';
import { readRecords } from '../../../analysis/read/read-records.ts';
import type { PackStation } from '../../../analysis/records/pack.ts';
import type { LocatedStation } from '../../../analysis/records/station.ts';
import { decodeWinterTile } from '../../../analysis/records/winter-tile.ts';
import { dailyText, STATIONS } from '../../data-scripts/build/invented-files.ts';

const DESCRIPTION = { id: 'own-1', title: 'Invented', invented: true, sources: [] };
const LAND = { type: 'FeatureCollection' as const, features: [] };

async function readingsOf(at: number, lastYear: number): Promise<RawReadings[]> {
  const { id, colderC } = STATIONS[at];
  const text = dailyText(colderC, 1990, lastYear, 100 + at);
  const { daily, hourly } = await readRecords(new Blob([text]).stream(), {
    fileName: `${id}.csv`,
    unit: 'C',
  });
  return [...daily, ...hourly];
}

function located(at: number): LocatedStation {
  const { id, lat, lon } = STATIONS[at];
  return { id, name: `Invented ${id}`, lat, lon, elevationM: 10 };
}

const partsOf = async (which: readonly number[], more: Partial<PackParts> = {}): Promise<PackParts> => ({
  description: DESCRIPTION,
  computed: await Promise.all(
    which.map(async (at) => computeStation(located(at), await readingsOf(at, 2015))),
  ),
  joined: null,
  land: LAND,
  coastKm: () => 0,
  places: null,
  notes: [],
  ...more,
});

/** A finished pack read back, as the page reads one it joins. */
async function finished(which: readonly number[]): Promise<JoinedPack> {
  const pack = assemblePack(await partsOf(which));
  const stations = JSON.parse(pack.files.get('stations.json') as string) as PackStation[];
  const tiles = [...pack.files].filter(([path]) => path.startsWith('winters/'));
  return {
    manifest: { ...pack.manifest([]), title: 'Before', dropped: { spike: 3 }, notes: ['Said before.'] },
    stations,
    winters: new Map(tiles.flatMap(([path, bytes]) => [...decodeWinterTile(bytes as Uint8Array, path)])),
    places: { postcodes: [{ code: 'ZZ 1', name: 'Invented Quarter', lat: 31, lon: -42 }], towns: [] },
    grid: null,
  };
}

it('joins a finished pack: all its stations stand beside the new one, with their winters, places and counts', async () => {
  const pack = assemblePack(await partsOf([2], { joined: await finished([0, 1]) }));
  const stations = JSON.parse(pack.files.get('stations.json') as string) as PackStation[];
  expect(stations.map(({ id }) => id)).toEqual(['ZZTEST1', 'ZZTEST2', 'ZZTEST3']);
  expect(pack.joinedStations).toEqual(['ZZTEST1', 'ZZTEST2']);
  const manifest = pack.manifest([{ path: 'a', bytes: 1, sha256: '0' }]);
  expect(manifest.stations.count).toBe(3);
  expect(manifest.dropped.spike).toBeGreaterThanOrEqual(3);
  expect(manifest.notes).toContain('Said before.');
  expect(manifest.notes).toContain('2 stations of “Before” stand in this pack as they do there.');
  expect(manifest.leave_out).toBeUndefined();
  expect(manifest.files).toEqual([{ path: 'a', bytes: 1, sha256: '0' }]);
  expect(JSON.parse(pack.files.get('places.json') as string).postcodes).toHaveLength(1);
  const winters = new Map(
    stations.flatMap(({ tile }) => [
      ...decodeWinterTile(pack.files.get(`winters/${tile}.arrow`) as Uint8Array),
    ]),
  );
  const before = (await finished([0, 1])).winters.get('ZZTEST1')!;
  expect(winters.get('ZZTEST1')!.coldest).toEqual(before.coldest);
  expect(winters.get('ZZTEST3')!.winter.length).toBe(before.winter.length);
  expect(pack.tables.stations.trim().split('\n')).toHaveLength(3);
});

it('takes the station just computed where it stands in the joined pack too', async () => {
  const pack = assemblePack(await partsOf([1], { joined: await finished([0, 1]) }));
  expect(pack.joinedStations).toEqual(['ZZTEST1']);
  expect(pack.stations).toBe(2);
  expect(pack.manifest([]).notes).toContain(
    '1 stations of “Before” were replaced by own records of the same id.',
  );
});

it('gives a pack of one station without shores, places or height: unknown stays unknown', async () => {
  const parts = await partsOf([0], { coastKm: () => Infinity });
  const pack = assemblePack({
    ...parts,
    computed: parts.computed.map((one) => ({
      ...one,
      built: { ...one.built, station: { ...one.built.station, elevationM: null } },
    })),
  });
  const [station] = JSON.parse(pack.files.get('stations.json') as string) as PackStation[];
  expect(station).toMatchObject({ coast_km: null, elevation_m: null });
  expect(station.winters.complete).toBe(25);
  expect(JSON.parse(pack.files.get('places.json') as string)).toEqual({ postcodes: [], towns: [] });
  expect(pack.manifest([])).toMatchObject({ hemisphere: 'north', winters: { first: 1991, last: 2015 } });
});

it('tells daily from hourly readings', async () => {
  const [first] = await readingsOf(0, 1991);
  expect(isDaily(first)).toBe(true);
});

it('takes a height that nobody tells from the grid of the pack it joins, in whole metres', async () => {
  const joined = await finished([0, 1]);
  const [{ lat, lon }] = STATIONS.slice(2);
  const grid = {
    ...{ columns: 1, rows: 1, west: lon, south: lat, stepLonDeg: 0.1, stepLatDeg: 0.1 },
    ...{ elevationM: Float32Array.of(69.6), coastKm: Float32Array.of(1), land: Uint8Array.of(1) },
  };
  const station = { ...located(2), elevationM: null };
  const computed = [computeStation(station, await readingsOf(2, 2015))];
  const heightWith = async (told: JoinedPack): Promise<number | null> => {
    const pack = assemblePack(await partsOf([], { computed, joined: told }));
    const stations = JSON.parse(pack.files.get('stations.json') as string) as PackStation[];
    return stations.find(({ id }) => id === station.id)!.elevation_m;
  };
  expect(await heightWith({ ...joined, grid })).toBe(70);
  expect(await heightWith(joined)).toBeNull();
});
