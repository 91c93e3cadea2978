import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { encode } from 'fast-png';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

import { openElevation } from '../../../data-scripts/build/elevation-file.ts';
import { planElevation } from '../../../data-scripts/fetch/elevation-plan.ts';
import type { FetchEvent } from '../../../data-scripts/fetch/fetch-archive.ts';
import { fetchArchive } from '../../../data-scripts/fetch/fetch-archive.ts';
import type { FetchOptions } from '../../../data-scripts/fetch/fetch-options.ts';
import { decodeTerrarium, tileX, tileY } from '../../../data-scripts/fetch/terrain-tiles.ts';
import { LoopbackArchive } from './loopback-archive.ts';

/** An invented relief, m: it rises to the north and to the east, and falls below 0 in the south-west. */
const relief = (lat: number, lon: number) => 400 * (lat - 30.6) + 250 * (lon + 42.3);

/** A PNG of a formula in the documented encoding: v = m + 32768 over red (256s), green (1s) and blue (1/256s). */
function tilePng(zoom: number, x: number, y: number): Buffer {
  const data = new Uint8Array(256 * 256 * 3);
  for (let row = 0; row < 256; row++) {
    const mercator = Math.PI * (1 - (2 * (y + (row + 0.5) / 256)) / 2 ** zoom);
    const lat = (Math.atan(Math.sinh(mercator)) * 180) / Math.PI;
    for (let column = 0; column < 256; column++) {
      const v = relief(lat, (360 * (x + (column + 0.5) / 256)) / 2 ** zoom - 180) + 32768;
      data.set(
        [Math.floor(v / 256), Math.floor(v % 256), Math.floor((v % 1) * 256)],
        3 * (256 * row + column),
      );
    }
  }
  return Buffer.from(encode({ width: 256, height: 256, channels: 3, depth: 8, data }));
}

describe('the encoding and the tiles', () => {
  it('decodes the example of the Tilezen documentation: rgb(137, 219, 68) is 2523.265625 m', () => {
    const data = new Uint8Array(256 * 256 * 3).fill(0);
    data.set([137, 219, 68, 128, 0, 0]);
    const metres = decodeTerrarium(encode({ width: 256, height: 256, channels: 3, depth: 8, data }));
    expect(metres[0]).toBe(2523.265625);
    expect(metres[1]).toBe(0);
    expect(metres[2]).toBe(-32768);
  });

  it('numbers tiles as Web Mercator does', () => {
    expect([tileX(-180, 3), tileX(0, 3), tileX(90, 3)]).toEqual([0, 4, 6]);
    expect(tileY(0, 5)).toBeCloseTo(16, 9);
    expect(tileY(85.0511287798, 9)).toBeCloseTo(0, 3);
    // At 45 N the mercator ordinate is ln(1 + sqrt 2).
    expect(tileY(45, 10)).toBeCloseTo(512 * (1 - Math.log(1 + Math.SQRT2) / Math.PI), 9);
  });

  it('takes finer tiles for a county than for a country, never more than 160', () => {
    const county = planElevation([
      { lat: 30, lon: -90 },
      { lat: 30.5, lon: -90.6 },
    ]);
    const country = planElevation([
      { lat: 28, lon: -18 },
      { lat: 43.5, lon: 4 },
    ]);
    const tiles = (p: ReturnType<typeof planElevation>) =>
      (p.lastX - p.firstX + 1) * (p.lastY - p.firstY + 1);
    expect(county.zoom).toBe(9);
    expect(country.zoom).toBeLessThan(9);
    expect(tiles(country)).toBeLessThanOrEqual(160);
    const metres = (p: ReturnType<typeof planElevation>) => p.stepDeg * 111_195 * Math.cos(0.6);
    expect(metres(county)).toBeGreaterThan(200);
    expect(metres(country)).toBeLessThan(1100);
  });

  it('takes the narrow way across the antimeridian', () => {
    const plan = planElevation([
      { lat: -17, lon: 179.5 },
      { lat: -17, lon: -179.5 },
    ]);
    expect(plan.columns * plan.stepDeg).toBeLessThan(2);
    expect(plan.lastX).toBeGreaterThanOrEqual(2 ** plan.zoom);
  });
});

describe('fetching elevations', () => {
  let archive: LoopbackArchive;
  let address: string;
  let out: string;
  let events: FetchEvent[];
  const stations = [
    { lat: 31, lon: -42 },
    { lat: 31.2, lon: -42.1 },
    { lat: 30.8, lon: -41.7 },
  ];
  const plan = planElevation(stations);
  const paths: string[] = [];
  for (let y = plan.firstY; y <= plan.lastY; y++)
    for (let x = plan.firstX; x <= plan.lastX; x++) paths.push(`/terrain/${plan.zoom}/${x}/${y}.png`);

  beforeEach(async () => {
    archive = new LoopbackArchive();
    address = await archive.open();
    for (const path of paths) {
      const [, , zoom, x, y] = path.replace('.png', '').split('/').map(Number);
      archive.files.set(path, tilePng(zoom, x, y));
    }
    out = mkdtempSync(join(tmpdir(), 'fetch-elevation-'));
    events = [];
  });
  afterEach(async () => {
    await archive.close();
    rmSync(out, { recursive: true, force: true });
  });

  const fetchAll = (more: Partial<FetchOptions> = {}) =>
    fetchArchive(
      {
        near: { lat: 31, lon: -42 },
        km: 60,
        out,
        archive: address,
        elevation: true,
        tiles: `${address}terrain`,
        pauseMs: 1,
        backoffMs: 1,
        ...more,
      },
      (event) => events.push(event),
    );
  /** All values of the grid, with their places. */
  async function grid() {
    const raster = await openElevation(join(out, 'elevation.asc.gz'));
    const found: { lat: number; lon: number; m: number }[] = [];
    const window = { firstRow: 0, lastRow: raster.rows - 1, firstColumn: 0, lastColumn: raster.columns - 1 };
    for await (const { row, values } of raster.read(window)) {
      const lat = raster.north - row * raster.stepLatDeg;
      values.forEach((m, c) => found.push({ lat, lon: raster.west + c * raster.stepLonDeg, m }));
    }
    return { raster, found };
  }

  it('writes a grid around the stations that build reads, true to the relief within a pixel', async () => {
    const report = await fetchAll();
    expect(report.elevation).toBe(join(out, 'elevation.asc.gz'));
    const { raster, found } = await grid();
    // 40 km around the outermost stations: 0.36 degrees of latitude.
    expect(raster.north).toBeGreaterThan(31.55);
    expect(raster.north - raster.rows * raster.stepLatDeg).toBeLessThan(30.45);
    expect(raster.west).toBeLessThan(-42.5);
    // One pixel of zoom 9 is 0.0027 degrees: under 2 m of this relief, and half a metre of rounding.
    for (const { lat, lon, m } of found) {
      if (Math.abs(m - relief(lat, lon)) > 2) expect.fail(`${lat}, ${lon}: ${m} m, not ${relief(lat, lon)}`);
    }
    const sources = JSON.parse(readFileSync(join(out, 'sources.json'), 'utf8')) as {
      sources: { name: string }[];
    };
    expect(sources.sources.map(({ name }) => name)).toEqual([
      expect.stringContaining('GHCN-Daily'),
      expect.stringContaining('Terrain Tiles'),
    ]);
  });

  it('asks for no tile twice, not even in a later run', async () => {
    await fetchAll();
    const asked = archive.seen.filter(({ path }) => path.startsWith('/terrain/'));
    expect(asked.map(({ path }) => path).sort()).toEqual([...paths].sort());
    const before = readFileSync(join(out, 'elevation.asc.gz'));
    archive.seen.length = 0;
    await fetchAll();
    expect(archive.seen.filter(({ path }) => path.startsWith('/terrain/'))).toEqual([]);
    expect(readFileSync(join(out, 'elevation.asc.gz'))).toEqual(before);
  });

  it('takes a tile the archive lacks for sea', async () => {
    archive.files.delete(paths[0]);
    await fetchAll();
    const { found } = await grid();
    const missing = found.filter(({ m }) => Number.isNaN(m));
    expect(missing.length).toBeGreaterThan(100);
    const [, , zoom, x, y] = paths[0].replace('.png', '').split('/').map(Number);
    for (const { lat, lon } of missing) {
      expect([Math.floor(tileX(lon, zoom)), Math.floor(tileY(lat, zoom))]).toEqual([x, y]);
    }
    expect(events).toContainEqual({
      kind: 'end',
      file: paths[0].replace('/terrain/', 'tiles/'),
      outcome: 'missing',
    });
  });

  it("tries again after a 503, a cut connection and a PNG that isn't whole", async () => {
    const whole = archive.files.get(paths[1])!;
    archive.break(paths[0], { kind: 'status', status: 503 }, { kind: 'cut', afterBytes: 500 });
    archive.break(
      paths[1],
      { kind: 'replace', body: whole.subarray(0, 900) },
      { kind: 'replace', body: Buffer.from('<html>') },
    );
    await fetchAll();
    const { found } = await grid();
    expect(found.every(({ lat, lon, m }) => Math.abs(m - relief(lat, lon)) <= 2)).toBe(true);
    expect(events.filter(({ kind }) => kind === 'again').length).toBe(4);
  });

  it('gives up with one sentence on a tile that never is whole, and leaves no grid', async () => {
    archive.files.set(paths[1], archive.files.get(paths[1])!.subarray(0, 900));
    await expect(fetchAll({ tries: 3 })).rejects.toThrow(
      /\.png is no whole elevation tile \(a PNG of 256 by 256\), in 3 tries$/,
    );
    expect(existsSync(join(out, 'elevation.asc.gz'))).toBe(false);
  });

  it('says so when the archive has no tile at all, and when its address is none', async () => {
    for (const path of paths) archive.files.delete(path);
    await expect(fetchAll()).rejects.toThrow(/has none of the \d+ elevation tiles around these stations/);
    await expect(fetchAll({ tiles: 'ftp://x' })).rejects.toThrow(
      /--tiles is "ftp:\/\/x", but must be an address/,
    );
  });

  it("doesn't ask for tiles unless they are wanted", async () => {
    expect((await fetchAll({ elevation: false })).elevation).toBeNull();
    expect(archive.seen.some(({ path }) => path.startsWith('/terrain/'))).toBe(false);
  });
});
