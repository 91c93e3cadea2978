import { InputError } from '../../analysis/records/input-error.ts';

/** Rows and columns of a raster, first and last included. */
export interface RasterWindow {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly firstColumn: number;
  readonly lastColumn: number;
}

/** A row of a window: elevations in m from west to east, NaN where the raster has none. */
export interface RasterRow {
  readonly row: number;
  readonly values: Float32Array;
}

/** Where the pixels of a raster lie: degrees of latitude and longitude, north up. */
export interface RasterLayout {
  readonly fileName: string;
  readonly columns: number;
  readonly rows: number;
  /** Centre of the first pixel of the first (northernmost) row, degrees. */
  readonly west: number;
  readonly north: number;
  /** From one centre to the next, degrees, above 0. */
  readonly stepLonDeg: number;
  readonly stepLatDeg: number;
}

/** An elevation file, read a window at a time and a row at a time. */
export interface ElevationRaster extends RasterLayout {
  /** Rows from north to south. */
  read(window: RasterWindow): AsyncIterable<RasterRow>;
}

/** Elevations beyond these are no elevations, m. */
const LOWEST_M = -12_000;
const HIGHEST_M = 9_000;

/**
 * Checks that a raster's numbers are what they must be.
 * @throws InputError naming the file and the value
 */
export function checkLayout(layout: RasterLayout): void {
  const { fileName, columns, rows, west, north, stepLonDeg, stepLatDeg } = layout;
  if (!(Number.isInteger(columns) && columns > 0 && Number.isInteger(rows) && rows > 0)) {
    throw new InputError(`${fileName}: ${columns} by ${rows} is no number of columns and rows`);
  }
  if (!(stepLonDeg > 0 && stepLatDeg > 0)) {
    throw new InputError(`${fileName}: a cell size of ${stepLonDeg} by ${stepLatDeg} is not above 0`);
  }
  const [east, south] = [west + (columns - 1) * stepLonDeg, north - (rows - 1) * stepLatDeg];
  const far = [west, east].some((lon) => !(Math.abs(lon) <= 360.5));
  if (far || !(north <= 90.5) || !(south >= -90.5) || east - west > 360.5) {
    throw new InputError(
      `${fileName} reaches from ${round(west)} to ${round(east)} and from ${round(south)} to ${round(north)}, which are not ` +
        'degrees of longitude and latitude: a projected raster must be brought to degrees (EPSG:4326) first',
    );
  }
}

/** @throws InputError when a value can't be an elevation in m */
export function checkElevation(value: number, fileName: string, row: number, column: number): number {
  if (value >= LOWEST_M && value <= HIGHEST_M) return value;
  throw new InputError(
    `${fileName}, row ${row + 1}, column ${column + 1}: ${value} is not an elevation from ${LOWEST_M} to ${HIGHEST_M} m`,
  );
}

function round(degrees: number): number {
  return Math.round(degrees * 100) / 100;
}
