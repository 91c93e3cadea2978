import type { IncomingHttpHeaders, IncomingMessage } from 'node:http';
import http from 'node:http';
import https from 'node:https';
import type { Readable } from 'node:stream';
import { PassThrough } from 'node:stream';

import { InputError } from '../../analysis/records/input-error.ts';

const MOST_REDIRECTS = 5;
const REDIRECTS = new Set([301, 302, 303, 307, 308]);

/** A fault that another try may mend. `waitMs` is the wait that the server itself asked for. */
export class PassingFault extends Error {
  readonly waitMs: number | undefined;
  constructor(message: string, waitMs?: number) {
    super(message);
    this.waitMs = waitMs;
  }
}

/** How a request is made. */
export interface GetOptions {
  readonly headers: Readonly<Record<string, string>>;
  readonly silenceMs: number;
  readonly signal?: AbortSignal;
}

/** An answer whose body is still coming. */
export interface Answer {
  readonly status: number;
  /** Status and its words, such as `403 Forbidden`. */
  readonly statusLine: string;
  readonly headers: IncomingHttpHeaders;
  /** Ends when the connection ends, well or not: ask `fault` which. */
  readonly body: Readable;
  /** Why the body is not whole, once it has ended; undefined where it is. */
  fault(): Error | undefined;
  /** Ends the connection; what is left of the body is not wanted. */
  drop(): void;
}

/**
 * Asks for `address` and follows redirects, but never from https to http. Resolves with the answer, which the caller must
 * read to its end or drop. Throws {@link PassingFault} when no answer came, {@link InputError} when none can come.
 */
export async function httpGet(address: string, options: GetOptions): Promise<Answer> {
  let url = new URL(address);
  for (let hops = 0; hops <= MOST_REDIRECTS; hops++) {
    const answer = await requestOnce(url, options);
    const { location } = answer.headers;
    if (!REDIRECTS.has(answer.status) || location === undefined) return answer;
    answer.drop();
    const next = URL.canParse(location, url) ? new URL(location, url) : undefined;
    if (next === undefined || !/^https?:$/.test(next.protocol)) {
      throw new InputError(`${url.href} redirects to "${location}", which is no web address`);
    }
    if (url.protocol === 'https:' && next.protocol === 'http:') {
      throw new InputError(`${url.href} redirects to ${next.href}, which is not protected by https`);
    }
    url = next;
  }
  throw new InputError(`${address} redirects more than ${MOST_REDIRECTS} times`);
}

function requestOnce(url: URL, { headers, silenceMs, signal }: GetOptions): Promise<Answer> {
  const { request: ask } = url.protocol === 'https:' ? https : http;
  return new Promise((answered, failed) => {
    const request = ask(url, {
      headers: {
        'User-Agent': 'citrus-winters (station records)',
        'Accept-Encoding': 'identity',
        ...headers,
      },
      timeout: silenceMs,
      signal,
    });
    request.once('timeout', () =>
      request.destroy(new PassingFault(`nothing came for ${silenceMs / 1000} s`)),
    );
    request.once('response', (response) => answered(asAnswer(response)));
    request.on('error', (error: NodeJS.ErrnoException) => failed(asFault(error, url)));
    request.end();
  });
}

/**
 * The body goes into a buffer of its own from its first byte on: Node drops what a response has received but nobody
 * has read yet when the connection breaks, and that is what a later try would go on from.
 */
function asAnswer(response: IncomingMessage): Answer {
  const body = new PassThrough({ highWaterMark: 1 << 20 });
  let fault: Error | undefined;
  response.pipe(body);
  response.on('error', (error) => (fault = error));
  response.once('close', () => {
    if (!response.complete) fault ??= new Error('the connection was cut');
    body.end();
  });
  return {
    status: response.statusCode ?? 0,
    statusLine: `${response.statusCode} ${response.statusMessage}`.trim(),
    headers: response.headers,
    body,
    fault: () => fault,
    drop: () => void response.destroy(),
  };
}

/** Whether a network error can pass. A host that doesn't exist won't come into being between two tries. */
function asFault(error: NodeJS.ErrnoException, url: URL): Error {
  if (error instanceof PassingFault || error.name === 'AbortError') return error;
  if (error.code === 'ENOTFOUND') return new InputError(`There is no host "${url.hostname}" on the network`);
  if (/CERT|TLS|SELF_SIGNED/.test(error.code ?? '')) {
    return new InputError(`The certificate of ${url.host} can't be trusted (${error.code})`);
  }
  return new PassingFault(`no connection to ${url.host} (${error.code ?? error.message})`);
}
