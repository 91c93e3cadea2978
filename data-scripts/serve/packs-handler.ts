import type { ReadStream, Stats } from 'node:fs';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { join } from 'node:path';

import { CompressedFiles, encodingFor, isCompressible, type Encoding } from './compressed-files.ts';
import { fileRange } from './file-range.ts';
import { setFileHeaders } from './headers.ts';
import { plainPath } from './plain-path.ts';

/** A file of a pack as it is at the moment of a request. */
interface FoundFile {
  /** Below the folder of packs, for its type. */
  readonly path: string;
  readonly file: string;
  readonly stats: Stats;
}

/**
 * Serves a folder of packs as it is at the moment of each request, since packs come and go. Files that are read whole go
 * compressed to whoever takes that; the database never does, since it is read by ranges of plain bytes. Calls `notFound`
 * where the folder has no such file.
 */
export function packsHandler(packs: string) {
  const copies = new CompressedFiles();
  return async (request: IncomingMessage, response: ServerResponse, notFound: () => void): Promise<void> => {
    const path = plainPath(request);
    if (path === undefined) return notFound();
    const file = join(packs, path);
    const stats = await stat(file).catch(() => undefined);
    if (!stats?.isFile()) return notFound();
    const found = { path, file, stats };
    if (!isCompressible(path, stats.size)) return sendPlain(request, response, found);
    response.setHeader('Vary', 'Accept-Encoding');
    const encoding = encodingFor(request.headers['accept-encoding']);
    if (!encoding || request.headers.range !== undefined) return sendPlain(request, response, found);
    // A file that went away meanwhile is not there.
    await sendCompressed(request, response, found, encoding, copies).catch(notFound);
  };
}

// Tags are strong, since a pack’s files are renamed into place whole and never written to: browsers send them as If-Range.
function tagOf({ size, mtimeMs }: Stats, encoding?: Encoding): string {
  return `"${size}-${mtimeMs}${encoding ? `-${encoding}` : ''}"`;
}

function setFoundHeaders(response: ServerResponse, { path, stats }: FoundFile, etag: string): void {
  setFileHeaders(response, path);
  response.setHeader('ETag', etag);
  response.setHeader('Last-Modified', stats.mtime.toUTCString());
}

async function sendCompressed(
  request: IncomingMessage,
  response: ServerResponse,
  found: FoundFile,
  encoding: Encoding,
  copies: CompressedFiles,
): Promise<void> {
  const etag = tagOf(found.stats, encoding);
  const isKnown = request.headers['if-none-match'] === etag;
  const content = isKnown ? null : await copies.get(found.file, etag, encoding);
  setFoundHeaders(response, found, etag);
  if (content === null) return void response.writeHead(304).end();
  response.setHeader('Content-Encoding', encoding);
  response.setHeader('Content-Length', content.length);
  response.end(request.method === 'HEAD' ? undefined : content);
}

function sendPlain(request: IncomingMessage, response: ServerResponse, found: FoundFile): void {
  const { file, stats } = found;
  const etag = tagOf(stats);
  setFoundHeaders(response, found, etag);
  response.setHeader('Accept-Ranges', 'bytes');
  if (request.headers['if-none-match'] === etag) return void response.writeHead(304).end();

  const ifRange = request.headers['if-range'];
  // A file that has changed since is sent whole (RFC 9110, 13.1.5).
  const wanted = ifRange === undefined || ifRange === etag ? request.headers.range : undefined;
  const range = fileRange(wanted, stats.size);
  if (range === 'beyond') {
    response.setHeader('Content-Range', `bytes */${stats.size}`);
    return void response.writeHead(416).end();
  }
  const { first, last } = range ?? { first: 0, last: stats.size - 1 };
  if (range) response.setHeader('Content-Range', `bytes ${first}-${last}/${stats.size}`);
  response.setHeader('Content-Length', last - first + 1);
  response.writeHead(range ? 206 : 200);
  if (request.method === 'HEAD' || last < first) return void response.end();
  pour(createReadStream(file, { start: first, end: last }), response);
}

/** Sends a file; when reader or disk fails in the middle, the connection ends early and the file is closed. */
function pour(file: ReadStream, response: ServerResponse): void {
  file.once('error', () => response.destroy());
  response.once('close', () => file.destroy());
  file.pipe(response);
}
