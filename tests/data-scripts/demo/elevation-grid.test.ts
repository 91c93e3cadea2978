import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cellCentre, coastKmAt, elevationAt, encodeGrid } from '../../../analysis/records/grid.ts';
import { CoastDistance } from '../../../analysis/gather/coast-distance.ts';
import { buildGrid, type BuiltGrid } from '../../../data-scripts/build/grid-file.ts';
import { ringsOfOutlines } from '../../../analysis/gather/land-outlines.ts';
import { elevationGrid } from '../../../data-scripts/demo/elevation-grid.ts';
import { coastDistanceKm, isLand } from '../../../data-scripts/demo/geography.ts';
import { landMap } from '../../../data-scripts/demo/land-map.ts';
import { elevationAt as reliefM } from '../../../data-scripts/demo/relief.ts';
import { STATIONS } from '../../../data-scripts/demo/stations.ts';

let folder: string;
let text: string;
let built: BuiltGrid;
const stations = STATIONS.map(({ id, lat, lon }) => ({ id, lat, lon, elevationM: null }));
const build = () =>
  buildGrid(stations, join(folder, 'elevation.asc'), new CoastDistance(ringsOfOutlines(landMap())));

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'invented-relief-'));
  text = elevationGrid();
  await writeFile(join(folder, 'elevation.asc'), text);
  built = await build();
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

describe('the grid of the invented region', () => {
  it('is the same every time, to the byte', async () => {
    expect(elevationGrid()).toBe(text);
    expect(encodeGrid((await build()).grid)).toEqual(encodeGrid(built.grid));
  });

  it('has 8,000 to 12,000 cells on land, and an elevation and a coast for each', () => {
    const { land, elevationM, coastKm } = built.grid;
    const cells = [...land.keys()].filter((i) => land[i] === 1);
    expect(cells.length).toBeGreaterThan(8_000);
    expect(cells.length).toBeLessThan(12_000);
    expect(land.length).toBeLessThan(40_000);
    for (const i of cells) {
      expect(elevationM[i]).toBeGreaterThan(0);
      expect(elevationM[i]).toBeLessThan(560);
      expect(coastKm[i]).toBeGreaterThanOrEqual(0);
    }
  });

  it('is true to the relief, the shores and the stations', () => {
    const { grid } = built;
    let [count, sumM] = [0, 0];
    for (let i = 0; i < grid.land.length; i += 37) {
      const { lat, lon } = cellCentre(grid, i);
      if (grid.land[i] === 0 || !isLand(lat, lon)) continue;
      count++;
      sumM += Math.abs(grid.elevationM[i] - reliefM(lat, lon));
      // The map's outlines are drawn to 0.13 km, and the demo's plane takes a degree of longitude to be as long everywhere.
      const km = coastDistanceKm(lat, lon);
      expect(Math.abs(grid.coastKm[i] - km)).toBeLessThan(0.35 + 0.01 * km);
    }
    expect(count).toBeGreaterThan(200);
    // Cells are means over 1.6 km.
    expect(sumM / count).toBeLessThan(6);
    for (const { id, lat, lon } of stations) {
      expect(Math.abs(built.stationsM.get(id)! - reliefM(lat, lon)), id).toBeLessThan(30);
      expect(Math.abs(elevationAt(grid, lat, lon)! - reliefM(lat, lon)), id).toBeLessThan(60);
      expect(coastKmAt(grid, lat, lon), id).not.toBeNull();
    }
  });
});
