import type { IncomingMessage } from 'node:http';
import http from 'node:http';
import https from 'node:https';

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

/**
 * Asks for `address` and follows redirects, but never from https to http. Resolves with the response, whose body the caller
 * must read or destroy. Throws {@link PassingFault} when no answer came, {@link InputError} when none can come.
 */
export async function httpGet(address: string, options: GetOptions): Promise<IncomingMessage> {
  let url = new URL(address);
  for (let hops = 0; hops <= MOST_REDIRECTS; hops++) {
    const response = await requestOnce(url, options);
    const { location } = response.headers;
    if (!REDIRECTS.has(response.statusCode ?? 0) || location === undefined) return response;
    response.destroy();
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

function requestOnce(url: URL, { headers, silenceMs, signal }: GetOptions): Promise<IncomingMessage> {
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
    request.once('response', answered);
    request.on('error', (error: NodeJS.ErrnoException) => failed(asFault(error, url)));
    request.end();
  });
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
