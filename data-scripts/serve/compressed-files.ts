import { readFile } from 'node:fs/promises';
import { extname } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

/** Ways of compressing, the better first. */
export type Encoding = 'br' | 'gzip';

/** Of a pack's files those that are read whole. Never a database: it is read by ranges of its plain bytes. */
const COMPRESSIBLE = new Set(['.json', '.arrow', '.bin']);
const SMALLEST = 1024;
const LARGEST = 16_000_000;
/** A list of 5,000 stations (1 MB) takes some 30 ms; better qualities save a tenth and take ten times that. */
const QUALITY = 5;
const GZIP_LEVEL = 6;
/** Compressed copies kept in memory, bytes; the ones longest unused go first. */
const KEPT = 64_000_000;

/** The best of our ways that a reader takes, by its `Accept-Encoding`; undefined: none. */
export function encodingFor(accepted: string | undefined): Encoding | undefined {
  const taken = (accepted ?? '').split(',').flatMap((part) => {
    const [name, ...parameters] = part.split(';').map((text) => text.trim().toLowerCase());
    return parameters.some((text) => /^q=0(\.0*)?$/.test(text)) ? [] : name;
  });
  return (['br', 'gzip'] as const).find((encoding) => taken.includes(encoding));
}

/** True for a file that is worth compressing, and may be. */
export function isCompressible(path: string, size: number): boolean {
  return COMPRESSIBLE.has(extname(path)) && size >= SMALLEST && size <= LARGEST;
}

/** Compressed copies of files, made at the first question and kept in memory. */
export class CompressedFiles {
  /** In the order of their last use. */
  readonly #kept = new Map<string, Promise<Buffer>>();
  readonly #most: number;
  #bytes = 0;

  constructor(most = KEPT) {
    this.#most = most;
  }

  /** @param tag tells the content: a file that has changed has another */
  async get(file: string, tag: string, encoding: Encoding): Promise<Buffer> {
    const key = `${encoding} ${tag} ${file}`;
    const known = this.#kept.get(key);
    const copy = known ?? compress(file, encoding);
    this.#kept.delete(key);
    this.#kept.set(key, copy);
    if (!known) {
      copy.then(
        ({ length }) => this.#count(length),
        () => this.#kept.delete(key),
      );
    }
    return copy;
  }

  async #count(length: number): Promise<void> {
    this.#bytes += length;
    for (const [key, copy] of this.#kept) {
      if (this.#bytes <= this.#most) return;
      this.#kept.delete(key);
      this.#bytes -= (await copy.catch(() => Buffer.alloc(0))).length;
    }
  }
}

async function compress(file: string, encoding: Encoding): Promise<Buffer> {
  const content = await readFile(file);
  if (encoding === 'gzip') return promisify(gzip)(content, { level: GZIP_LEVEL });
  return promisify(brotliCompress)(content, { params: { [constants.BROTLI_PARAM_QUALITY]: QUALITY } });
}
