import type { ReadStream, Stats } from 'node:fs';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { join } from 'node:path';

import { fileRange } from './file-range.ts';
import { setFileHeaders } from './headers.ts';
import { plainPath } from './plain-path.ts';

/**
 * Serves a folder of packs as it is at the moment of each request, since packs come and go, and never compressed, since
 * the database reads its file by ranges of plain bytes. Calls `notFound` where the folder has no such file.
 */
export function packsHandler(packs: string) {
  return async (request: IncomingMessage, response: ServerResponse, notFound: () => void): Promise<void> => {
    const path = plainPath(request);
    if (path === undefined) return notFound();
    const file = join(packs, path);
    const found = await stat(file).catch(() => undefined);
    if (!found?.isFile()) return notFound();
    send(request, response, path, file, found);
  };
}

function send(
  request: IncomingMessage,
  response: ServerResponse,
  path: string,
  file: string,
  found: Stats,
): void {
  // Strong, since a pack’s files are renamed into place whole and never written to: browsers send it as If-Range.
  const etag = `"${found.size}-${found.mtimeMs}"`;
  setFileHeaders(response, path);
  response.setHeader('Accept-Ranges', 'bytes');
  response.setHeader('ETag', etag);
  response.setHeader('Last-Modified', found.mtime.toUTCString());
  if (request.headers['if-none-match'] === etag) return void response.writeHead(304).end();

  const ifRange = request.headers['if-range'];
  // A file that has changed since is sent whole (RFC 9110, 13.1.5).
  const wanted = ifRange === undefined || ifRange === etag ? request.headers.range : undefined;
  const range = fileRange(wanted, found.size);
  if (range === 'beyond') {
    response.setHeader('Content-Range', `bytes */${found.size}`);
    return void response.writeHead(416).end();
  }
  const { first, last } = range ?? { first: 0, last: found.size - 1 };
  if (range) response.setHeader('Content-Range', `bytes ${first}-${last}/${found.size}`);
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
