import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

import sirv from 'sirv';

/** Where the site lies below its host. */
export const BELOW = '/some/sub/path/';

/** A static host as anyone has one: no header of ours, nothing compressed, the site in a folder of its own. */
export interface PlainHost {
  /** Address of the page, with the slash. */
  readonly url: string;
  /** What was asked outside that folder. */
  readonly elsewhere: readonly string[];
  /** Whether parts of files are served; some hosts send whole ones whatever is asked. */
  hasRanges: boolean;
  close(): Promise<void>;
}

/** Serves the built page, and packs in `packs/` below it. */
export async function startPlainHost(page: string, packs: string): Promise<PlainHost> {
  const [fromPage, fromPacks] = [sirv(page), sirv(packs)];
  const elsewhere: string[] = [];
  const server = createServer((request, response) => {
    const path = request.url ?? '/';
    const notFound = (): void => void response.writeHead(404).end();
    if (!path.startsWith(BELOW)) {
      elsewhere.push(path);
      return notFound();
    }
    if (!host.hasRanges) delete request.headers.range;
    const below = path.slice(BELOW.length - 1);
    const inPacks = below.startsWith('/packs/');
    request.url = inPacks ? below.slice('/packs'.length) : below;
    (inPacks ? fromPacks : fromPage)(request, response, notFound);
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const host: PlainHost = {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}${BELOW}`,
    elsewhere,
    hasRanges: true,
    close: () => closed(server),
  };
  return host;
}

function closed(server: Server): Promise<void> {
  return new Promise((done) => {
    server.close(() => done());
    server.closeAllConnections();
  });
}
