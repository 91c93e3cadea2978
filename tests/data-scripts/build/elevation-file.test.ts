import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { InputError } from '../../../analysis/records/input-error.ts';
import { openElevation } from '../../../data-scripts/build/elevation-file.ts';
import type { ElevationRaster } from '../../../data-scripts/build/elevation-raster.ts';
import relief from '../../reference/elevation/relief.json';
import { DEGREES, handMadeTiff } from './hand-made-tiff.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'citrus-winters-elevation-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function written(name: string, content: string | Uint8Array): Promise<string> {
  const file = path.join(folder, name);
  await writeFile(file, content);
  return file;
}

const BODY = '1 2 3 4\n5 6 7 8\n-9999 10 11 12\n';
const HEADER = 'ncols 4\nnrows 3\nxllcorner -6\nyllcorner 36\ncellsize 0.5\nNODATA_value -9999\n';
const VALUES = [
  [1, 2, 3, 4],
  [5, 6, 7, 8],
  [NaN, 10, 11, 12],
];

async function all(raster: ElevationRaster): Promise<number[][]> {
  const rows: number[][] = [];
  const window = { firstRow: 0, lastRow: raster.rows - 1, firstColumn: 0, lastColumn: raster.columns - 1 };
  for await (const { values } of raster.read(window)) rows.push([...values]);
  return rows;
}

/** Opens a file and reads all of it. */
const readAll = async (name: string, content: string | Uint8Array) =>
  all(await openElevation(await written(name, content)));

describe('rasters written by GDAL (tests/reference/elevation)', () => {
  const reference = path.join('tests', 'reference', 'elevation');

  it.each(relief.files)('%s is read as GDAL wrote it', async (name) => {
    const raster = await openElevation(path.join(reference, name));
    const [[west, north], [east, south]] = [relief.first_centre, relief.last_centre];
    expect(raster.west).toBeCloseTo(west, 9);
    expect(raster.north).toBeCloseTo(north, 9);
    expect(raster.west + (raster.columns - 1) * raster.stepLonDeg).toBeCloseTo(east, 9);
    expect(raster.north - (raster.rows - 1) * raster.stepLatDeg).toBeCloseTo(south, 9);
    const known = relief.rows.map((row) => row.map((m) => (m === relief.nodata ? NaN : m)));
    expect(await all(raster)).toEqual(known);
  });

  it('projected.tif is refused by its zone', async () => {
    await expect(openElevation(path.join(reference, 'projected.tif'))).rejects.toThrow(
      /projected\.tif is projected \(EPSG:32623\); it must be brought to degrees/,
    );
  });
});

describe('an Esri ASCII grid', () => {
  it('by corners: the first value is the north-west pixel, its centre half a cell inside', async () => {
    const raster = await openElevation(await written('corner.asc', HEADER + BODY));
    // Corner 36 N + 3 rows of 0.5 = 37.5 N is the upper edge; centres lie 0.25 degrees inside.
    expect(raster).toMatchObject({
      columns: 4,
      rows: 3,
      west: -5.75,
      north: 37.25,
      stepLonDeg: 0.5,
      stepLatDeg: 0.5,
    });
    expect(await all(raster)).toEqual(VALUES);
  });

  it('by centres, with steps of their own, in any letters and order, without NODATA_value, gzipped under any name', async () => {
    const header = 'NROWS 3\r\nNCOLS 4\r\nYLLCENTER 36\r\nXLLCENTER -6\r\nDX 0.5\r\nDY 0.25\r\n';
    const raster = await openElevation(await written('centre.txt', gzipSync(header + BODY)));
    expect(raster).toMatchObject({ west: -6, north: 36.5, stepLonDeg: 0.5, stepLatDeg: 0.25 });
    expect(await all(raster)).toEqual(VALUES);
  });

  it('takes values wherever lines break, and a window of them', async () => {
    const raster = await openElevation(await written('lines.asc', HEADER + BODY.replace(/\s+/g, ' \n  ')));
    const rows = [];
    for await (const row of raster.read({ firstRow: 1, lastRow: 2, firstColumn: 1, lastColumn: 2 }))
      rows.push(row);
    expect(rows.map(({ row, values }) => [row, ...values])).toEqual([
      [1, 6, 7],
      [2, 10, 11],
    ]);
  });

  it('reads a grid of many chunks as it was written', async () => {
    const value = (r: number, c: number) => ((r * 31 + c * 7) % 4000) - 300;
    const lines = Array.from({ length: 300 }, (_, r) =>
      Array.from({ length: 400 }, (__, c) => value(r, c)).join(' '),
    );
    const rows = await readAll(
      'big.asc',
      `ncols 400\nnrows 300\nxllcorner 0\nyllcorner 0\ncellsize 0.01\n${lines.join('\n')}\n`,
    );
    expect(rows).toHaveLength(300);
    expect(rows.every((row, r) => row.length === 400 && row.every((m, c) => m === value(r, c)))).toBe(true);
  });

  it.each([
    [
      'cut',
      HEADER + '1 2 3 4\n5 6',
      /cut\.asc ends in row 2, column 3 of 3 rows by 4 columns; is it cut off\?/,
    ],
    ['headless', 'ncols 4\nnrows 3\n', /ends within its header/],
    ['no cell size', HEADER.replace('cellsize 0.5\n', '') + BODY, /cellsize is missing in the header/],
    ['no corner', HEADER.replace('xllcorner -6\n', '') + BODY, /xllcorner is missing in the header/],
    ['a foreign word', `north 40\n${HEADER}${BODY}`, /"north" is not a word of an Esri ASCII grid's header/],
    ['a word for a number', HEADER.replace('0.5', 'half') + BODY, /cellsize "half" is not a number/],
    ['a cell of no size', HEADER.replace('0.5', '0') + BODY, /a cell size of 0 by 0 is not above 0/],
    ['a comma', HEADER + BODY.replace('6', '6,5'), /row 2, column 2: "6,5" is not a number/],
    [
      'no elevation',
      HEADER + BODY.replace('6', '30000'),
      /row 2, column 2: 30000 is not an elevation from -12000 to 9000 m/,
    ],
    ['too long', `${HEADER}${BODY}13\n`, /goes on after its 3 rows by 4 columns/],
    [
      'metres',
      HEADER.replace('-6', '443000').replace('36', '4060000').replace('0.5', '90') + BODY,
      /degrees of longitude and latitude: a projected raster must be brought to degrees \(EPSG:4326\) first/,
    ],
  ])('%s: one sentence', async (name, content, sentence) => {
    const outcome = readAll(`${name.replaceAll(' ', '-')}.asc`, content);
    await expect(outcome).rejects.toThrow(InputError);
    await expect(outcome).rejects.toThrow(sentence);
  });

  it('whose gzip stream breaks off is called damaged', async () => {
    const whole = gzipSync(HEADER + BODY);
    await expect(readAll('half.asc.gz', whole.subarray(0, whole.length - 12))).rejects.toThrow(
      /half\.asc\.gz is cut off or damaged: its gzip stream breaks off/,
    );
  });

  it('is refused by name where the .prj beside it says that it is projected, and read where it says degrees', async () => {
    await written('utm.prj', 'PROJCS["ETRS89 / UTM zone 30N",GEOGCS["ETRS89",DATUM["x"]]]');
    await expect(readAll('utm.asc', HEADER + BODY)).rejects.toThrow(
      /utm\.asc is projected \("ETRS89 \/ UTM zone 30N", says utm\.prj\); it must be brought to degrees \(EPSG:4326\) first/,
    );
    await written('wgs.prj', 'GEOGCS["WGS 84",DATUM["WGS_1984"]]');
    expect(await readAll('wgs.asc', HEADER + BODY)).toEqual(VALUES);
  });
});

describe('a GeoTIFF', () => {
  const tiff = {
    columns: 4,
    rows: 3,
    values: VALUES.flat().map((m) => (Number.isNaN(m) ? -9999 : m)),
    stepDeg: 0.5,
    lon: -6,
    lat: 37.5,
    geoKeys: DEGREES,
    nodata: -9999,
  };

  it('is read as the same grid in ASCII, whole and by windows', async () => {
    const raster = await openElevation(await written('same.tif', handMadeTiff(tiff)));
    const ascii = await openElevation(await written('same.asc', HEADER + BODY));
    const { read: _, fileName: __, ...place } = raster;
    expect(ascii).toMatchObject(place);
    expect(await all(raster)).toEqual(VALUES);
    const rows = [];
    for await (const row of raster.read({ firstRow: 2, lastRow: 2, firstColumn: 0, lastColumn: 1 }))
      rows.push(row);
    expect(rows).toEqual([{ row: 2, values: Float32Array.of(NaN, 10) }]);
  });

  it('whose pixels are points is tied by a centre', async () => {
    const geoKeys = [
      [1024, 2],
      [1025, 2],
      [2048, 4326],
    ] as const;
    const raster = await openElevation(await written('points.tif', handMadeTiff({ ...tiff, geoKeys })));
    expect(raster).toMatchObject({ west: -6, north: 37.5 });
  });

  it.each([
    [
      'UTM',
      {
        geoKeys: [
          [1024, 1],
          [1025, 1],
          [3072, 25830],
        ] as const,
        stepDeg: 90,
        lon: 443000,
        lat: 4060000,
      },
      /UTM\.tif is projected \(EPSG:25830\); it must be brought to degrees \(EPSG:4326\) first/,
    ],
    [
      'absurd',
      { values: tiff.values.with(5, 20_000) },
      /absurd\.tif, row 2, column 2: 20000 is not an elevation/,
    ],
    ['metres', { stepDeg: 90, lon: 443000, lat: 4060000 }, /not degrees of longitude and latitude/],
  ])('%s: one sentence', async (name, change, sentence) => {
    await expect(readAll(`${name}.tif`, handMadeTiff({ ...tiff, ...change }))).rejects.toThrow(sentence);
  });

  it('that is cut off is called so', async () => {
    const bytes = handMadeTiff(tiff);
    for (const length of [10, 60, bytes.length - 6]) {
      const outcome = readAll(`cut-${length}.tif`, bytes.subarray(0, length));
      await expect(outcome).rejects.toThrow(InputError);
      await expect(outcome).rejects.toThrow(/can't be read as a GeoTIFF .*is it cut off or damaged\?/);
    }
  });
});

it('refuses what is neither, and an empty file', async () => {
  await expect(readAll('pict.png', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10))).rejects.toThrow(
    /pict\.png is neither an Esri ASCII grid, which begins with "ncols", nor a GeoTIFF/,
  );
  await expect(readAll('none.asc', '')).rejects.toThrow(/neither/);
  await expect(readAll('zip.gz', gzipSync('{"a": 1}'))).rejects.toThrow(InputError);
});
