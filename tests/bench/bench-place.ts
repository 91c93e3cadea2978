import path from 'node:path';
import { findSubject } from '../../analysis/answer/find-subject.ts';
import { placeCells } from '../../analysis/answer/place-cells.ts';
import { PlaceHistories } from '../../analysis/answer/place-histories.ts';
import { plainGrid } from '../../analysis/answer/plain-grid.ts';
import { SurfaceFits } from '../../analysis/answer/surface-fits.ts';
import { seededRandom } from '../../analysis/math/seeded-random.ts';
import { fitPlaceParameters } from '../../analysis/place/fit-parameters.ts';
import { cellCentre } from '../../analysis/records/grid.ts';
import { MATURE_TREE } from '../../analysis/tree/penalties.ts';
import { NO_GAINS } from '../../analysis/winter/winter-minima.ts';
import { serveSite } from '../../data-scripts/serve/site-server.ts';
import { PackAnswers } from '../../web/workers/pack-answers.ts';
import { WinterTiles, type TileFetch } from '../../web/workers/winter-tiles.ts';
import { inventedSource } from '../analysis/answer/invented-source.ts';
import { InventedLand } from '../analysis/place/invented-land.ts';
import { leastCpuMs, medianMs, type BenchRow } from './bench-row.ts';
import { heldMegabytes } from './held-memory.ts';
import { ensureLargePack } from './large-pack.ts';

const PACKS = path.resolve('.cache/bench-packs');
const PLACES = 9;
const FIRST_CELLS = 100;

function row(task: string, measured: number, unit: string, most: number | null, note = ''): BenchRow {
  return {
    task,
    measured,
    unit,
    budget: most === null ? null : { value: most, most: true },
    ratio: null,
    note,
  };
}

/** Places of a pack with 5,000 stations over HTTP on this machine, and a surface of 8,000 cells. */
export async function benchPlace(): Promise<BenchRow[]> {
  await ensureLargePack(path.join(PACKS, 'large'));
  const site = await serveSite({ page: PACKS, packs: PACKS });
  try {
    return [...(await largePack(`${site.url}packs/large/`)), ...(await surface())];
  } finally {
    await site.close();
  }
}

/** A fetch that counts. */
function counting(): { fetcher: TileFetch; count: { requests: number; bytes: number } } {
  const count = { requests: 0, bytes: 0 };
  const fetcher: TileFetch = async (url) => {
    const response = await fetch(url);
    const body = await response.arrayBuffer();
    count.requests++;
    count.bytes += body.byteLength;
    return { ok: response.ok, status: response.status, arrayBuffer: async () => body };
  };
  return { fetcher, count };
}

async function largePack(url: string): Promise<BenchRow[]> {
  const tree = MATURE_TREE;
  const random = seededRandom(5);
  const runs: {
    openMs: number;
    cpuMs: number;
    placeMs: number;
    nextMs: number;
    requests: number;
    bytes: number;
    opened: number;
  }[] = [];
  let held = 0;
  for (let run = 0; run <= PLACES; run++) {
    const { fetcher, count } = counting();
    const before = await heldMegabytes();
    const processor = process.cpuUsage();
    const start = performance.now();
    const tiles = await WinterTiles.open(url, fetcher);
    const openMs = performance.now() - start;
    const opened = count.bytes;
    const answers = new PackAnswers(tiles);
    const station = tiles.stations[random.index(tiles.stations.length)];
    const point = {
      by: 'point' as const,
      label: 'p',
      lat: station.lat + 0.04,
      lon: station.lon,
      elevationM: null,
    };
    const place = await timed(() =>
      answers.assess({ packUrl: url, protection: null, place: point, tree, years: 10 }),
    );
    const { user, system } = process.cpuUsage(processor);
    const cpuMs = (user + system) / 1000;
    const counted = { requests: count.requests, bytes: count.bytes };
    const next = { ...point, lon: point.lon + 0.01 };
    const nextMs = await timed(() =>
      answers.assess({ packUrl: url, protection: null, place: next, tree, years: 10 }),
    );
    held = (await heldMegabytes()) - before;
    // Asked again, so that nothing of it counts as garbage above.
    await answers.assess({ packUrl: url, protection: null, place: next, tree, years: 10 });
    // The first warms up.
    if (run > 0) runs.push({ openMs, cpuMs, placeMs: place, nextMs, opened, ...counted });
  }
  const of = (get: (r: (typeof runs)[number]) => number, share = 0.5): number =>
    runs.map(get).sort((a, b) => a - b)[Math.round(share * (runs.length - 1))];
  const MB = 1e6;
  const first = await firstCells(url);
  return [
    row(
      '5,000 stations: a place from cold, to its full ranking',
      of((r) => r.openMs + r.placeMs),
      'ms',
      1000,
      `${of((r) => r.cpuMs).toFixed(0)} ms of processor, server and reader; median of ${PLACES} places, slowest ${of((r) => r.openMs + r.placeMs, 1).toFixed(0)} ms; ${of((r) => r.openMs).toFixed(0)} ms of it to open the pack`,
    ),
    row(
      '5,000 stations: bytes of that',
      of((r) => r.bytes) / MB,
      'MB',
      3,
      `most ${(of((r) => r.bytes, 1) / MB).toFixed(2)} MB in ${of((r) => r.requests, 1)} requests, median ${of((r) => r.requests)}; list of stations and manifest ${(of((r) => r.opened) / MB).toFixed(2)} MB of it`,
    ),
    row(
      '5,000 stations: another place nearby',
      of((r) => r.nextMs),
      'ms',
      150,
      'nothing fetched; what a click waits for',
    ),
    row(
      `5,000 stations: first ${FIRST_CELLS} cells of the surface from cold`,
      first.ms,
      'ms',
      null,
      `${first.requests} requests, ${(first.bytes / MB).toFixed(1)} MB`,
    ),
    row(
      'memory held by the worker after two places',
      held,
      'MB',
      null,
      'Node, after garbage collection, arrays included',
    ),
  ];
}

async function firstCells(url: string): Promise<{ ms: number; requests: number; bytes: number }> {
  const { fetcher, count } = counting();
  const ms = await timed(async () => {
    const tiles = await WinterTiles.open(url, fetcher);
    const grid = (await tiles.grid())!;
    // A corner of the grid: what a map near a place shows first.
    const across = 10;
    const land = new Uint8Array(grid.land.length);
    for (let i = 0; i < FIRST_CELLS; i++)
      land[(30 + Math.floor(i / across)) * grid.columns + 50 + (i % across)] = 1;
    await placeCells(new PlaceHistories(tiles), { ...grid, land }, 4, async () => {});
  });
  return { ms, ...count };
}

async function surface(): Promise<BenchRow[]> {
  const land = new InventedLand({ seed: 41, winters: 60, share: 0.8 });
  const members = land.members(land.scattered(60, 250, 600), (i, w) => (w * 7 + i) % 23 !== 0);
  const source = inventedSource(members, { place: fitPlaceParameters(members) });
  const grid = plainGrid(source.stations);
  const kept = { ...grid, land: grid.land.map((_, cell) => (cell % 5 === 4 ? 0 : 1)) };
  const before = await heldMegabytes();
  let cells = await placeCells(new PlaceHistories(source), kept, 4, async () => {});
  const cellsMs = await timed(async () => {
    cells = await placeCells(new PlaceHistories(source), kept, 4, async () => {});
  });
  let gain = 0;
  const refit = (): SurfaceFits =>
    new SurfaceFits(cells.cells, 4, { calmC: (gain += 0.1), windyC: gain / 2 }, null);
  const refitMs = await medianMs(refit, 9);
  const refitCpuMs = await leastCpuMs(refit, 9);
  const fits = new SurfaceFits(cells.cells, 4, NO_GAINS, null);
  let limitC = -6;
  const askMs = await medianMs(() => fits.periods((limitC += 0.1)), 9);
  const held = (await heldMegabytes()) - before;
  fits.longestClaims();
  const somewhere = cellCentre(kept, cells.cells[Math.floor(cells.cells.length / 2)].cell);
  const histories = new PlaceHistories(source);
  const request = { by: 'point' as const, label: 'p', ...somewhere, elevationM: null };
  const pointMs = await medianMs(() => findSubject(source, request, histories), 9);
  const size = `${cells.cells.length} cells x 60 winters, 60 stations`;
  return [
    row('surface: winters of all cells, once', cellsMs, 'ms', null, `${size}, 4 hours; shown when done`),
    row(
      'surface: refit of all cells with other gains',
      refitMs,
      'ms',
      50,
      `${size}; ${refitCpuMs.toFixed(0)} ms of processor at best`,
    ),
    row(
      'surface: another threshold at all cells',
      askMs,
      'ms',
      50,
      `${size}; what a slider of temperature or age waits for`,
    ),
    row('winters of one point, its model made', pointMs, 'ms', null, 'all hours of cold, with errors'),
    row('memory held for the surface', held, 'MB', null, 'Node, after garbage collection, arrays included'),
  ];
}

async function timed(task: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await task();
  return performance.now() - start;
}
