import { LAND_RINGS } from './geography.ts';
import { elevationAt } from './relief.ts';

/** Side of a pixel, degrees: about 1 km. */
const CELL_DEGREES = 0.01;
const NODATA = -9999;

/**
 * The invented relief as an Esri ASCII grid (degrees, whole metres, by pixel centres), over all of the invented land; the sea
 * has no data.
 */
export function elevationGrid(): string {
  const points = LAND_RINGS.flatMap((ring) => ring.points);
  const first = (values: number[]) => Math.floor(Math.min(...values) / CELL_DEGREES) * CELL_DEGREES;
  const lons = points.map(([lon]) => lon);
  const lats = points.map(([, lat]) => lat);
  const [west, south] = [first(lons), first(lats)];
  const columns = Math.ceil((Math.max(...lons) - west) / CELL_DEGREES);
  const rows = Math.ceil((Math.max(...lats) - south) / CELL_DEGREES);
  const lines = Array.from({ length: rows }, (_, r) => {
    const lat = south + (rows - r - 0.5) * CELL_DEGREES;
    return Array.from({ length: columns }, (__, c) => {
      const m = elevationAt(lat, west + (c + 0.5) * CELL_DEGREES);
      return m === 0 ? NODATA : Math.round(m);
    }).join(' ');
  });
  return [
    `ncols ${columns}`,
    `nrows ${rows}`,
    `xllcorner ${west.toFixed(6)}`,
    `yllcorner ${south.toFixed(6)}`,
    `cellsize ${CELL_DEGREES}`,
    `NODATA_value ${NODATA}`,
    ...lines,
    '',
  ].join('\n');
}
