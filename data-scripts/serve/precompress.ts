import { readFile, readdir, rename, stat, writeFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

const COMPRESSIBLE = new Set([
  '.css',
  '.html',
  '.js',
  '.json',
  '.map',
  '.mjs',
  '.svg',
  '.txt',
  '.wasm',
  '.csv',
]);

/** Below this a compressed copy saves no packet on the wire, bytes. */
const SMALLEST = 1024;

/**
 * Brotli quality: the database engine has 34 MB, where quality 11 takes over a minute for a sixth less; the page's
 * own files are small.
 */
const QUALITY_LARGE = 5;
const QUALITY_SMALL = 10;
const LARGE = 4_000_000;
/** Outlines and lists, which few readers load, are large from here on: quality 10 would take the build half a minute. */
const LARGE_DATA = 1_000_000;

/** Writes `NAME.br` and `NAME.gz` beside each compressible file below `folder`; results in how many were compressed. */
export async function precompress(folder: string): Promise<number> {
  const names = await readdir(folder, { recursive: true });
  const paths = names.filter((name) => COMPRESSIBLE.has(extname(name))).map((name) => join(folder, name));
  const done = await Promise.all(paths.map(compressFile));
  return done.filter(Boolean).length;
}

/** Writes `NAME.br` and `NAME.gz` beside a file; tells whether it was worth it. */
export async function compressFile(path: string): Promise<boolean> {
  const { size } = await stat(path);
  if (size < SMALLEST) return false;
  const content = await readFile(path);
  const large = /\.(json|txt|csv)$/.test(path) ? LARGE_DATA : LARGE;
  const quality = size > large ? QUALITY_LARGE : QUALITY_SMALL;
  await Promise.all([
    promisify(brotliCompress)(content, { params: { [constants.BROTLI_PARAM_QUALITY]: quality } }).then(
      (bytes) => writeWhole(`${path}.br`, bytes),
    ),
    promisify(gzip)(content, { level: size > LARGE ? 6 : 9 }).then((bytes) =>
      writeWhole(`${path}.gz`, bytes),
    ),
  ]);
  return true;
}

async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  await writeFile(`${path}.tmp`, bytes);
  await rename(`${path}.tmp`, path);
}
