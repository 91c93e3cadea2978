import { createReadStream } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Readable } from 'node:stream';
import { createGunzip } from 'node:zlib';
import { InputError } from '../../analysis/records/input-error.ts';
import {
  checkElevation,
  checkLayout,
  type ElevationRaster,
  type RasterRow,
  type RasterWindow,
} from './elevation-raster.ts';
import { isGzipped } from './first-bytes.ts';

const KEYS = [
  'ncols',
  'nrows',
  'xllcorner',
  'xllcenter',
  'yllcorner',
  'yllcenter',
  'cellsize',
  'dx',
  'dy',
  'nodata_value',
] as const;
type Header = Partial<Record<(typeof KEYS)[number], number>>;

const DEFAULT_NODATA = -9999;

/**
 * Opens an Esri ASCII grid (`.asc`, gzipped or not): a header of `ncols`, `nrows`, `xllcorner` or `xllcenter`, `yllcorner`
 * or `yllcenter`, `cellsize` (or `dx` and `dy`) and perhaps `NODATA_value`, then elevations in m, row by row from the north.
 * @throws InputError when the header is incomplete or the grid isn't in degrees
 */
export async function openAsciiGrid(file: string): Promise<ElevationRaster> {
  const fileName = path.basename(file);
  await refuseProjection(file, fileName);
  const gzipped = await isGzipped(file);
  const words = new Words(file, fileName, gzipped);
  const header = await readHeader(words, fileName);
  words.close();
  const columns = needed(header, fileName, 'ncols');
  const rows = needed(header, fileName, 'nrows');
  const stepLonDeg = header.dx ?? needed(header, fileName, 'cellsize');
  const stepLatDeg = header.dy ?? needed(header, fileName, 'cellsize');
  const west = header.xllcenter ?? needed(header, fileName, 'xllcorner') + stepLonDeg / 2;
  const south = header.yllcenter ?? needed(header, fileName, 'yllcorner') + stepLatDeg / 2;
  const layout = {
    fileName,
    columns,
    rows,
    west,
    north: south + (rows - 1) * stepLatDeg,
    stepLonDeg,
    stepLatDeg,
  };
  checkLayout(layout);
  const nodata = header.nodata_value ?? DEFAULT_NODATA;
  return {
    ...layout,
    read: (window) => readRows(new Words(file, fileName, gzipped), { ...layout, nodata }, window),
  };
}

async function* readRows(
  words: Words,
  { fileName, columns, rows, nodata }: { fileName: string; columns: number; rows: number; nodata: number },
  window: RasterWindow,
): AsyncGenerator<RasterRow> {
  try {
    await readHeader(words, fileName);
    for (let row = 0; row < rows; row++) {
      const wanted = row >= window.firstRow && row <= window.lastRow;
      const values = new Float32Array(wanted ? window.lastColumn - window.firstColumn + 1 : 0);
      for (let column = 0; column < columns; column++) {
        const word = words.take() ?? (await words.next());
        if (word === undefined) {
          throw new InputError(
            `${fileName} ends in row ${row + 1}, column ${column + 1} of ${rows} rows by ${columns} columns; is it cut off?`,
          );
        }
        if (!wanted || column < window.firstColumn || column > window.lastColumn) continue;
        const value = Number(word);
        if (value === nodata) values[column - window.firstColumn] = NaN;
        else if (Number.isNaN(value)) {
          if (!/^[+-]?nan$/i.test(word)) throw noNumber(fileName, row, column, word);
          values[column - window.firstColumn] = NaN;
        } else values[column - window.firstColumn] = checkElevation(value, fileName, row, column);
      }
      if (wanted) yield { row, values };
    }
    if ((words.take() ?? (await words.next())) !== undefined) {
      throw new InputError(`${fileName} goes on after its ${rows} rows by ${columns} columns`);
    }
  } finally {
    words.close();
  }
}

function noNumber(fileName: string, row: number, column: number, word: string): InputError {
  return new InputError(
    `${fileName}, row ${row + 1}, column ${column + 1}: "${word.slice(0, 30)}" is not a number`,
  );
}

async function readHeader(words: Words, fileName: string): Promise<Header> {
  const header: Header = {};
  for (;;) {
    const word = await words.next();
    if (word === undefined) throw new InputError(`${fileName} ends within its header`);
    const key = KEYS.find((known) => known === word.toLowerCase());
    if (!key) {
      if (/^[a-z_]+$/i.test(word) && !/^nan$/i.test(word)) {
        throw new InputError(
          `${fileName}: "${word.slice(0, 30)}" is not a word of an Esri ASCII grid's header`,
        );
      }
      words.back();
      return header;
    }
    const value = await words.next();
    header[key] = Number(value);
    if (value === undefined || !Number.isFinite(header[key])) {
      throw new InputError(`${fileName}: ${word} "${value ?? ''}" is not a number`);
    }
  }
}

function needed(header: Header, fileName: string, key: (typeof KEYS)[number]): number {
  const value = header[key];
  if (value === undefined) throw new InputError(`${fileName}: ${key} is missing in the header of the grid`);
  return value;
}

/** A grid says nothing of its projection, but a `.prj` file beside it does. */
async function refuseProjection(file: string, fileName: string): Promise<void> {
  const beside = file.replace(/(\.gz)?$/i, '').replace(/\.\w+$/, '.prj');
  const text = beside === file ? '' : await readFile(beside, 'utf8').catch(() => '');
  const name = /^\s*PROJC(?:S|RS)\s*\[\s*"([^"]*)"/i.exec(text)?.[1];
  const old = /^\s*projection\s+(?!geographic)(\S+)/im.exec(text)?.[1];
  if (name ?? old) {
    throw new InputError(
      `${fileName} is projected ("${name ?? old}", says ${path.basename(beside)}); it must be brought to degrees (EPSG:4326) first`,
    );
  }
}

/** The words of a text file, which may be gzipped, without holding more than a chunk of it. */
class Words {
  readonly #chunks: AsyncIterator<string>;
  readonly #source: Readable;
  #words: string[] = [];
  #at = 0;
  #rest = '';
  #ended = false;

  constructor(
    file: string,
    private readonly fileName: string,
    gzipped: boolean,
  ) {
    this.#source = createReadStream(file);
    let text: Readable = this.#source;
    if (gzipped) {
      const unpacked = createGunzip();
      this.#source.on('error', (error) => unpacked.destroy(error));
      text = this.#source.pipe(unpacked);
    }
    text.setEncoding('latin1');
    this.#chunks = text[Symbol.asyncIterator]() as AsyncIterator<string>;
  }

  /** The next word if it is at hand. */
  take(): string | undefined {
    return this.#at < this.#words.length ? this.#words[this.#at++] : undefined;
  }

  /** The next word, undefined at the end. */
  async next(): Promise<string | undefined> {
    while (this.#at >= this.#words.length && !this.#ended) await this.#fill();
    return this.take();
  }

  /** Puts the last word back. */
  back(): void {
    this.#at--;
  }

  close(): void {
    this.#source.destroy();
  }

  async #fill(): Promise<void> {
    const chunk = await this.#chunks.next().catch((error: NodeJS.ErrnoException) => {
      if (!error.code?.startsWith('Z_')) throw error;
      throw new InputError(`${this.fileName} is cut off or damaged: its gzip stream breaks off`);
    });
    this.#ended = chunk.done === true;
    const text = this.#rest + (chunk.done ? '' : chunk.value);
    const whole = this.#ended ? text.length : text.search(/\S*$/);
    this.#rest = text.slice(whole);
    const found = text.slice(0, whole).trim();
    this.#words = found === '' ? [] : found.split(/\s+/);
    this.#at = 0;
  }
}
