import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { BatchAnswers, batchQuestion } from '../../analysis/answer/batch-answer.ts';
import { strictProtection } from '../../analysis/answer/protection.ts';
import { seededRandom } from '../../analysis/math/seeded-random.ts';
import { CITRUS_TYPES } from '../../analysis/tree/catalogue.ts';
import { MATURE_TREE } from '../../analysis/tree/penalties.ts';
import { Pack } from '../../data-scripts/pack/open-pack.ts';
import { BARE_TEXTS } from '../analysis/answer/bare-texts.ts';
import { leastCpuMs, type BenchRow } from './bench-row.ts';

const PACK = '.cache/test-packs/sallowmere';
const PLACES = 2000;
const PLACES_FOR_CPU = 100;

/** 2,000 points of the invented region times all types by the command with two threads, and what one place costs. */
export async function benchBatch(): Promise<BenchRow[]> {
  const points = invented(PLACES);
  const there = existsSync(path.join(PACK, 'pack.json'));
  const wallS = there ? await commandSeconds(points) : null;
  const cpuMs = there ? await placeCpuMs(points.slice(0, PLACES_FOR_CPU)) : null;
  return [
    {
      task: '2,000 places x 37 types, from the file to the table, two threads',
      measured: wallS,
      unit: 's',
      budget: { value: 30, most: true },
      ratio: null,
      note: '`assess --batch` on the invented region: 74,000 rows with 90 % ranges from 400 draws and classes; one run',
    },
    {
      task: 'one place of it',
      measured: cpuMs,
      unit: 'ms',
      budget: { value: 30, most: true },
      ratio: null,
      note: 'processor time, so that it tells the same on a busy machine; 30 ms a place are 30 s for 2,000 on two cores',
    },
  ];
}

function invented(count: number): { lat: number; lon: number; elevationM: null }[] {
  const random = seededRandom(2000);
  return Array.from({ length: count }, () => ({
    lat: 30.4 + 1.3 * random.uniform(),
    lon: -43 + 1.7 * random.uniform(),
    elevationM: null,
  }));
}

async function commandSeconds(points: readonly { lat: number; lon: number }[]): Promise<number> {
  const folder = await mkdtemp(path.join(tmpdir(), 'citrus-winters-bench-'));
  try {
    const file = path.join(folder, 'places.csv');
    await writeFile(file, `lat,lon\n${points.map(({ lat, lon }) => `${lat},${lon}\n`).join('')}`);
    const start = performance.now();
    const args = ['data-scripts/entry/run.mjs', 'assess', '--pack', PACK, '--batch', file, '--threads', '2'];
    await new Promise<void>((resolve, reject) => {
      const child = spawn(process.execPath, args, { stdio: ['ignore', 'ignore', 'ignore'] });
      child.on('error', reject);
      child.on('close', (code) =>
        code === 0 ? resolve() : reject(new Error(`assess --batch ended with ${code}`)),
      );
    });
    return (performance.now() - start) / 1000;
  } finally {
    await rm(folder, { recursive: true });
  }
}

async function placeCpuMs(
  points: readonly { lat: number; lon: number; elevationM: null }[],
): Promise<number> {
  const question = batchQuestion(CITRUS_TYPES, MATURE_TREE, strictProtection(BARE_TEXTS), []);
  const answers = new BatchAnswers(await Pack.open(PACK), question);
  const all = async (): Promise<void> => {
    for (const point of points) await answers.answer(point);
  };
  await all();
  return (await leastCpuMs(all, 3)) / points.length;
}
