import { createHash } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

import { INVENTED_STATIONS } from './invented-stations.ts';
import type { InventedStation } from './invented-stations.ts';

/** What goes wrong with one answer. Each fault is used up by one request for its path. */
export type Fault =
  | { kind: 'cut'; afterBytes: number }
  | { kind: 'status'; status: number; retryAfter?: string }
  | { kind: 'short'; promised: number }
  | { kind: 'replace'; body: Buffer; headers?: Record<string, string> }
  | { kind: 'redirect'; to: string }
  | { kind: 'silence' }
  /** Sends so many bytes and then nothing more. */
  | { kind: 'stall'; afterBytes: number }
  /** Sends a piece of so many bytes every so many ms. */
  | { kind: 'slow'; pieceBytes: number; everyMs: number };

/** A request as the archive saw it. */
export interface Seen {
  readonly path: string;
  readonly range: string | undefined;
  readonly ifRange: string | undefined;
  readonly status: number;
  readonly bytes: number;
}

/**
 * An archive on this machine with the layout that GHCN-Daily documents, and the manners of an S3 bucket: MD5 as ETag,
 * ranges, conditional requests. Faults are put in front of single answers.
 */
export class LoopbackArchive {
  readonly files = new Map<string, Buffer>();
  readonly seen: Seen[] = [];
  /** Whether ranges are answered; an archive may ignore them. */
  ranges = true;
  /** Whether ETags and dates are sent. */
  validators = true;
  /** Whether the length is told; if not, bodies come in chunks. */
  lengths = true;
  /** Origin whose pages may read the answers; null sends no CORS header at all. */
  allowOrigin: string | null = null;
  /** Headers of an answer that such pages may see, and whether they may send headers of their own. */
  exposed = '';
  preflights = false;
  /** Preflights that came. */
  asked = 0;
  readonly #faults = new Map<string, Fault[]>();
  readonly #server = createServer((request, response) => this.#answer(request, response));

  constructor(stations: readonly InventedStation[] = INVENTED_STATIONS) {
    this.files.set('/ghcnd-stations.txt', Buffer.from(stations.map((s) => `${s.listLine}\n`).join('')));
    this.files.set('/ghcnd-inventory.txt', Buffer.from(stations.map((s) => s.inventory).join('')));
    for (const { id, record } of stations) this.files.set(recordOf(id), Buffer.from(record));
  }

  async open(): Promise<string> {
    await new Promise<void>((done) => this.#server.listen(0, '127.0.0.1', done));
    return `http://127.0.0.1:${(this.#server.address() as AddressInfo).port}/`;
  }

  close(): Promise<void> {
    this.#server.closeAllConnections();
    return new Promise((done) => this.#server.close(() => done()));
  }

  /** Puts faults before the next answers for a path, in this order. */
  break(path: string, ...faults: Fault[]): void {
    this.#faults.set(path, [...(this.#faults.get(path) ?? []), ...faults]);
  }

  /** Takes all faults back. */
  mend(): void {
    this.#faults.clear();
  }

  requestsOf(path: string): Seen[] {
    return this.seen.filter((request) => request.path === path);
  }

  #answer(request: IncomingMessage, response: ServerResponse): void {
    const path = request.url ?? '';
    if (this.allowOrigin !== null) {
      response.setHeader('Access-Control-Allow-Origin', this.allowOrigin);
      if (this.exposed !== '') response.setHeader('Access-Control-Expose-Headers', this.exposed);
    }
    if (request.method === 'OPTIONS') {
      this.asked++;
      if (this.preflights) response.setHeader('Access-Control-Allow-Headers', 'Range, If-Range');
      return void response.writeHead(this.preflights ? 204 : 403).end();
    }
    const fault = this.#faults.get(path)?.shift();
    const send = (status: number, headers: Record<string, string | number>, body: Buffer): void => {
      const { range, 'if-range': ifRange } = request.headers;
      this.seen.push({ path, range, ifRange: ifRange as string | undefined, status, bytes: body.length });
      if (fault?.kind === 'cut') {
        response.writeHead(status, headers);
        response.write(body.subarray(0, fault.afterBytes), () => response.destroy());
      } else if (fault?.kind === 'stall') {
        response.writeHead(status, headers);
        response.write(body.subarray(0, fault.afterBytes));
      } else if (fault?.kind === 'slow') {
        response.writeHead(status, headers);
        void pour(response, body, fault);
      } else {
        response.writeHead(status, headers).end(body);
      }
    };
    if (fault?.kind === 'silence') return;
    if (fault?.kind === 'status') {
      const headers = fault.retryAfter === undefined ? {} : { 'Retry-After': fault.retryAfter };
      return send(fault.status, headers as Record<string, string>, Buffer.from('<Error/>'));
    }
    if (fault?.kind === 'redirect') return send(302, { Location: fault.to }, Buffer.alloc(0));
    const content = fault?.kind === 'replace' ? fault.body : this.files.get(path);
    if (content === undefined) return send(404, {}, Buffer.from('<Error><Code>NoSuchKey</Code></Error>'));

    const headers = { ...this.#headers(content), ...(fault?.kind === 'replace' ? fault.headers : {}) };
    if (fault?.kind === 'short') {
      this.seen.push({ path, range: undefined, ifRange: undefined, status: 200, bytes: content.length });
      response.writeHead(200, { ...headers, 'Content-Length': fault.promised });
      response.write(content, () => response.destroy());
      return;
    }
    if (this.validators && request.headers['if-none-match'] === headers.ETag) {
      return send(304, headers, Buffer.alloc(0));
    }
    const [, start] = /^bytes=(\d+)-$/.exec(request.headers.range ?? '') ?? [];
    const ifRange = request.headers['if-range'];
    const fits = ifRange === undefined || ifRange === headers.ETag;
    if (!this.ranges || start === undefined || !fits) {
      return send(200, this.lengths ? { ...headers, 'Content-Length': content.length } : headers, content);
    }
    if (Number(start) >= content.length) {
      return send(416, { 'Content-Range': `bytes */${content.length}` }, Buffer.alloc(0));
    }
    const rest = content.subarray(Number(start));
    const range = `bytes ${start}-${content.length - 1}/${content.length}`;
    send(206, { ...headers, 'Content-Range': range, 'Content-Length': rest.length }, rest);
  }

  #headers(content: Buffer): Record<string, string> {
    if (!this.validators) return {};
    return {
      ETag: `"${createHash('md5').update(content).digest('hex')}"`,
      'Last-Modified': 'Tue, 04 Mar 2025 05:06:07 GMT',
    };
  }
}

async function pour(
  response: ServerResponse,
  body: Buffer,
  { pieceBytes, everyMs }: { pieceBytes: number; everyMs: number },
): Promise<void> {
  for (let at = 0; at < body.length && !response.destroyed; at += pieceBytes) {
    response.write(body.subarray(at, at + pieceBytes));
    await new Promise((done) => setTimeout(done, everyMs));
  }
  response.end();
}

/** Path of a station's record in the archive. */
export function recordOf(id: string): string {
  return `/csv/by_station/${id}.csv`;
}
