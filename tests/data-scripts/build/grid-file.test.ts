import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cellAt, cellCentre, elevationAt } from '../../../analysis/records/grid.ts';
import { CoastDistance } from '../../../analysis/gather/coast-distance.ts';
import { buildGrid } from '../../../data-scripts/build/grid-file.ts';
import { layGrid } from '../../../data-scripts/build/grid-layout.ts';
import { LandMask } from '../../../analysis/gather/land-mask.ts';
import type { LandRings } from '../../../analysis/gather/land-outlines.ts';

/** Land west of 11 E, sea east of it, between 29 and 33 N. */
const HALF: LandRings = [
  [
    [5, 29],
    [11, 29],
    [11, 33],
    [5, 33],
    [5, 29],
  ],
];
const STATIONS = [
  { id: 'A', lat: 30.5, lon: 10.5, elevationM: null },
  { id: 'B', lat: 31.5, lon: 11.5, elevationM: 12 },
];

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'citrus-winters-grid-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** An ASCII grid of a formula of latitude and longitude over a box. */
async function ascii(
  name: string,
  box: readonly [number, number, number, number],
  step: number,
  m: (lat: number, lon: number) => number,
): Promise<string> {
  const [west, south, east, north] = box;
  const [columns, rows] = [Math.round((east - west) / step), Math.round((north - south) / step)];
  const lines = Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (__, c) =>
      m(north - (r + 0.5) * step, west + (c + 0.5) * step).toFixed(3),
    ).join(' '),
  );
  const file = path.join(folder, name);
  await writeFile(
    file,
    `ncols ${columns}\nnrows ${rows}\nxllcorner ${west}\nyllcorner ${south}\ncellsize ${step}\n${lines.join('\n')}\n`,
  );
  return file;
}

describe('the layout', () => {
  it('has about 10,000 cells on land, nearly square on the ground, over the stations and 30 km around', () => {
    const mask = new LandMask(HALF);
    const grid = layGrid(STATIONS, mask);
    const cells = grid.columns * grid.rows;
    const land = Array.from({ length: cells }, (_, i) => cellCentre(grid, i)).filter(({ lat, lon }) =>
      mask.has(lat, lon),
    );
    expect(land.length).toBeGreaterThan(9_000);
    expect(land.length).toBeLessThan(11_000);
    const ratio = (grid.stepLonDeg * Math.cos((31 * Math.PI) / 180)) / grid.stepLatDeg;
    expect(ratio).toBeGreaterThan(0.97);
    expect(ratio).toBeLessThan(1.03);
    // 30 km are 0.2698 degrees of latitude.
    expect(grid.south - grid.stepLatDeg / 2).toBeCloseTo(30.5 - 0.2698, 3);
    expect(grid.south + (grid.rows - 0.5) * grid.stepLatDeg).toBeCloseTo(31.5 + 0.2698, 3);
    for (const { lat, lon } of STATIONS) expect(cellAt(grid, lat, lon)).not.toBeNull();
  });

  it('has at most 40,000 cells where land is rare', () => {
    const islet: LandRings = [
      [
        [10.5, 30.5],
        [10.6, 30.5],
        [10.6, 30.6],
        [10.5, 30.5],
      ],
    ];
    const grid = layGrid(STATIONS, new LandMask(islet));
    expect(grid.columns * grid.rows).toBeGreaterThan(38_000);
    expect(grid.columns * grid.rows).toBeLessThanOrEqual(40_000);
  });

  it('takes the narrow way across the antimeridian', () => {
    const stations = [
      { lat: -17, lon: 179 },
      { lat: -18, lon: -179 },
      { lat: -17.5, lon: -179.5 },
    ];
    const grid = layGrid(stations, new LandMask([]));
    expect(grid.west).toBeGreaterThan(178);
    expect(grid.west).toBeLessThan(179);
    expect(grid.columns * grid.stepLonDeg).toBeLessThan(3);
    for (const { lat, lon } of stations) expect(cellAt(grid, lat, lon)).not.toBeNull();
    expect(cellAt(grid, -17.5, 0)).toBeNull();
  });

  it('lies around a single station, and refuses one at the pole', () => {
    const grid = layGrid([{ lat: 60, lon: 10 }], new LandMask([]));
    expect(grid.columns * grid.stepLonDeg * Math.cos(Math.PI / 3)).toBeCloseTo(
      grid.rows * grid.stepLatDeg,
      1,
    );
    expect(() => layGrid([{ lat: 89, lon: 0 }], new LandMask([]))).toThrow(/beyond 85 degrees of latitude/);
  });
});

describe('elevations on the cells', () => {
  const coast = new CoastDistance(HALF);
  /** A plane: its mean over a cell is its value at the middle of the pixels there. */
  const plane = (lat: number, lon: number) => 100 * (lat - 30) + 10 * (lon - 10) + 50;

  it('are means of finer pixels on land, unknown on the sea, with the distance to the coast', async () => {
    const file = await ascii('fine.asc', [9, 29, 13, 33], 0.004, plane);
    const { grid, stationsM, notes } = await buildGrid(STATIONS, file, coast);
    let land = 0;
    for (let i = 0; i < grid.land.length; i++) {
      const { lat, lon } = cellCentre(grid, i);
      expect(grid.land[i]).toBe(Number(lon < 11));
      if (lon >= 11) {
        expect(grid.elevationM[i]).toBeNaN();
        expect(grid.coastKm[i]).toBe(0);
        continue;
      }
      land++;
      // The middle of the pixels may lie half a pixel off the middle of the cell: 0.002 degrees of 110 m a degree.
      expect(Math.abs(grid.elevationM[i] - plane(lat, lon))).toBeLessThan(0.35);
      expect(Math.abs(grid.coastKm[i] - (11 - lon) * 111.195 * Math.cos((lat * Math.PI) / 180))).toBeLessThan(
        0.5,
      );
    }
    expect(land).toBeGreaterThan(9_000);
    expect([...stationsM]).toEqual([['A', Math.round(plane(30.5, 10.5))]]);
    expect(notes).toEqual(['Elevation of station A taken from fine.asc, since no file told it.']);
  });

  it('of cells at the shore leave the depth of the sea out', async () => {
    const file = await ascii('depths.asc', [9, 29, 13, 33], 0.004, (_, lon) => (lon < 11 ? 5 : -3000));
    const { grid } = await buildGrid(STATIONS, file, coast);
    expect([...new Set(grid.elevationM)].map((m) => Math.round(m))).toEqual([5, NaN]);
  });

  it('lie between coarser pixels', async () => {
    const file = await ascii('coarse.asc', [9, 29, 13, 33], 0.25, plane);
    const { grid } = await buildGrid(STATIONS, file, coast);
    expect(elevationAt(grid, 30.777, 10.333)).toBeCloseTo(plane(30.777, 10.333), 2);
    expect(elevationAt(grid, 31.5, 10.9)).toBeCloseTo(plane(31.5, 10.9), 2);
  });

  it('come from a raster that counts longitudes from 0 to 360, and across the antimeridian', async () => {
    const stations = [
      { id: 'E', lat: 0.2, lon: 179.8, elevationM: null },
      { id: 'W', lat: -0.2, lon: -179.8, elevationM: null },
    ];
    const land: LandRings = [
      [
        [178, -3],
        [182, -3],
        [182, 3],
        [178, 3],
        [178, -3],
      ],
    ];
    const around = (lon: number) => 1000 + 20 * (lon - 180);
    const east = await ascii('east.asc', [175, -5, 185, 5], 0.01, (_, lon) => around(lon));
    const { grid, stationsM } = await buildGrid(stations, east, new CoastDistance(land));
    expect(elevationAt(grid, 0, 180)).toBeCloseTo(1000, 0);
    expect(elevationAt(grid, 0, -179.9)).toBeCloseTo(1002, 0);
    expect(stationsM.get('E')).toBe(996);
    expect(stationsM.get('W')).toBe(1004);
    const whole = await ascii('whole.asc', [-180, -5, 180, 5], 0.05, (_, lon) =>
      around(lon < 0 ? lon + 360 : lon),
    );
    const other = await buildGrid(stations, whole, new CoastDistance(land));
    expect(elevationAt(other.grid, 0, -179.9)).toBeCloseTo(1002, 0);
    expect(elevationAt(other.grid, 0, 179.9)).toBeCloseTo(998, 0);
  });

  it('of a shore cell without a pixel of its own are the mean of those around', async () => {
    // Elevations end 0.03 degrees before the shore: two to three cells of about 0.013 degrees.
    const file = await ascii('narrow.asc', [9, 29, 13, 33], 0.004, (_, lon) => (lon < 10.97 ? 7 : -9999));
    const { grid } = await buildGrid(STATIONS, file, coast);
    const row = Math.floor(grid.rows / 2) * grid.columns;
    const cells = Array.from({ length: grid.columns }, (_, c) => row + c).filter((i) => grid.land[i] === 1);
    const lons = cells.map((i) => cellCentre(grid, i).lon);
    const half = grid.stepLonDeg / 2;
    const first = cells.findIndex((_, k) => lons[k] - half > 10.97);
    expect(grid.elevationM[cells[first]]).toBe(7);
    expect(grid.elevationM[cells[first + 1]]).toBeNaN();
  });

  it('that are not there are counted in a note', async () => {
    const file = await ascii('part.asc', [9, 29, 13, 31], 0.01, plane);
    const { notes } = await buildGrid(STATIONS, file, coast);
    expect(notes[0]).toMatch(
      /^part\.asc has no elevation for \d+ of \d+ cells of land; the grid has none there\.$/,
    );
  });

  it('elsewhere or nowhere are refused with both boxes', async () => {
    const far = await ascii('far.asc', [-60, -40, -58, -38], 0.1, plane);
    await expect(buildGrid(STATIONS, far, coast)).rejects.toThrow(
      /far\.asc covers -39\.95 to -38\.05 N, -59\.95 to -58\.05 E, the stations need 30\.\d+ to 31\.\d+ N, 10\.\d+ to 11\.\d+ E: they don't overlap/,
    );
    const empty = await ascii('empty.asc', [9, 29, 13, 33], 0.1, () => -9999);
    await expect(buildGrid(STATIONS, empty, coast)).rejects.toThrow(
      /empty\.asc has no elevation at any of the \d+ cells of land/,
    );
  });

  it('make the land where the outlines draw none', async () => {
    const file = await ascii('islet.asc', [9, 29, 13, 33], 0.01, (lat, lon) =>
      Math.hypot(lat - 31, lon - 11) < 0.3 ? 40 : -9999,
    );
    const { grid } = await buildGrid(STATIONS, file, new CoastDistance([]));
    const land = grid.land.reduce((sum, isLand) => sum + isLand, 0);
    expect(land).toBeGreaterThan(500);
    expect(land).toBeLessThan(grid.land.length / 2);
    expect(grid.coastKm[grid.land.indexOf(1)]).toBeNaN();
  });
});
