import { MISSING_HUNDREDTHS, NIGHT_KINDS, SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import { PACK_SCHEMA, type PackManifest, type PackStation } from '../../../analysis/records/pack.ts';
import { encodeWinterTile } from '../../../analysis/records/winter-tile.ts';
import type { WinterTable } from '../../../analysis/records/winters.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import type { TileFetch } from '../../../web/workers/winter-tiles.ts';

export const PACK_URL = 'http://pack.test/made/';
export const TILE = 'n30w042';

/** Small seeded generator, uniform on 0-1. */
export function uniform(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 16_807) % 2_147_483_647) / 2_147_483_647;
}

/** Winters with a plausible spread: only calm and windy nights, levels rising with the hours. */
export function madeWinters(seed: number, count: number, first = 1960): WinterTable {
  const random = uniform(seed);
  const winter = Int16Array.from({ length: count }, (_, w) => first + w);
  const complete = Uint8Array.from({ length: count }, (_, w) => (w % 17 === 5 ? 0 : 1));
  const bases = NIGHT_KINDS.map((_, kind) =>
    Array.from({ length: count }, () =>
      kind === 2 ? null : Math.round(-150 + kind * 120 + 230 * Math.log(-Math.log(1 - random() * 0.999))),
    ),
  );
  return {
    winter,
    complete,
    reason: Array.from(complete, (flag) => (flag ? '' : 'January misses 6 nights')),
    coldest: bases.map((base) =>
      SUSTAINED_HOURS.map((hours) =>
        Int16Array.from(base, (level) =>
          level === null ? MISSING_HUNDREDTHS : level + Math.round(20 * hours),
        ),
      ),
    ),
    coldestDay: bases.map((base, kind) =>
      SUSTAINED_HOURS.map((_, j) =>
        Int32Array.from(base, (level, w) =>
          level === null ? 0 : dayNumber(first + w, 1, 1 + kind * 14 + j),
        ),
      ),
    ),
  };
}

export function madeStations(count: number): PackStation[] {
  return Array.from({ length: count }, (_, i) => ({
    id: `S${i}`,
    name: `Station ${i}`,
    lat: 30.5 + (i % 7) * 0.15,
    lon: -42 + Math.floor(i / 7) * 0.15,
    elevation_m: 10 * i,
    coast_km: null,
    winters: { complete: 56, first: 1960, last: 2019 },
    basis: 'daily',
    tile: TILE,
  }));
}

const MANIFEST: PackManifest = {
  schema: PACK_SCHEMA,
  id: 'made',
  title: 'Made',
  invented: true,
  hemisphere: 'north',
  bbox: [-42.5, 30, -41, 32],
  winters: { first: 1960, last: 2019 },
  stations: { count: 0 },
  sources: [],
  files: [],
  dropped: {},
  doubtful: {},
  notes: [],
};

/** A pack in memory behind the fetch of the worker; `calls` lists what was asked for, `fail` answers 503 while true. */
export function madeFetch(stationCount: number, winterCount = 60) {
  const stations = madeStations(stationCount);
  const tables = new Map(stations.map(({ id }, i) => [id, madeWinters(i + 1, winterCount)]));
  const files: Record<string, Uint8Array> = {
    'stations.json': new TextEncoder().encode(JSON.stringify(stations)),
    'pack.json': new TextEncoder().encode(JSON.stringify({ ...MANIFEST, stations: { count: stationCount } })),
    [`winters/${TILE}.arrow`]: encodeWinterTile(tables),
  };
  const state = { calls: [] as string[], fail: false };
  const fetcher: TileFetch = async (url) => {
    const file = url.slice(PACK_URL.length);
    state.calls.push(file);
    const bytes = state.fail ? undefined : files[file];
    return {
      ok: bytes !== undefined,
      status: bytes ? 200 : state.fail ? 503 : 404,
      arrayBuffer: async () => bytes!.slice().buffer as ArrayBuffer,
    };
  };
  return { fetcher, state, files, stations, tables };
}
