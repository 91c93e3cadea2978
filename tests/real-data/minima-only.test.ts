import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { completeValuesC } from '../../analysis/answer/winter-values.ts';
import { NO_GAINS, winterMinima } from '../../analysis/winter/winter-minima.ts';
import { buildPack } from '../../data-scripts/build/build-pack.ts';
import { Pack } from '../../data-scripts/pack/open-pack.ts';
import { haveRealData, REAL_DATA } from './real-records.ts';

const SILENT = { read: () => {}, computed: () => {}, tell: () => {} };
const STATIONS = ['T0094', 'T0179', 'T0360'];
let work: string;

beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), 'citrus-winters-test-'));
});
afterAll(() => rm(work, { recursive: true, force: true }));

async function build(name: string, files: readonly string[]): Promise<Pack> {
  const out = path.join(work, name);
  const description = { id: 'real', title: name, invented: false, sources: [] };
  const stations = path.join(REAL_DATA, 'stations.csv');
  await buildPack({ out, files, unit: 'C', stations, description, progress: SILENT });
  return Pack.open(out);
}

/** Each complete winter's coldest `S_h`, °C, by station. */
async function coldestC(pack: Pack, hours: number): Promise<number[][]> {
  return Promise.all(
    STATIONS.map(async (id) => {
      const winters = await pack.winters(pack.station(id));
      return [...completeValuesC(winters, winterMinima(winters, hours, NO_GAINS))];
    }),
  );
}

describe.skipIf(!haveRealData)('real records without their maxima', () => {
  // No outside truth: the same stations with their maxima, and the errors measured at airports, say what to expect.
  it('have the same complete winters, and four hours as cold as with maxima within 1 °C on average', async () => {
    const files = STATIONS.map((id) => path.join(REAL_DATA, 'trentino-italy', `${id}.csv.gz`));
    const stripped = await Promise.all(
      files.map(async (file, i) => {
        const lines = gunzipSync(await readFile(file))
          .toString('utf8')
          .trim()
          .split('\n');
        expect(lines[0]).toBe('date,tmax,tmin');
        const minima = lines.map((line) => line.split(',')).map(([date, , tmin]) => `${date},${tmin}`);
        const to = path.join(work, `${STATIONS[i]}.csv`);
        await writeFile(to, `${minima.join('\n')}\n`);
        return to;
      }),
    );
    const whole = await build('whole', files);
    const bare = await build('bare', stripped);
    expect(bare.manifest.notes.filter((note) => note.includes('has no maxima'))).toHaveLength(
      STATIONS.length,
    );
    expect(whole.manifest.notes.join()).not.toContain('has no maxima');
    const [known, estimated] = [await coldestC(whole, 4), await coldestC(bare, 4)];
    known.forEach((winters, k) => {
      expect(winters.length, STATIONS[k]).toBeGreaterThan(10);
      expect(estimated[k].length, STATIONS[k]).toBe(winters.length);
      const apart = winters.map((value, w) => estimated[k][w] - value);
      const mean = apart.reduce((sum, value) => sum + Math.abs(value), 0) / apart.length;
      console.log(
        `${STATIONS[k]}: ${apart.length} winters, S_4 without maxima ${mean.toFixed(2)} °C from S_4 with maxima`,
      );
      expect(mean, STATIONS[k]).toBeLessThan(1);
    });
  }, 120_000);

  // The published file holds minima only; its maxima are a file of their own, which is not given here.
  it('have complete winters where the archive keeps minima in a file of their own', async () => {
    const pack = await build('durban', [path.join(REAL_DATA, 'other-daily', 'durban_0240808A2_tasmin.txt')]);
    expect(pack.stations).toHaveLength(1);
    expect(pack.stations[0].winters.complete).toBeGreaterThanOrEqual(18);
    expect(pack.manifest.notes.join()).toContain('has no maxima');
  }, 60_000);
});
