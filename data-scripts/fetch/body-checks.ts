import { createReadStream, createWriteStream } from 'node:fs';
import { open, rm } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';

import { PassingFault } from './http-get.ts';
import type { BodyDescription } from './partial-file.ts';
import { md5Of } from './partial-file.ts';

/**
 * Checks a body that has come to its end: its length, and its MD5 where the ETag is one (an object stored in one part
 * has its MD5 as ETag: 32 hexadecimal digits). Throws {@link PassingFault}: another try may bring it right.
 */
export async function checkBody(path: string, bytes: number, body: BodyDescription): Promise<void> {
  if (body.total !== undefined && bytes !== body.total) {
    throw new PassingFault(`${bytes} of ${body.total} bytes came`);
  }
  const md5 = /^"([0-9a-f]{32})"$/i.exec(body.etag ?? '')?.[1];
  if (md5 !== undefined && md5.toLowerCase() !== (await md5Of(path))) {
    throw new DamagedBody(`its MD5 is not the ${md5} that the archive states`);
  }
  if (
    body.total === undefined &&
    md5 === undefined &&
    body.encoding === undefined &&
    !(await endsLine(path))
  ) {
    throw new PassingFault('it ends in the middle of a line');
  }
}

/** A body whose bytes are wrong: going on with it is no use, it must come anew. */
export class DamagedBody extends PassingFault {}

/**
 * Unpacks a body that was sent compressed to `plain` and results in that path; a plain body is its own. Throws
 * {@link DamagedBody} for what is no gzip, or breaks off although all of it came; where the length was never told, more may
 * yet come: {@link PassingFault}.
 */
export async function unpackBody(path: string, plain: string, body: BodyDescription): Promise<string> {
  if (body.encoding === undefined) return path;
  try {
    await pipeline(createReadStream(path), createGunzip(), createWriteStream(plain));
    return plain;
  } catch (error) {
    await rm(plain, { force: true });
    const { code, message } = error as NodeJS.ErrnoException;
    if (!code?.startsWith('Z_')) throw error;
    if (code !== 'Z_BUF_ERROR') throw new DamagedBody(`its gzip stream is damaged (${message})`);
    const Fault = body.total === undefined ? PassingFault : DamagedBody;
    throw new Fault('its gzip stream is truncated');
  }
}

async function endsLine(path: string): Promise<boolean> {
  const file = await open(path);
  try {
    const { size } = await file.stat();
    const last = Buffer.alloc(1);
    return size > 0 && (await file.read(last, 0, 1, size - 1)).bytesRead === 1 && last[0] === 0x0a;
  } finally {
    await file.close();
  }
}
