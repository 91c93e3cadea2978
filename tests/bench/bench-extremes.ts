import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { fitGevByMaximumLikelihood } from '../../analysis/extremes/gev-maximum-likelihood.ts';
import { fitWinters } from '../../analysis/extremes/fit-winters.ts';
import { gevQuantile } from '../../analysis/extremes/gev.ts';
import { seededRandom } from '../../analysis/math/seeded-random.ts';
import { medianMs, type BenchRow } from './bench-row.ts';

const STATIONS = 500;
const WINTERS = 60;
const DAYS = 365;
/** -14 to 0.5 °C by half degrees. */
const THRESHOLDS_C = Array.from({ length: 30 }, (_, i) => -14 + i / 2);
const PEER_TIMEOUT_MS = 300_000;
const TASK = `${STATIONS} stations x ${WINTERS} winters: minima, nights at 30 thresholds, GEV by maximum likelihood`;

/** What each tool prints: milliseconds of the steps, after loading, and sums to compare the results by. */
interface Timed {
  readonly minimaMs: number;
  readonly countsMs: number;
  readonly fitsMs: number;
  readonly sumOfMinima: number;
  readonly sumOfCounts: number;
  readonly meanLocation: number;
  readonly note: string;
}

interface Peer {
  readonly name: string;
  readonly commands: readonly string[];
  readonly script: string;
  readonly demanded: number;
}

const PEERS: readonly Peer[] = [
  { name: 'R (data.table, evd)', commands: ['Rscript'], script: 'extremes-peer.R', demanded: 10 },
  {
    name: 'Python (pandas, SciPy)',
    commands: ['/usr/bin/python3', 'python3'],
    script: 'extremes-peer.py',
    demanded: 50,
  },
];

/** Fits and ranges of one place, and the whole-network task beside R and Python on the same file. */
export async function benchExtremes(): Promise<BenchRow[]> {
  const tmin = inventedMinima();
  const ours = await timeOurs(tmin);
  const oursMs = total(ours);
  const rows: BenchRow[] = [
    {
      task: 'one place: 5 fits with 1,000 draws, ranges at 150 thresholds',
      measured: await medianMs(onePlace),
      unit: 'ms',
      budget: { value: 100, most: true },
      ratio: null,
      note: '60 winters',
    },
    {
      task: TASK,
      measured: oursMs,
      unit: 'ms',
      budget: null,
      ratio: null,
      note: `${steps(ours)}; median of 5 after a warm-up, others run once`,
    },
  ];
  const folder = await mkdtemp(join(tmpdir(), 'bench-extremes-'));
  try {
    const file = join(folder, 'tmin.f32');
    await writeFile(file, new Uint8Array(tmin.buffer));
    for (const peer of PEERS) {
      const timed = await runPeer(peer, file);
      if (timed) expectSame(peer.name, ours, timed);
      rows.push({
        task: `the same in ${peer.name}`,
        measured: timed && total(timed),
        unit: 'ms',
        budget: null,
        ratio: timed && total(timed) / oursMs,
        note: timed ? `at least ${peer.demanded} × wanted; ${steps(timed)}${timed.note}` : 'not installed',
      });
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
  return rows;
}

const total = (timed: Timed): number => timed.minimaMs + timed.countsMs + timed.fitsMs;

const steps = ({ minimaMs, countsMs, fitsMs }: Timed): string =>
  `minima ${minimaMs.toFixed(0)}, counts ${countsMs.toFixed(0)}, fits ${fitsMs.toFixed(0)} ms`;

/** Five numbers of hours at one place: fits with draws, and 150 questions. */
function onePlace(): number {
  const random = seededRandom(1);
  let sum = 0;
  for (let hours = 0; hours < 5; hours++) {
    const valuesC = Float64Array.from(
      { length: 60 },
      () => hours - gevQuantile(random.uniform(), { location: 3, scale: 2.5, k: 0.15 }),
    );
    const fit = fitWinters({ valuesC, seed: 1 })!;
    for (let i = 0; i < 30; i++) sum += fit.returnPeriod(-12 + i / 3).low;
  }
  return sum;
}

/** Invented daily minima in °C, whole tenths, by station, winter and day. */
function inventedMinima(): Float32Array<ArrayBuffer> {
  const random = seededRandom(20);
  const tmin = new Float32Array(STATIONS * WINTERS * DAYS);
  let at = 0;
  for (let station = 0; station < STATIONS; station++) {
    const level = 10 + 4 * random.uniform();
    for (let winter = 0; winter < WINTERS; winter++) {
      let weather = 0;
      for (let day = 0; day < DAYS; day++) {
        weather = 0.7 * weather + 2.6 * random.normal();
        tmin[at++] =
          Math.round(10 * (level - 9 * Math.cos((2 * Math.PI * (day - 200)) / 365) + weather)) / 10;
      }
    }
  }
  return tmin;
}

async function timeOurs(tmin: Float32Array): Promise<Timed> {
  const minima = new Float64Array(STATIONS * WINTERS);
  const counts = new Int32Array(STATIONS * THRESHOLDS_C.length);
  const locations = new Float64Array(STATIONS);
  const minimaMs = await medianMs(() => winterMinima(tmin, minima));
  const countsMs = await medianMs(() => nightCounts(tmin, counts));
  const fitsMs = await medianMs(() => {
    for (let s = 0; s < STATIONS; s++) {
      const negated = minima.slice(s * WINTERS, (s + 1) * WINTERS).map((m) => -m);
      locations[s] = fitGevByMaximumLikelihood(negated).gev.location;
    }
  });
  return {
    minimaMs,
    countsMs,
    fitsMs,
    sumOfMinima: minima.reduce((sum, m) => sum + m, 0),
    sumOfCounts: counts.reduce((sum, c) => sum + c, 0),
    meanLocation: locations.reduce((sum, l) => sum + l, 0) / STATIONS,
    note: '',
  };
}

function winterMinima(tmin: Float32Array, out: Float64Array): void {
  for (let w = 0; w < out.length; w++) {
    let lowest = Infinity;
    const end = (w + 1) * DAYS;
    for (let i = w * DAYS; i < end; i++) if (tmin[i]! < lowest) lowest = tmin[i]!;
    out[w] = lowest;
  }
}

/** Nights at or below each threshold: each night into the bin of the coldest threshold it reaches, then summed up. */
function nightCounts(tmin: Float32Array, out: Int32Array): void {
  const n = THRESHOLDS_C.length;
  out.fill(0);
  for (let station = 0; station < STATIONS; station++) {
    const end = (station + 1) * WINTERS * DAYS;
    for (let i = station * WINTERS * DAYS; i < end; i++) {
      const value = tmin[i]!;
      if (value > THRESHOLDS_C[n - 1]!) continue;
      out[station * n + Math.max(0, Math.ceil(2 * (value + 14)))]!++;
    }
    for (let j = 1; j < n; j++) out[station * n + j]! += out[station * n + j - 1]!;
  }
}

async function runPeer({ commands, script }: Peer, file: string): Promise<Timed | null> {
  const path = join(process.cwd(), 'tests', 'bench', script);
  const sizes = [STATIONS, WINTERS, DAYS].map(String);
  for (const command of commands) {
    try {
      const { stdout } = await promisify(execFile)(command, [path, file, ...sizes], {
        timeout: PEER_TIMEOUT_MS,
      });
      return JSON.parse(stdout) as Timed;
    } catch {
      continue; // This tool or one of its packages isn't there.
    }
  }
  return null;
}

/** The times mean nothing unless the answers are the same. */
function expectSame(name: string, ours: Timed, theirs: Timed): void {
  const apart = (key: 'sumOfMinima' | 'sumOfCounts' | 'meanLocation', relative: number): void => {
    if (Math.abs(theirs[key] - ours[key]) > relative * Math.abs(ours[key]))
      throw new Error(`${name} disagrees: ${key} ${theirs[key]} against ${ours[key]}.`);
  };
  apart('sumOfMinima', 1e-6);
  apart('sumOfCounts', 0);
  apart('meanLocation', 1e-3);
}
