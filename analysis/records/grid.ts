import { t } from '../language/t.ts';
import { InputError } from './input-error.ts';

/**
 * Cells over the land a pack answers for, row by row from the south, each row from the west. Cell `i` stands in column
 * `i % columns` and row `floor(i / columns)`.
 */
export interface PlaceGrid {
  readonly columns: number;
  readonly rows: number;
  /** Centre of the first cell, degrees east (-180 to below 180) and north. */
  readonly west: number;
  readonly south: number;
  /** From one centre to the next, degrees. */
  readonly stepLonDeg: number;
  readonly stepLatDeg: number;
  /** Mean elevation of the cell's land, m; NaN on the sea and where it isn't known. In a file: whole metres. */
  readonly elevationM: Float32Array;
  /** Distance from the centre to the nearest shore, km; 0 on the sea, NaN where it isn't known. In a file: tenths. */
  readonly coastKm: Float32Array;
  /** 1 where the centre lies on land, 0 on the sea. */
  readonly land: Uint8Array;
}

/** "CWGR" read as a little-endian number. */
const MAGIC = 0x52475743;
const VERSION = 1;
const HEADER_BYTES = 48;
const NO_ELEVATION = -32768;
const NO_COAST = 65535;
const MOST_CELLS = 1_000_000;

/**
 * Writes `grid.bin`, little-endian: magic "CWGR", version (uint16), 2 bytes of zero, columns, rows (uint32), west, south,
 * step in longitude, step in latitude (float64); then for all cells elevation (int16, m, -32768 where missing), then
 * coast distance (uint16, 0.1 km, 65535 where missing), then land (one bit a cell, lowest bit first).
 */
export function encodeGrid(grid: PlaceGrid): Uint8Array {
  const cells = grid.columns * grid.rows;
  const bytes = new Uint8Array(sizeOf(cells));
  const view = new DataView(bytes.buffer);
  view.setUint32(0, MAGIC, true);
  view.setUint16(4, VERSION, true);
  view.setUint32(8, grid.columns, true);
  view.setUint32(12, grid.rows, true);
  [grid.west, grid.south, grid.stepLonDeg, grid.stepLatDeg].forEach((value, i) =>
    view.setFloat64(16 + 8 * i, value, true),
  );
  for (let i = 0; i < cells; i++) {
    const [m, km] = [grid.elevationM[i], grid.coastKm[i]];
    const metres = Number.isNaN(m) ? NO_ELEVATION : Math.max(-32767, Math.min(32767, Math.round(m)));
    const tenths = Number.isNaN(km) ? NO_COAST : Math.max(0, Math.min(NO_COAST - 1, Math.round(km * 10)));
    view.setInt16(HEADER_BYTES + 2 * i, metres, true);
    view.setUint16(HEADER_BYTES + 2 * (cells + i), tenths, true);
    if (grid.land[i] === 1) bytes[HEADER_BYTES + 4 * cells + (i >> 3)] |= 1 << (i & 7);
  }
  return bytes;
}

/**
 * Reads `grid.bin` back.
 * @throws InputError when the bytes are no grid, of another version, or not as many as the header says
 */
export function decodeGrid(bytes: Uint8Array, fileName = 'grid.bin'): PlaceGrid {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < HEADER_BYTES || view.getUint32(0, true) !== MAGIC) {
    throw new InputError(t`${fileName}: ${bytes.length} bytes that are not a grid of cells`);
  }
  const version = view.getUint16(4, true);
  if (version !== VERSION) {
    throw new InputError(
      t`${fileName}: grid version ${version} can't be read; this program reads version ${VERSION}`,
    );
  }
  const [columns, rows] = [view.getUint32(8, true), view.getUint32(12, true)];
  const cells = columns * rows;
  if (cells < 1 || cells > MOST_CELLS || bytes.length !== sizeOf(cells)) {
    throw new InputError(
      t`${fileName} is damaged: ${columns} by ${rows} cells don't fill its ${bytes.length} bytes`,
    );
  }
  const [west, south, stepLonDeg, stepLatDeg] = [16, 24, 32, 40].map((at) => view.getFloat64(at, true));
  if (!(Math.abs(west) <= 180 && Math.abs(south) <= 90 && stepLonDeg > 0 && stepLatDeg > 0)) {
    throw new InputError(
      t`${fileName} is damaged: its first cell at ${south}, ${west} with steps of ${stepLatDeg} and ${stepLonDeg} degrees is no place`,
    );
  }
  const elevationM = new Float32Array(cells);
  const coastKm = new Float32Array(cells);
  const land = new Uint8Array(cells);
  for (let i = 0; i < cells; i++) {
    const metres = view.getInt16(HEADER_BYTES + 2 * i, true);
    const tenths = view.getUint16(HEADER_BYTES + 2 * (cells + i), true);
    elevationM[i] = metres === NO_ELEVATION ? NaN : metres;
    coastKm[i] = tenths === NO_COAST ? NaN : tenths / 10;
    land[i] = (bytes[HEADER_BYTES + 4 * cells + (i >> 3)] >> (i & 7)) & 1;
  }
  return { columns, rows, west, south, stepLonDeg, stepLatDeg, elevationM, coastKm, land };
}

function sizeOf(cells: number): number {
  return HEADER_BYTES + 4 * cells + Math.ceil(cells / 8);
}

type Layout = Pick<PlaceGrid, 'columns' | 'rows' | 'west' | 'south' | 'stepLonDeg' | 'stepLatDeg'>;

/** Centre of cell `i`, degrees; the longitude runs on beyond 180 where the grid crosses the antimeridian. */
export function cellCentre(grid: Layout, i: number): { lat: number; lon: number } {
  return {
    lat: grid.south + Math.floor(i / grid.columns) * grid.stepLatDeg,
    lon: grid.west + (i % grid.columns) * grid.stepLonDeg,
  };
}

/** The cell a place lies in; null off the grid. */
export function cellAt(grid: Layout, lat: number, lon: number): number | null {
  const { x, y } = positionOn(grid, lat, lon);
  const [column, row] = [Math.round(x), Math.round(y)];
  if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) return null;
  return row * grid.columns + column;
}

/**
 * Elevation of a place, m, between the centres around it (bilinear, over those of them that are known); null off the grid
 * and where none of them is known.
 */
export function elevationAt(grid: PlaceGrid, lat: number, lon: number): number | null {
  return valueAt(grid, grid.elevationM, lat, lon);
}

/** Distance of a place to the coast, km, between the centres around it; null as for {@link elevationAt}. */
export function coastKmAt(grid: PlaceGrid, lat: number, lon: number): number | null {
  return valueAt(grid, grid.coastKm, lat, lon);
}

function valueAt(grid: PlaceGrid, values: Float32Array, lat: number, lon: number): number | null {
  if (cellAt(grid, lat, lon) === null) return null;
  const place = positionOn(grid, lat, lon);
  // Half a cell beyond the outer centres still belongs to the grid: there the outer cells count alone.
  const x = Math.max(0, Math.min(grid.columns - 1, place.x));
  const y = Math.max(0, Math.min(grid.rows - 1, place.y));
  const [column, row] = [Math.floor(x), Math.floor(y)];
  const [shareX, shareY] = [x - column, y - row];
  let [sum, weights] = [0, 0];
  for (const [dx, dy] of [
    [0, 0],
    [1, 0],
    [0, 1],
    [1, 1],
  ]) {
    const weight = (dx === 1 ? shareX : 1 - shareX) * (dy === 1 ? shareY : 1 - shareY);
    if (weight <= 0) continue;
    const value = values[(row + dy) * grid.columns + column + dx];
    if (Number.isNaN(value)) continue;
    sum += weight * value;
    weights += weight;
  }
  return weights > 0 ? sum / weights : null;
}

/** Column and row of a place as fractions: whole numbers are centres. */
function positionOn(grid: Layout, lat: number, lon: number): { x: number; y: number } {
  // Half a cell west of the first centre still belongs to it; everything else counts eastwards.
  const half = grid.stepLonDeg / 2;
  const east = ((((lon - grid.west + half) % 360) + 360) % 360) - half;
  return { x: east / grid.stepLonDeg, y: (lat - grid.south) / grid.stepLatDeg };
}
