import fc from 'fast-check';

import { checkPackManifest, checkPackStations, checkPlaces } from '../../analysis/records/check-pack.ts';
import { decodeGrid, elevationAt, encodeGrid } from '../../analysis/records/grid.ts';
import { NIGHT_KINDS, SUSTAINED_HOURS } from '../../analysis/records/nights.ts';
import { decodeWinterTile, encodeWinterTile } from '../../analysis/records/winter-tile.ts';
import type { WinterTable } from '../../analysis/records/winters.ts';
import { loadPack, loadPackIndex } from '../../web/data/load-pack.ts';
import { anyText, damaged, damagedBytes, damagedJson } from './damage.ts';
import { laterOrRefused, must, property, readOrRefused, type ReaderProperty } from './reader-property.ts';

const MANIFEST = {
  ...{ schema: 1, id: 'own-1', title: 'Invented pair', invented: true, hemisphere: 'north' },
  ...{ bbox: [-43, 30, -41, 32], winters: { first: 1952, last: 2025 }, stations: { count: 2 }, notes: ['a'] },
  sources: [{ name: 'a', licence: 'b', attribution: 'c' }],
  files: [{ path: 'winters/n30w042.arrow', bytes: 3, sha256: 'a'.repeat(64) }],
  ...{ dropped: { spike: 2 }, doubtful: {} },
  place: {
    mean: { kind: 'exponential', sill: 2, rangeKm: 200, nugget: 1 },
    logScale: { kind: 'spherical', sill: 0.1, rangeKm: 200, nugget: 0 },
    anomaly: { share: 0.8, rangeKm: 900 },
    fitted: true,
  },
};
const STATIONS = ['ZZ1', 'ZZ2'].map((id) => ({
  ...{ id, name: id, lat: 31, lon: -42, elevation_m: null, coast_km: 3, basis: 'daily', tile: 'n30w042' },
  winters: { complete: 30, first: 1952, last: 2025 },
}));
const PLACES = {
  postcodes: [{ code: 'SC 101', name: 'Tern', lat: 31, lon: -42 }],
  towns: [{ name: 'Tern', lat: 31, lon: -42, rank: 1 }],
};

const winters: WinterTable = {
  winter: Int16Array.of(2001, 2002, 2003),
  complete: Uint8Array.of(1, 0, 1),
  reason: ['', 'gaps', ''],
  coldest: NIGHT_KINDS.map(() => SUSTAINED_HOURS.map((_, at) => Int16Array.of(-300 + at, -20 + at, 5 + at))),
  coldestDay: NIGHT_KINDS.map(() => SUSTAINED_HOURS.map(() => Int32Array.of(11_000, 11_400, 11_800))),
};
const TILE = encodeWinterTile(new Map([['ZZ1', winters], ['ZZ2', winters]])); // prettier-ignore
const GRID = encodeGrid({
  ...{ columns: 4, rows: 3, west: -43, south: 30, stepLonDeg: 0.5, stepLatDeg: 0.5 },
  elevationM: Float32Array.from({ length: 12 }, (_, at) => at * 10),
  coastKm: Float32Array.from({ length: 12 }, (_, at) => at),
  land: new Uint8Array(12).fill(1),
});

const isPlace = ({ lat, lon }: { readonly lat: number; readonly lon: number }): boolean =>
  Math.abs(lat) <= 90 && Math.abs(lon) <= 180;

export const PACKS: readonly ReaderProperty[] = [
  property(
    'pack.json, stations.json, places.json: of the shape that readers rely on, or one sentence',
    fc.tuple(damagedJson(MANIFEST), damagedJson(STATIONS), damagedJson(PLACES)),
    ([one, two, three]) => {
      const manifest = readOrRefused(() => checkPackManifest(one, 'pack.json'));
      if (manifest) {
        must(manifest.title.trim() !== '' && manifest.bbox.every(Number.isFinite), 'no title or no box');
        must(
          manifest.files.every(({ path, bytes }) => !path.split('/').includes('..') && bytes >= 0),
          'a file outside',
        );
        must(
          manifest.sources
            .map(({ name, licence, attribution }) => name + licence + attribution)
            .every((text) => typeof text === 'string'),
          'a source without words',
        );
        must(Number.isInteger(manifest.winters.first + manifest.winters.last), 'winters that are none');
      }
      const stations = readOrRefused(() => checkPackStations(two, 'stations.json'));
      must(
        stations?.every(
          (station) => isPlace(station) && /^[a-z0-9-]+$/.test(station.tile) && station.name.length >= 0,
        ) ?? true,
        'a station nowhere',
      );
      const places = readOrRefused(() => checkPlaces(three, 'places.json'));
      must(
        [...(places?.postcodes ?? []), ...(places?.towns ?? [])].every(
          (place) => isPlace(place) && place.name.length >= 0,
        ),
        'a place nowhere',
      );
    },
  ),
  property(
    'a pack as the site sends it: open, or one sentence',
    fc.tuple(
      damagedJson([{ id: 'a', title: 'A', path: 'a' }]),
      damagedJson(MANIFEST),
      damagedJson(STATIONS),
      fc.boolean(),
    ),
    async ([index, manifest, stations, torn]) => {
      const sent: Record<string, unknown> = {
        'index.json': index,
        'pack.json': manifest,
        'stations.json': stations,
        'places.json': PLACES,
        'land.json': null,
      };
      const fetcher = async (url: string) => ({
        ...{ ok: true, status: 200 },
        json: async () =>
          (torn && url.endsWith('stations.json')
            ? JSON.parse('[{')
            : sent[url.split('/').at(-1)!]) as unknown,
      });
      const list = await laterOrRefused(() => loadPackIndex('http://localhost/packs/', fetcher));
      if (list) await laterOrRefused(() => loadPack('http://localhost/packs/', list[0], fetcher));
    },
  ),
  property(
    'winters: damaged bytes are whole tables or one sentence',
    fc.oneof({ weight: 8, arbitrary: damagedBytes(fc.constant(TILE)) }, fc.uint8Array({ maxLength: 80 })),
    (bytes) => {
      for (const [id, table] of readOrRefused(() => decodeWinterTile(bytes, 'tile')) ?? []) {
        must(typeof id === 'string', 'a station without an id');
        const count = table.winter.length;
        must(
          table.coldest.length === NIGHT_KINDS.length &&
            table.coldest.every(
              (levels) =>
                levels.length === SUSTAINED_HOURS.length && levels.every(({ length }) => length === count),
            ),
          'columns of other lengths',
        );
        must(table.reason.length === count && table.complete.length === count, 'columns of other lengths');
      }
    },
  ),
  property(
    'grid.bin: damaged bytes are cells on earth or one sentence',
    fc.oneof({ weight: 8, arbitrary: damagedBytes(fc.constant(GRID)) }, fc.uint8Array({ maxLength: 80 })),
    (bytes) => {
      const grid = readOrRefused(() => decodeGrid(bytes, 'grid.bin'));
      if (!grid) return;
      must(
        [grid.west, grid.south, grid.stepLonDeg, grid.stepLatDeg].every(Number.isFinite),
        'cells of no size',
      );
      must(grid.elevationM.length === grid.columns * grid.rows, 'cells are missing');
      const height = elevationAt(grid, 30.5, -42.5);
      must(height === null || Number.isFinite(height), `height ${height}`);
    },
  ),
  property(
    'outlines and places that are no text at all',
    fc.oneof(anyText, damaged(fc.constant(JSON.stringify(PLACES)))),
    (text) => {
      let value: unknown = text;
      try {
        value = JSON.parse(text);
      } catch {
        // As it is: a text where an object is due.
      }
      readOrRefused(() => checkPlaces(value, 'places.json'));
    },
  ),
];
