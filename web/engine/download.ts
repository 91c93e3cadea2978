import { t } from '../../analysis/language/t.ts';
/** A download that failed; the message is one sentence for the reader. */
export class DownloadError extends Error {
  override readonly name = 'DownloadError';
}

export interface Download {
  readonly url: string;
  /** What it is, for messages: `the database engine`. */
  readonly what: string;
  readonly type: string;
  /**
   * Size after decompression, bytes. `Content-Length` counts what travels, the stream what comes out of decompression:
   * for a compressed answer only this tells how much is left.
   */
  readonly expectedBytes: number;
}

export type Fetch = (url: string, init?: { signal?: AbortSignal }) => Promise<Response>;

/** Bytes received so far, after decompression; `total` is `null` once the expectation proved wrong. */
export type OnBytes = (loaded: number, total: number | null) => void;

/**
 * Downloads one file whole, counting its bytes.
 * @throws DownloadError when the server can't be reached, refuses, or the connection breaks off
 */
export async function download(
  { url, what, type, expectedBytes }: Download,
  fetcher: Fetch,
  onBytes: OnBytes,
): Promise<Blob> {
  let response: Response;
  try {
    response = await fetcher(url);
  } catch {
    throw new DownloadError(t`Could not reach the server for ${what}; the connection may be down.`);
  }
  if (!response.ok)
    throw new DownloadError(t`Could not load ${what}: the server answered ${response.status}.`);
  const total = totalBytes(response, expectedBytes);
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let loaded = 0;
  onBytes(0, total);
  try {
    const reader = response.body!.getReader();
    for (;;) {
      const { done, value } = await reader.read();
      if (done) break;
      parts.push(value as Uint8Array<ArrayBuffer>);
      loaded += value.length;
      onBytes(loaded, total !== null && loaded <= total ? total : null);
    }
  } catch {
    throw new DownloadError(t`The connection broke off after ${loaded} bytes of ${what}.`);
  }
  const length = plainLength(response);
  if (length !== null && loaded < length) {
    throw new DownloadError(t`Only ${loaded} of ${length} bytes of ${what} arrived.`);
  }
  return new Blob(parts, { type });
}

/** `Content-Length` where it counts the same bytes as the stream. */
function plainLength({ headers }: Response): number | null {
  const encoding = headers.get('content-encoding');
  if (encoding !== null && encoding !== 'identity') return null;
  const length = Number(headers.get('content-length') ?? NaN);
  return Number.isFinite(length) && length > 0 ? length : null;
}

function totalBytes(response: Response, expectedBytes: number): number | null {
  return plainLength(response) ?? (expectedBytes > 0 ? expectedBytes : null);
}
