import { t } from '../../analysis/language/t.ts';
import { formatCount } from '../format/numbers.ts';
import { NoAnswer, PassingFault } from './faults.ts';

/** The part of `fetch` this needs. */
export type Fetcher = (url: string, init: RequestInit) => Promise<Response>;

/** How a request is made. */
export interface Asking {
  readonly fetcher: Fetcher;
  readonly headers: Readonly<Record<string, string>>;
  /** Silence after which a connection counts as cut, ms. */
  readonly silenceMs: number;
  readonly signal?: AbortSignal;
}

/** An answer whose body is still to be read: to its end, or dropped. */
export interface Answer {
  readonly status: number;
  readonly headers: Headers;
  /** Each piece as it comes. @throws PassingFault when the connection breaks or falls silent; the signal's reason when it ends */
  pieces(): AsyncGenerator<Uint8Array<ArrayBuffer>, void, undefined>;
  drop(): void;
}

/**
 * Asks for an address. The browser's cache is left out: it can't hold parts of large files, and ours are kept elsewhere.
 * @throws NoAnswer when none came; PassingFault on silence; the signal's reason when it ends
 */
export async function ask(url: string, { fetcher, headers, silenceMs, signal }: Asking): Promise<Answer> {
  signal?.throwIfAborted();
  const end = new AbortController();
  const silent = (): PassingFault =>
    new PassingFault(t`nothing came for ${formatCount(Math.max(1, Math.round(silenceMs / 1000)))} s`);
  const stop = (): void => end.abort(signal?.reason);
  signal?.addEventListener('abort', stop, { once: true });
  let timer = setTimeout(() => end.abort(silent()), silenceMs);
  const rest = (): void => {
    clearTimeout(timer);
    signal?.removeEventListener('abort', stop);
  };
  const drop = (): void => {
    rest();
    end.abort();
  };
  /** What went wrong: the reason it was ended for, or what the network makes of it. */
  const fault = (otherwise: () => Error): unknown => {
    rest();
    return end.signal.aborted ? end.signal.reason : otherwise();
  };

  let response: Response;
  try {
    response = await fetcher(url, {
      headers,
      signal: end.signal,
      mode: 'cors',
      credentials: 'omit',
      cache: 'no-store',
      referrerPolicy: 'no-referrer',
    });
  } catch (error) {
    throw fault(() => new NoAnswer(error instanceof Error ? error.message : String(error)));
  }
  async function* pieces(): AsyncGenerator<Uint8Array<ArrayBuffer>, void, undefined> {
    const reader = response.body?.getReader();
    try {
      for (;;) {
        clearTimeout(timer);
        timer = setTimeout(() => end.abort(silent()), silenceMs);
        const read = await reader?.read().catch(() => {
          throw fault(() => new PassingFault(t`the connection was cut`));
        });
        if (!read || read.done) return;
        yield read.value;
      }
    } finally {
      drop();
    }
  }
  return { status: response.status, headers: response.headers, pieces, drop };
}
