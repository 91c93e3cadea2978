import { InputError } from '../../analysis/records/input-error.ts';
import { cellCentre } from '../../analysis/records/grid.ts';
import type { ElevationRaster, RasterWindow } from './elevation-raster.ts';
import type { GridLayout } from './grid-layout.ts';
import type { LandMask } from '../../analysis/gather/land-mask.ts';

interface Place {
  readonly lat: number;
  readonly lon: number;
}

export interface CellElevations {
  /** Elevation of each cell, m: the mean of the raster's pixels in it; NaN where the raster has none. */
  readonly elevationM: Float32Array;
  /** Elevation of the pixel each place lies in, m; NaN where the raster has none. */
  readonly placesM: readonly number[];
}

/**
 * Brings a raster onto the cells of a grid in one pass over the rows it needs. Where pixels are finer than cells, a cell
 * is the mean of its pixels on land (of all, if none is: tiles of open data go on under the sea); where they are coarser, it
 * lies between the pixels around its centre.
 * @throws InputError when the raster doesn't reach the grid
 */
export async function elevationOfCells(
  raster: ElevationRaster,
  grid: GridLayout,
  mask: LandMask,
  places: readonly Place[],
): Promise<CellElevations> {
  const window = windowOver(raster, grid);
  const fine = raster.stepLonDeg <= grid.stepLonDeg && raster.stepLatDeg <= grid.stepLatDeg;
  const cells = fine ? new CellMeans(raster, grid, mask, window) : new Between(raster, grid, window);
  const sought = places.map((place) => pixelOf(raster, place));
  const placesM = places.map(() => NaN);
  for await (const { row, values } of raster.read(window)) {
    cells.add(row, values);
    sought.forEach((pixel, i) => {
      if (pixel.row === row) placesM[i] = values[pixel.column - window.firstColumn] ?? NaN;
    });
  }
  return { elevationM: cells.means(), placesM };
}

/** Pixels that lie in the grid or next to it. */
function windowOver(raster: ElevationRaster, grid: GridLayout): RasterWindow {
  const top = grid.south + (grid.rows - 0.5) * grid.stepLatDeg;
  const bottom = grid.south - grid.stepLatDeg / 2;
  const firstRow = Math.max(0, Math.floor((raster.north - top) / raster.stepLatDeg));
  const lastRow = Math.min(raster.rows - 1, Math.ceil((raster.north - bottom) / raster.stepLatDeg));
  const left = grid.west - grid.stepLonDeg / 2;
  const width = grid.columns * grid.stepLonDeg;
  let [firstColumn, lastColumn] = [Infinity, -Infinity];
  for (let column = 0; column < raster.columns; column++) {
    const east = eastOf(raster.west + column * raster.stepLonDeg, left - raster.stepLonDeg);
    if (east > width + 2 * raster.stepLonDeg) continue;
    firstColumn = Math.min(firstColumn, column);
    lastColumn = Math.max(lastColumn, column);
  }
  if (firstRow > lastRow || firstColumn > lastColumn) throw new InputError(apart(raster, grid));
  return { firstRow, lastRow, firstColumn, lastColumn };
}

function apart(raster: ElevationRaster, grid: GridLayout): string {
  const round = (degrees: number) => Math.round(degrees * 100) / 100;
  const box = (west: number, south: number, east: number, north: number) =>
    `${round(south)} to ${round(north)} N, ${round(west)} to ${round(east)} E`;
  const { west, north, columns, rows, stepLonDeg, stepLatDeg } = raster;
  const theirs = box(west, north - (rows - 1) * stepLatDeg, west + (columns - 1) * stepLonDeg, north);
  const last = cellCentre(grid, grid.columns * grid.rows - 1);
  return `${raster.fileName} covers ${theirs}, the stations need ${box(grid.west, grid.south, last.lon, last.lat)}: they don't overlap`;
}

function pixelOf(raster: ElevationRaster, { lat, lon }: Place): { row: number; column: number } {
  const east = eastOf(lon, raster.west - raster.stepLonDeg / 2);
  return {
    row: Math.round((raster.north - lat) / raster.stepLatDeg),
    column: Math.floor(east / raster.stepLonDeg),
  };
}

/** How far a meridian lies east of another, degrees from 0 to below 360. */
function eastOf(lon: number, from: number): number {
  return (((lon - from) % 360) + 360) % 360;
}

/** Means of fine pixels over cells. */
class CellMeans {
  readonly #ofLand: Sums;
  readonly #ofAll: Sums;
  /** Column of the grid for each column of the window, -1 outside. */
  readonly #columns: Int32Array;
  readonly #lons: Float64Array;

  constructor(
    private readonly raster: ElevationRaster,
    private readonly grid: GridLayout,
    private readonly mask: LandMask,
    { firstColumn, lastColumn }: RasterWindow,
  ) {
    const cells = grid.columns * grid.rows;
    [this.#ofLand, this.#ofAll] = [new Sums(cells), new Sums(cells)];
    this.#lons = Float64Array.from(
      { length: lastColumn - firstColumn + 1 },
      (_, k) => raster.west + (firstColumn + k) * raster.stepLonDeg,
    );
    this.#columns = Int32Array.from(this.#lons, (lon) => {
      const column = Math.floor(eastOf(lon, grid.west - grid.stepLonDeg / 2) / grid.stepLonDeg);
      return column < grid.columns ? column : -1;
    });
  }

  add(row: number, values: Float32Array): void {
    const { grid, raster } = this;
    const lat = raster.north - row * raster.stepLatDeg;
    const gridRow = Math.round((lat - grid.south) / grid.stepLatDeg);
    if (gridRow < 0 || gridRow >= grid.rows) return;
    const isLand = this.mask.parallel(lat);
    for (let k = 0; k < values.length; k++) {
      if (this.#columns[k] < 0 || Number.isNaN(values[k])) continue;
      const cell = gridRow * grid.columns + this.#columns[k];
      this.#ofAll.add(cell, values[k]);
      if (isLand(this.#lons[k])) this.#ofLand.add(cell, values[k]);
    }
  }

  means(): Float32Array {
    const all = this.#ofAll.means();
    return this.#ofLand.means().map((value, i) => (Number.isNaN(value) ? all[i] : value));
  }
}

class Sums {
  readonly #sum: Float64Array;
  readonly #count: Uint32Array;

  constructor(cells: number) {
    this.#sum = new Float64Array(cells);
    this.#count = new Uint32Array(cells);
  }

  add(cell: number, value: number): void {
    this.#sum[cell] += value;
    this.#count[cell]++;
  }

  means(): Float32Array {
    return Float32Array.from(this.#sum, (sum, i) => (this.#count[i] > 0 ? sum / this.#count[i] : NaN));
  }
}

/** Coarse pixels, of which there are then no more than cells, and the values between them. */
class Between {
  readonly #rows = new Map<number, Float32Array>();

  constructor(
    private readonly raster: ElevationRaster,
    private readonly grid: GridLayout,
    private readonly window: RasterWindow,
  ) {}

  add(row: number, values: Float32Array): void {
    this.#rows.set(row, values);
  }

  means(): Float32Array {
    const { grid } = this;
    return Float32Array.from({ length: grid.columns * grid.rows }, (_, i) => this.#at(cellCentre(grid, i)));
  }

  #at({ lat, lon }: Place): number {
    const { raster, window } = this;
    const y = (raster.north - lat) / raster.stepLatDeg;
    const x = eastOf(lon, raster.west - raster.stepLonDeg / 2) / raster.stepLonDeg - 0.5;
    const [column, row] = [Math.floor(x), Math.floor(y)];
    let [sum, weights] = [0, 0];
    for (const [r, c] of [
      [row, column],
      [row, column + 1],
      [row + 1, column],
      [row + 1, column + 1],
    ]) {
      const value = this.#rows.get(r)?.[c - window.firstColumn] ?? NaN;
      const weight = (1 - Math.abs(y - r)) * (1 - Math.abs(x - c));
      if (Number.isNaN(value) || weight <= 0) continue;
      sum += weight * value;
      weights += weight;
    }
    return weights > 0 ? sum / weights : NaN;
  }
}
