import { stat } from 'node:fs/promises';
import path from 'node:path';
import { fromFile, type GeoTIFFImage } from 'geotiff';
import { InputError } from '../../analysis/records/input-error.ts';
import {
  checkElevation,
  checkLayout,
  type ElevationRaster,
  type RasterLayout,
  type RasterRow,
  type RasterWindow,
} from './elevation-raster.ts';

/** Pixels decoded at once. */
const STRIP_PIXELS = 2_000_000;
/** Codes of the GeoTIFF standard: model type 2 is geographic, raster type 2 places pixels by their centres. */
const GEOGRAPHIC = 2;
const PIXEL_IS_POINT = 2;

/**
 * Opens a GeoTIFF with elevations in m in its first band, in degrees and north up.
 * @throws InputError when it is damaged, has no place on Earth, or is projected
 */
export async function openGeoTiff(file: string): Promise<ElevationRaster> {
  const fileName = path.basename(file);
  const { size } = await stat(file);
  const image = await readable(fileName, async () => {
    const first = await (await fromFile(file)).getImage();
    await checkWhole(first, size);
    return first;
  });
  const layout = layoutOf(image, fileName);
  checkLayout(layout);
  return { ...layout, read: (window) => readRows(image, layout, window) };
}

/** The library takes zeros for pixels beyond the end of a file; a file that is cut off must not pass so. */
async function checkWhole({ fileDirectory, isTiled }: GeoTIFFImage, size: number): Promise<void> {
  const kind = isTiled ? 'Tile' : 'Strip';
  const offsets = await fileDirectory.loadValue(`${kind}Offsets`);
  const lengths = await fileDirectory.loadValue(`${kind}ByteCounts`);
  if (!offsets || !lengths) throw new Error('it has no list of its pixels');
  let end = 0;
  for (let i = 0; i < offsets.length; i++) end = Math.max(end, Number(offsets[i]) + Number(lengths[i]));
  if (end > size) throw new Error(`its pixels end at byte ${end}, the file at byte ${size}`);
}

function layoutOf(image: GeoTIFFImage, fileName: string): RasterLayout {
  const keys = image.getGeoKeys();
  if (!keys) throw new InputError(`${fileName} is a TIFF that doesn't say where on Earth it lies`);
  if (keys.GTModelTypeGeoKey !== GEOGRAPHIC) {
    const code = keys.ProjectedCSTypeGeoKey;
    const words = [keys.GTCitationGeoKey, keys.PCSCitationGeoKey].find((text) => typeof text === 'string');
    const name = code === undefined || code === 32767 ? (words ?? 'unknown') : `EPSG:${code}`;
    throw new InputError(
      `${fileName} is projected (${String(name).trim()}); it must be brought to degrees (EPSG:4326) first`,
    );
  }
  const { stepLonDeg, stepLatDeg, cornerLon, cornerLat } = placeOf(image, fileName);
  const half = keys.GTRasterTypeGeoKey === PIXEL_IS_POINT ? 0 : 0.5;
  return {
    fileName,
    columns: image.getWidth(),
    rows: image.getHeight(),
    west: cornerLon + half * stepLonDeg,
    north: cornerLat - half * stepLatDeg,
    stepLonDeg,
    stepLatDeg,
  };
}

/** Steps and the place of pixel 0, 0 (its corner or its centre, by raster type). */
function placeOf(image: GeoTIFFImage, fileName: string) {
  const directory = image.fileDirectory;
  const scale = directory.getValue('ModelPixelScale');
  const tie = directory.getValue('ModelTiepoint');
  if (scale && tie && tie.length >= 6) {
    const [column, row, , lon, lat] = tie;
    return {
      stepLonDeg: scale[0],
      stepLatDeg: scale[1],
      cornerLon: lon - column * scale[0],
      cornerLat: lat + row * scale[1],
    };
  }
  const matrix = directory.getValue('ModelTransformation');
  if (!matrix) throw new InputError(`${fileName} is a TIFF that doesn't say where on Earth it lies`);
  const [stepLonDeg, turned, , cornerLon, alsoTurned, negativeStep, , cornerLat] = matrix;
  if (turned !== 0 || alsoTurned !== 0 || !(negativeStep < 0)) {
    throw new InputError(`${fileName} is turned or upside down; it must be brought north up first`);
  }
  return { stepLonDeg, stepLatDeg: -negativeStep, cornerLon, cornerLat };
}

async function* readRows(
  image: GeoTIFFImage,
  { fileName }: RasterLayout,
  { firstRow, lastRow, firstColumn, lastColumn }: RasterWindow,
): AsyncGenerator<RasterRow> {
  const width = lastColumn - firstColumn + 1;
  const height = Math.max(1, Math.floor(STRIP_PIXELS / width));
  const nodata = image.getGDALNoData();
  for (let top = firstRow; top <= lastRow; top += height) {
    const bottom = Math.min(lastRow + 1, top + height);
    const band = await readable(fileName, async () => {
      const bands = await image.readRasters({
        window: [firstColumn, top, lastColumn + 1, bottom],
        samples: [0],
      });
      return bands[0] as ArrayLike<number>;
    });
    for (let row = top; row < bottom; row++) {
      const values = new Float32Array(width);
      for (let k = 0; k < width; k++) {
        const value = band[(row - top) * width + k];
        const missing = Number.isNaN(value) || value === nodata;
        values[k] = missing ? NaN : checkElevation(value, fileName, row, firstColumn + k);
      }
      yield { row, values };
    }
  }
}

/** What the library throws on a file it can't read is one sentence here. */
async function readable<T>(fileName: string, read: () => Promise<T>): Promise<T> {
  try {
    return await read();
  } catch (error) {
    if (error instanceof InputError) throw error;
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'EACCES') throw error;
    throw new InputError(`${fileName} can't be read as a GeoTIFF (${message}); is it cut off or damaged?`);
  }
}
