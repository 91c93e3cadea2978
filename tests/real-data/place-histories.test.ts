import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { leaveOut, type LeftOutStation, type StationWinters } from '../../analysis/answer/leave-out.ts';
import { leaveOutErrors } from '../../analysis/answer/leave-out-errors.ts';
import { seededRandom } from '../../analysis/math/seeded-random.ts';
import { fitPlaceParameters } from '../../analysis/place/fit-parameters.ts';
import type { PackLeaveOutErrors } from '../../analysis/records/pack.ts';
import { buildPack } from '../../data-scripts/build/build-pack.ts';
import { Pack } from '../../data-scripts/pack/open-pack.ts';
import { haveRealData, REAL_DATA } from './real-records.ts';

const SILENT = { read: () => {}, computed: () => {}, tell: () => {} };
/** Ways to deal the stations into thirds; one alone can be half a degree off on 65 stations. */
const DEALS = 2;
let work: string;

beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), 'citrus-winters-test-'));
});
afterAll(() => rm(work, { recursive: true, force: true }));

/** Errors of S_0 and S_4 with thirds left out, the covariances fitted anew to the stations kept. */
async function leftOutErrors(folder: string, list: string): Promise<readonly PackLeaveOutErrors[]> {
  const out = path.join(work, folder);
  const files = (await readdir(path.join(REAL_DATA, folder), { withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(REAL_DATA, folder, entry.name))
    .filter((file) => file !== path.join(REAL_DATA, list));
  await buildPack({
    out,
    files,
    found: new Set(files),
    unit: 'C',
    stations: path.join(REAL_DATA, list),
    description: { id: 'real', title: folder, invented: false, sources: [] },
    progress: SILENT,
  });
  const pack = await Pack.open(out);
  expect(pack.manifest.leave_out?.third.map(({ hours }) => hours)).toEqual([0, 4]);
  const all = await Promise.all(
    pack.stations.map(async (station): Promise<StationWinters> => ({
      station,
      winters: await pack.winters(station),
    })),
  );
  const hours = [0, 4];
  const judged = hours.map((): LeftOutStation[] => []);
  for (let deal = 1; deal <= DEALS; deal++) {
    const random = seededRandom(deal);
    const options = { hours, parts: 3, most: Infinity, random, parameters: fitPlaceParameters };
    leaveOut(all, options).forEach((stations, d) => judged[d].push(...stations));
  }
  return hours.map((h, d) => leaveOutErrors(h, judged[d])!.errors);
}

interface Limits {
  readonly folder: string;
  readonly list: string;
  readonly stations: number;
  /** Largest mean error of S_0 and S_4, °C. */
  readonly errorC: readonly [number, number];
  /** Largest part of the inverse-distance baseline's error. */
  readonly ofBaseline: number;
  /** How far predicted winters hit may be from those observed. */
  readonly hits: number;
}

/*
 * The aims are 1.45 °C in Spain, three quarters of the baseline elsewhere, 85 to 95 % of the left out inside, hits within a
 * tenth. Reached are those of S_4 in Spain and of the ranges of the same winters but for a hair; the limits below are what
 * was reached with some room, so that a change for the worse is found. See data-scripts/calibrate/README.md.
 */
const NETWORKS: readonly Limits[] = [
  {
    folder: 'aemet-spain',
    list: 'aemet-spain/stations_maestro.csv',
    stations: 60,
    errorC: [1.7, 1.5],
    ofBaseline: 0.88,
    hits: 0.15,
  },
  {
    folder: 'trentino-italy',
    list: 'stations.csv',
    stations: 25,
    errorC: [1.25, 1.15],
    ofBaseline: 0.92,
    hits: 0.1,
  },
  {
    folder: 'us-cornbelt-network',
    list: 'stations.csv',
    stations: 85,
    errorC: [0.92, 0.77],
    ofBaseline: 0.85,
    hits: 0.1,
  },
];

describe.skipIf(!haveRealData)('winters estimated at real stations left out', () => {
  it.each(NETWORKS)(
    'of $folder',
    async ({ folder, list, stations, errorC, ofBaseline, hits }) => {
      const found = await leftOutErrors(folder, list);
      found.forEach((errors, d) => {
        const name = `S_${errors.hours}`;
        expect(errors.stations, name).toBeGreaterThanOrEqual(DEALS * stations);
        expect(errors.mean_error_c, name).toBeLessThan(errorC[d]);
        expect(errors.mean_error_c, name).toBeLessThan(ofBaseline * errors.inverse_distance_mean_error_c);
        expect(errors.mean_error_c, name).toBeLessThan(errors.nearest_mean_error_c);
        expect(Math.abs(errors.bias_c), name).toBeLessThan(0.3);
        // The own record shares the luck of its winters with the estimate: the whole range may hold more than 95 %.
        expect(errors.interval.coverage, name).toBeGreaterThan(0.83);
        expect(errors.same_winters.coverage, name).toBeGreaterThan(0.82);
        expect(errors.same_winters.coverage, name).toBeLessThan(0.97);
        expect(Math.abs(errors.hit_ratio! - 1), name).toBeLessThan(hits);
      });
    },
    600_000,
  );
});
