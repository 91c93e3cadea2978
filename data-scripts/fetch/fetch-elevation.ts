import { createWriteStream } from 'node:fs';
import { mkdir, readFile, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { setTimeout as wait } from 'node:timers/promises';
import { createGzip } from 'node:zlib';

import { InputError } from '../../analysis/records/input-error.ts';
import { download } from './download.ts';
import { planElevation, type ElevationPlan } from './elevation-plan.ts';
import type { FetchEvent } from './fetch-archive.ts';
import type { CheckedOptions } from './fetch-options.ts';
import { decodeTerrarium, TILE_PIXELS, tileY } from './terrain-tiles.ts';

/** Name of the grid below the output folder. */
export const ELEVATION_FILE = 'elevation.asc.gz';
const NODATA = -9999;

type Options = Pick<
  CheckedOptions,
  'out' | 'tiles' | 'pauseMs' | 'tries' | 'backoffMs' | 'silenceMs' | 'signal'
>;
type Tile = Float32Array | null;

/**
 * Fetches elevation tiles for the stations' box into `tiles/` and writes them out as an Esri ASCII grid in degrees,
 * `elevation.asc.gz`. Tiles that are there already aren't asked for again; a tile the archive doesn't have (404) counts as
 * sea.
 * @throws InputError when the archive can't be reached or has no tile of the box
 */
export async function fetchElevation(
  stations: readonly { lat: number; lon: number }[],
  options: Options,
  progress: (event: FetchEvent) => void,
): Promise<ElevationPlan> {
  const plan = planElevation(stations);
  const columns = plan.lastX - plan.firstX + 1;
  const count = columns * (plan.lastY - plan.firstY + 1);
  let found = 0;
  for (let i = 0; i < count; i++) {
    const [x, y] = [plan.firstX + (i % columns), plan.firstY + Math.floor(i / columns)];
    const file = fileOf(plan, x, y);
    progress({ kind: 'begin', file, position: i + 1, count });
    if (await bringTile(file, options, progress)) found++;
  }
  if (found === 0) {
    throw new InputError(`${options.tiles} has none of the ${count} elevation tiles around these stations`);
  }
  const target = join(options.out, ELEVATION_FILE);
  await pipeline(
    Readable.from(gridLines(plan, options.out)),
    createGzip(),
    createWriteStream(`${target}.part`),
  );
  await rename(`${target}.part`, target);
  return plan;
}

/** Path of a tile below the output folder, and below the archive's address after `tiles/`. */
function fileOf({ zoom }: ElevationPlan, x: number, y: number): string {
  const turns = 2 ** zoom;
  return `tiles/${zoom}/${((x % turns) + turns) % turns}/${y}.png`;
}

/** Brings one tile, checked; false where the archive has none. */
async function bringTile(
  file: string,
  options: Options,
  progress: (event: FetchEvent) => void,
): Promise<boolean> {
  const target = join(options.out, file);
  const url = new URL(file.slice('tiles/'.length), options.tiles).href;
  if ((await readTile(target)) !== null) {
    progress({ kind: 'end', file, outcome: 'unchanged' });
    return true;
  }
  await mkdir(dirname(target), { recursive: true });
  for (let tries = 1; ; tries++) {
    await rm(target, { force: true });
    const { outcome } = await download(url, target, undefined, options, {
      bytes: (come, total) => progress({ kind: 'bytes', file, come, total }),
      again: (reason, waitMs) => progress({ kind: 'again', file, reason, waitMs }),
    });
    await wait(options.pauseMs, undefined, { signal: options.signal });
    if (outcome === 'missing' || (await readTile(target)) !== null) {
      progress({ kind: 'end', file, outcome });
      return outcome !== 'missing';
    }
    await rm(target, { force: true });
    if (tries >= options.tries) {
      throw new InputError(
        `${url} is no whole elevation tile (a PNG of ${TILE_PIXELS} by ${TILE_PIXELS}), in ${tries} tries`,
      );
    }
    progress({ kind: 'again', file, reason: 'it is no whole PNG', waitMs: options.backoffMs });
    await wait(options.backoffMs, undefined, { signal: options.signal });
  }
}

/** A tile on the disk; null when it isn't there or not whole. */
async function readTile(path: string): Promise<Tile> {
  const png = await readFile(path).catch(() => null);
  if (png === null) return null;
  try {
    return decodeTerrarium(png);
  } catch {
    return null;
  }
}

/** The grid, line by line from the north: each value is that of the pixel its centre lies in. One row of tiles is held. */
async function* gridLines(plan: ElevationPlan, folder: string): AsyncGenerator<string> {
  const { zoom, firstX, lastX, west, south, stepDeg, columns, rows } = plan;
  yield `ncols ${columns}\nnrows ${rows}\nxllcorner ${west}\nyllcorner ${south}\ncellsize ${stepDeg}\nNODATA_value ${NODATA}\n`;
  const pixels = 2 ** zoom * TILE_PIXELS;
  let held = -1;
  let tiles: Tile[] = [];
  for (let r = 0; r < rows; r++) {
    const lat = south + (rows - r - 0.5) * stepDeg;
    const y = Math.floor(tileY(lat, zoom) * TILE_PIXELS);
    const tileRow = Math.floor(y / TILE_PIXELS);
    if (tileRow !== held) {
      const numbers = Array.from({ length: lastX - firstX + 1 }, (_, i) => firstX + i);
      tiles = await Promise.all(numbers.map((x) => readTile(join(folder, fileOf(plan, x, tileRow)))));
      held = tileRow;
    }
    const line = Array.from({ length: columns }, (_, c) => {
      const x = Math.floor(((west + (c + 0.5) * stepDeg + 180) / 360) * pixels) - firstX * TILE_PIXELS;
      const tile = tiles[Math.floor(x / TILE_PIXELS)];
      return tile ? Math.round(tile[(y % TILE_PIXELS) * TILE_PIXELS + (x % TILE_PIXELS)]) : NODATA;
    });
    yield `${line.join(' ')}\n`;
  }
}
