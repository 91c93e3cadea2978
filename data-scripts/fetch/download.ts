import type { IncomingHttpHeaders } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';

import { InputError } from '../../analysis/records/input-error.ts';
import { DamagedBody, checkBody, unpackBody } from './body-checks.ts';
import type { CheckedOptions } from './fetch-options.ts';
import type { Answer } from './http-get.ts';
import { PassingFault, httpGet } from './http-get.ts';
import type { BodyDescription } from './partial-file.ts';
import { PartialFile } from './partial-file.ts';
import { retryAfterMs } from './retry-after.ts';

/** What became of a file: it is there `whole`, it was there and is `unchanged`, or the archive has none (`missing`). */
export type Download =
  | { readonly outcome: 'whole'; readonly body: BodyDescription }
  | { readonly outcome: 'unchanged' | 'missing' };

/** Hears how far a file has come, and why it is tried again. */
export interface DownloadProgress {
  bytes(come: number, total: number | undefined): void;
  again(reason: string, waitMs: number): void;
}

type Patience = Pick<CheckedOptions, 'tries' | 'backoffMs' | 'silenceMs' | 'signal'>;

const LONGEST_BACKOFF_MS = 30_000;
const LONGEST_WAIT_MS = 120_000;
const MOST_TRIES = 30;

/**
 * Brings the file at `url` to `target`, whole or not at all. What an earlier try or run has brought is gone on with
 * when the archive still has the same file. `known` describes the file that `target` holds already.
 *
 * Gives up with one {@link InputError} after `tries` in a row that brought nothing new; the part stays for a later run.
 */
export async function download(
  url: string,
  target: string,
  known: BodyDescription | undefined,
  patience: Patience,
  progress: DownloadProgress,
): Promise<Download> {
  const part = new PartialFile(target);
  let furthest = (await part.state())?.bytes ?? 0;
  let inVain = 0;
  for (let tries = 1; ; tries++) {
    try {
      return await tryOnce(url, part, known, patience, progress);
    } catch (fault) {
      patience.signal?.throwIfAborted();
      if (!(fault instanceof PassingFault)) throw fault;
      const come = (await part.state())?.bytes ?? 0;
      inVain = come > furthest && !(fault instanceof DamagedBody) ? 1 : inVain + 1;
      furthest = Math.max(furthest, come);
      if (inVain >= patience.tries || tries >= MOST_TRIES || (fault.waitMs ?? 0) > LONGEST_WAIT_MS) {
        throw new InputError(`${url} could not be fetched in ${tries} tries: ${fault.message}`);
      }
      const waitMs = fault.waitMs ?? Math.min(patience.backoffMs * 2 ** (inVain - 1), LONGEST_BACKOFF_MS);
      progress.again(fault.message, waitMs);
      await wait(waitMs, undefined, { signal: patience.signal });
    }
  }
}

async function tryOnce(
  url: string,
  part: PartialFile,
  known: BodyDescription | undefined,
  patience: Patience,
  progress: DownloadProgress,
): Promise<Download> {
  const resumable = await resumableState(url, part);
  if (resumable !== undefined && resumable.bytes === resumable.body.total) return finish(part, progress);
  const headers = resumable ? resumeHeaders(resumable) : conditionalHeaders(known);
  const answer = await httpGet(url, { ...patience, headers });
  const { status } = answer;
  try {
    if (status === 304 || status === 404 || status === 410) {
      await part.discard();
      return { outcome: status === 304 ? 'unchanged' : 'missing' };
    }
    if (status === 416 && resumable) {
      await part.discard();
      throw new PassingFault('the archive has no more of the file that was begun');
    }
    if (status === 206 && resumable) await checkContinues(answer, part, resumable);
    else if (status === 200) await part.begin(describe(url, answer.headers));
    else throw refusal(url, answer);
    await receive(answer, part, progress);
  } finally {
    answer.drop();
  }
  return finish(part, progress);
}

async function receive(answer: Answer, part: PartialFile, progress: DownloadProgress): Promise<void> {
  const state = await part.state();
  let come = state?.bytes ?? 0;
  const total = state?.body.total ?? contentLength(answer.headers);
  progress.bytes(come, total);
  try {
    await part.append(answer.body, (bytes) => progress.bytes((come += bytes), total));
  } catch (error) {
    throw new InputError(`${part.path} can't be written (${(error as NodeJS.ErrnoException).code})`);
  }
  const fault = answer.fault();
  if (fault instanceof PassingFault) throw fault;
  if (fault) throw new PassingFault(`the connection was cut after ${come} of ${total ?? 'unknown'} bytes`);
}

async function finish(part: PartialFile, progress: DownloadProgress): Promise<Download> {
  const state = await part.state();
  if (state === undefined) throw new PassingFault('nothing came');
  const { bytes, body } = state;
  try {
    await checkBody(part.path, bytes, body);
    await part.finish(await unpackBody(part.path, part.plain, body));
  } catch (fault) {
    if (fault instanceof DamagedBody) await part.spoil();
    throw fault;
  }
  progress.bytes(bytes, bytes);
  return { outcome: 'whole', body };
}

/** The part of an earlier try, where it is of the same address and the archive can tell whether it still fits. */
async function resumableState(url: string, part: PartialFile) {
  const state = await part.state();
  return state?.body.url === url && (state.body.etag ?? state.body.lastModified) ? state : undefined;
}

function resumeHeaders({ bytes, body }: { bytes: number; body: BodyDescription }): Record<string, string> {
  return { Range: `bytes=${bytes}-`, 'If-Range': body.etag ?? body.lastModified ?? '' };
}

function conditionalHeaders(known: BodyDescription | undefined): Record<string, string> {
  return {
    ...(known?.etag && { 'If-None-Match': known.etag }),
    ...(known?.lastModified && { 'If-Modified-Since': known.lastModified }),
  };
}

function describe(url: string, headers: IncomingHttpHeaders): BodyDescription {
  const { etag, 'last-modified': lastModified, 'content-encoding': encoding } = headers;
  if (encoding !== undefined && !/^(identity|gzip|x-gzip)$/i.test(encoding)) {
    throw new InputError(`${url} was sent as "${encoding}", which was not asked for`);
  }
  return {
    url,
    etag: etag?.startsWith('"') ? etag : undefined,
    lastModified,
    total: contentLength(headers),
    encoding: encoding && /gzip/i.test(encoding) ? 'gzip' : undefined,
  };
}

function contentLength(headers: IncomingHttpHeaders): number | undefined {
  const length = headers['content-length'];
  return length === undefined ? undefined : Number(length);
}

/** A 206 must begin where the part ends and be of the same file; if not, the next try begins anew. */
async function checkContinues(
  { headers }: Answer,
  part: PartialFile,
  { bytes, body }: { bytes: number; body: BodyDescription },
): Promise<void> {
  const range = headers['content-range'] ?? '';
  const [, start, total] = /^bytes (\d+)-\d+\/(\d+|\*)$/.exec(range) ?? [];
  const sameLength = total === '*' || body.total === undefined || Number(total) === body.total;
  const sameTag = headers.etag === undefined || body.etag === undefined || headers.etag === body.etag;
  if (Number(start) === bytes && sameLength && sameTag) return;
  await part.spoil();
  throw new PassingFault(`the archive went on with "${range}" of another version instead of byte ${bytes}`);
}

function refusal(url: string, { status, statusLine, headers }: Answer): Error {
  if ([408, 425, 429, 500, 502, 503, 504].includes(status)) {
    return new PassingFault(`the archive answered ${statusLine}`, retryAfterMs(headers['retry-after']));
  }
  return new InputError(`${url} can't be fetched: the archive answered ${statusLine}`);
}
