import { readFile } from 'node:fs/promises';

/** One request that went out, as Chromium's own log of the network has it: cached answers are none. */
export interface Transfer {
  readonly url: string;
  readonly method: string;
  /** When it was sent, ms since 1970. */
  readonly at: number;
  readonly status: number;
  /** Bytes of the answer on the wire: as compressed, with its head. */
  readonly bytes: number;
}

interface LogEvent {
  readonly type: number;
  readonly time: string;
  readonly source: { readonly id: number };
  readonly params?: {
    readonly url?: string;
    readonly method?: string;
    readonly headers?: readonly string[];
    readonly byte_count?: number;
  };
}

interface NetLog {
  readonly constants: {
    readonly logEventTypes: Readonly<Record<string, number>>;
    /** Makes a time of the log one since 1970, ms. */
    readonly timeTickOffset: number | string;
  };
  readonly events: readonly LogEvent[];
}

/** Lines of a head end in two bytes, the head in two more. */
const LINE_END = 2;

/**
 * Reads what a browser started with `--log-net-log=FILE` fetched from `origin`, once it has ended, in the order of sending. Requests of
 * the page, of its workers and of the service worker are all in it.
 */
export async function readNetLog(
  file: string,
  origin: string,
): Promise<{ transfers: Transfer[]; socketBytes: number }> {
  const { constants, events } = JSON.parse(await readFile(file, 'utf8')) as NetLog;
  const type = constants.logEventTypes;
  const asked = new Map<number, { url: string; method: string }>();
  const transfers: Transfer[] = [];
  let socketBytes = 0;
  for (const event of events) {
    const { params = {}, source } = event;
    if (event.type === type.SOCKET_BYTES_RECEIVED) socketBytes += params.byte_count ?? 0;
    if (event.type === type.URL_REQUEST_START_JOB && params.url?.startsWith(origin))
      asked.set(source.id, { url: params.url, method: params.method ?? 'GET' });
    const request = asked.get(source.id);
    if (event.type !== type.HTTP_TRANSACTION_READ_RESPONSE_HEADERS || !request || !params.headers) continue;
    const { headers } = params;
    const head = headers.reduce((sum, line) => sum + line.length + LINE_END, LINE_END);
    transfers.push({
      ...request,
      at: Number(constants.timeTickOffset) + Number(event.time),
      status: Number(headers[0].split(' ')[1]),
      bytes: head + (request.method === 'HEAD' ? 0 : bodyBytes(headers)),
    });
  }
  return { transfers, socketBytes };
}

function bodyBytes(headers: readonly string[]): number {
  const line = headers.find((header) => /^content-length:/i.test(header));
  return line ? Number(line.slice(line.indexOf(':') + 1)) : 0;
}
