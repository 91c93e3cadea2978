import { realpath } from 'node:fs/promises';
import type { RequestListener, ServerResponse } from 'node:http';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Readable } from 'node:stream';

import sirv from 'sirv';

import { checkArchives, SITE_FILE, siteSettings } from './archives.ts';
import { PACK_HEADERS, securityHeaders, setFileHeaders, setHeaders } from './headers.ts';
import { packsHandler } from './packs-handler.ts';
import { plainPath } from './plain-path.ts';

/** What to serve and where. */
export interface SiteOptions {
  /** Folder of the built page, served at `/`. */
  readonly page: string;
  /** Folder of record packs, served at `/packs/`; packs may come and go while the server runs. */
  readonly packs: string;
  /** Base addresses of the archives that the page may fetch records from; the public one when left out. */
  readonly archives?: readonly string[];
  /** Address to listen on; this machine only by default. */
  readonly host?: string;
  /** 0 (the default) takes any free port. */
  readonly port?: number;
}

/** A running server. */
export interface Site {
  /** `http://host:port/`, with the slash. */
  readonly url: string;
  /** Ends open connections and stops listening. */
  close(): Promise<void>;
}

/**
 * Serves the page and the packs. Rejects with Node's own error when it can't listen (`EADDRINUSE`: the port is taken),
 * with an `InputError` when an archive's address is none.
 */
export async function serveSite(options: SiteOptions): Promise<Site> {
  const { host = '127.0.0.1', port = 0 } = options;
  const archives = checkArchives(options.archives);
  const [page, packs] = [await realpath(options.page), await realpath(options.packs)];
  const server = createServer(siteListener(page, packs, archives));
  await new Promise<void>((listening, failed) => {
    server.once('error', failed);
    server.listen(port, host, listening);
  });
  const { port: taken } = server.address() as AddressInfo;
  return {
    url: `http://${host.includes(':') ? `[${host}]` : host}:${taken}/`,
    close: () =>
      new Promise((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}

/** Answers requests below `/packs/` from `packs`, the site's settings from its options and all others from `page`. */
function siteListener(page: string, packs: string, archives: readonly string[]): RequestListener {
  const security = securityHeaders(archives);
  const fromPage = sirv(page, { etag: true, brotli: true, gzip: true, setHeaders: setFileHeaders });
  const fromPacks = packsHandler(packs);
  return (request, response) => {
    const path = plainPath(request);
    const isPack = path?.startsWith('/packs/') === true;
    setHeaders(response, isPack ? PACK_HEADERS : security);
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.setHeader('Allow', 'GET, HEAD');
      return answer(response, 405, 'Only GET and HEAD are answered here.');
    }
    const notFound = (): void => answer(response, 404, 'There is nothing at this address.');
    if (path === undefined) return notFound();
    if (isPack) {
      request.url = path.slice('/packs'.length);
      void fromPacks(request, response, notFound);
    } else if (path === `/${SITE_FILE}`) {
      setFileHeaders(response, path);
      response.end(siteSettings(archives));
    } else {
      request.url = path;
      delete request.headers.range;
      closeAfter(response);
      fromPage(request, response, notFound);
    }
  };
}

/** Closes a file of the page when its reader has gone, which `sirv` doesn't. */
function closeAfter(response: ServerResponse): void {
  response.once('pipe', (file: Readable) => response.once('close', () => file.destroy()));
}

function answer(response: ServerResponse, status: number, sentence: string): void {
  response.statusCode = status;
  response.setHeader('Content-Type', 'text/plain; charset=utf-8');
  response.setHeader('Cache-Control', 'no-store');
  response.end(`${sentence}\n`);
}
