import path from 'node:path';
import { InputError } from '../../analysis/records/input-error.ts';
import { openAsciiGrid } from './elevation-ascii.ts';
import { openGeoTiff } from './elevation-geotiff.ts';
import type { ElevationRaster } from './elevation-raster.ts';
import { firstBytes } from './first-bytes.ts';

/**
 * Opens an elevation file: an Esri ASCII grid, gzipped or not, or a GeoTIFF.
 * @throws InputError when it is neither, damaged, or not in degrees of latitude and longitude
 */
export async function openElevation(file: string): Promise<ElevationRaster> {
  const start = await firstBytes(file, 8);
  const marks = new TextDecoder('latin1').decode(start);
  if (/^(II[*+]\0|MM\0[*+])/.test(marks)) return openGeoTiff(file);
  if (/^\x1f\x8b/.test(marks) || /^\s*[a-z]/i.test(marks)) return openAsciiGrid(file);
  throw new InputError(
    `${path.basename(file)} is neither an Esri ASCII grid, which begins with "ncols", nor a GeoTIFF`,
  );
}
