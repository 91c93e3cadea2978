import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { formatBytes, formatCount } from '../format/numbers.ts';
import { ask, type Answer, type Fetcher } from './ask.ts';
import { NoAnswer, PassingFault, Unreached } from './faults.ts';
import type { BodyDescription, PartState, PartStore } from './part-store.ts';
import { pause } from './pause.ts';
import { receive } from './receive.ts';
import { tooLarge, type Heard, type Wanted } from './wanted.ts';

/** How files are fetched and how patiently. */
export interface Fetching {
  readonly fetcher: Fetcher;
  readonly store: PartStore;
  /** Tries of a file in a row that bring nothing new before giving up. */
  readonly tries: number;
  /** Wait before the second try, ms; it doubles with each further one. */
  readonly backoffMs: number;
  /** Silence after which a connection counts as cut, ms. */
  readonly silenceMs: number;
  readonly signal?: AbortSignal;
  /** Origins that have answered in this visit; one that never did isn't asked for long. */
  readonly met: Set<string>;
  /** Origins that refused to be asked with If-Range: no page may send them one. */
  readonly noIfRange: Set<string>;
}

/** Waits between tries that a page may be asked for; beyond, it gives up and says so. */
const LONGEST_BACKOFF_MS = 30_000;
const LONGEST_WAIT_MS = 120_000;
const MOST_TRIES = 30;
/** Tries where no answer ever came: a server closed to pages won't open between two of them. */
const FIRST_TRIES = 2;
const PASSING_STATUS = [408, 425, 429, 500, 502, 503, 504];

/**
 * What came whole, in a fetch that was given up, is taken so long, ms; the archive adds days to its files daily. It can't be asked
 * whether it has a newer one: a page may send `If-None-Match` only where the server lets it.
 */
const WHOLE_FOR_MS = 7 * 86_400_000;

/** Fetching as the page does it: polite, and patient enough for a poor line. */
export const PATIENCE = { tries: 5, backoffMs: 500, silenceMs: 20_000 } as const;

/**
 * Brings a file into the store, whole or not at all; what an earlier try or visit brought whole is taken for a week, a part is
 * gone on with where the server still has the same file. `'missing'` where the archive has none.
 * @throws InputError in one sentence when it can't be had: {@link Unreached} when that goes for all of the archive; the
 * signal's reason when that ends it. What has come stays for a later time, unless it was wrong.
 */
export async function bring(wanted: Wanted, how: Fetching, heard: Heard): Promise<'whole' | 'missing'> {
  const { url } = wanted;
  const before = await how.store.state(url);
  let furthest = before?.whole ? 0 : (before?.bytes ?? 0);
  let inVain = 0;
  for (let tries = 1; ; tries++) {
    try {
      return await tryOnce(wanted, how, heard);
    } catch (fault) {
      how.signal?.throwIfAborted();
      if (!(fault instanceof PassingFault)) throw fault;
      const come = (await how.store.state(url))?.bytes ?? 0;
      inVain = come > furthest ? 1 : inVain + 1;
      // What came of a version that is gone is no measure for the next.
      furthest = fault instanceof OtherVersion ? come : Math.max(furthest, come);
      const tooLong = (fault.waitMs ?? 0) > LONGEST_WAIT_MS;
      const enough = fault instanceof NoAnswer && !how.met.has(new URL(url).origin) ? FIRST_TRIES : how.tries;
      if (inVain >= Math.min(enough, how.tries) || tries >= MOST_TRIES || tooLong)
        throw new Unreached(gaveUp(url, fault, tries));
      const waitMs = fault.waitMs ?? Math.min(how.backoffMs * 2 ** (inVain - 1), LONGEST_BACKOFF_MS);
      heard.again(fault instanceof NoAnswer ? t`no answer came` : fault.message, waitMs);
      await pause(waitMs, how.signal);
    }
  }
}

/** The sentence for a file that could not be had. */
function gaveUp(url: string, fault: PassingFault, tries: number): string {
  const { host, origin } = new URL(url);
  if (fault instanceof NoAnswer) {
    return t`No answer came from ${host}: either the network or the server is down, or the server doesn’t let pages of other sites read it (it sends no CORS header), which a browser doesn’t tell apart. If the network is fine, use the address of a mirror or proxy that allows ${ownOrigin(origin)}.`;
  }
  return t`${url} could not be fetched in ${formatCount(tries)} tries: ${fault.message}. What has come is kept; fetch again to go on.`;
}

/** Whom a mirror must allow: this page's origin where there is one. */
function ownOrigin(otherwise: string): string {
  return globalThis.location?.origin ?? otherwise;
}

async function tryOnce(wanted: Wanted, how: Fetching, heard: Heard): Promise<'whole' | 'missing'> {
  const { url } = wanted;
  const part = await how.store.state(url);
  if (part?.whole && Date.now() - part.body.sentAt < WHOLE_FOR_MS) {
    heard.bytes(part.bytes, part.bytes);
    return 'whole';
  }
  const begun = part && !part.whole && resumable(part) ? part : null;
  if (begun && begun.bytes === begun.body.total) return finish(wanted, how, heard);
  const answer = await askFor(url, begun, how);
  how.met.add(new URL(url).origin);
  try {
    if (answer.status === 404 || answer.status === 410) {
      await how.store.discard(url);
      return 'missing';
    }
    if (answer.status === 206 && begun) checkContinues(answer, begun);
    else if (answer.status !== 200) throw await refusal(wanted, how, answer);
    const goesOn = answer.status === 206;
    const body = goesOn ? begun!.body : describe(url, answer.headers);
    if (body.total !== null && body.total > wanted.most) throw tooLarge(wanted, body.total);
    await receive(answer, { wanted, body, come: goesOn ? begun!.bytes : 0, store: how.store, heard });
  } catch (fault) {
    if (fault instanceof OtherVersion) await how.store.discard(url);
    throw fault;
  } finally {
    answer.drop();
  }
  return finish(wanted, how, heard);
}

/** Asks for the file or the rest of it; with If-Range where pages may send one, else what comes is compared by hand. */
async function askFor(url: string, begun: PartState | null, how: Fetching): Promise<Answer> {
  const { origin } = new URL(url);
  const range: Record<string, string> = begun ? { Range: `bytes=${begun.bytes}-` } : {};
  if (begun?.body.etag && !how.noIfRange.has(origin)) {
    try {
      return await ask(url, { ...how, headers: { ...range, 'If-Range': begun.body.etag } });
    } catch (fault) {
      if (!(fault instanceof NoAnswer)) throw fault;
      how.noIfRange.add(origin);
    }
  }
  return ask(url, { ...how, headers: range });
}

/** Whether it can be told later that the server still has the same file. */
function resumable({ body, bytes }: PartState): boolean {
  return bytes > 0 && (body.etag !== null || body.lastModified !== null);
}

function describe(url: string, headers: Headers): BodyDescription {
  const etag = headers.get('etag');
  return {
    url,
    etag: etag?.startsWith('"') ? etag : null,
    lastModified: headers.get('last-modified'),
    total: lengthOf(headers),
    sentAt: Date.now(),
  };
}

function lengthOf(headers: Headers): number | null {
  const length = headers.get('content-length');
  return length !== null && /^\d+$/.test(length) ? Number(length) : null;
}

/** What comes is the rest of another version of the file. */
class OtherVersion extends PassingFault {}

/**
 * A 206 must be of the same file and begin where the part ends. A page may not see Content-Range and ETag, so the length of
 * what is left, against the whole, must do: where neither can be seen the file is begun anew.
 */
function checkContinues({ headers }: Answer, { body, bytes }: PartState): void {
  const tags = [
    [headers.get('etag'), body.etag],
    [headers.get('last-modified'), body.lastModified],
  ] as const;
  const known = tags.filter(([now, before]) => now !== null && before !== null);
  const same = known.length > 0 && known.every(([now, before]) => now === before);
  const [, start, total] = /^bytes (\d+)-\d+\/(\d+|\*)$/.exec(headers.get('content-range') ?? '') ?? [];
  const rest = lengthOf(headers);
  const fits =
    start !== undefined
      ? Number(start) === bytes && (total === '*' || body.total === null || Number(total) === body.total)
      : rest !== null && body.total !== null && rest === body.total - bytes;
  if (!same || !fits) throw new OtherVersion(t`the archive has another version of the file now`);
}

async function refusal({ url }: Wanted, how: Fetching, { status, headers }: Answer): Promise<Error> {
  if (status === 416) {
    await how.store.discard(url);
    return new PassingFault(t`the archive has no more of the file that was begun`);
  }
  const said = t`the archive answered ${status}`;
  if (PASSING_STATUS.includes(status)) {
    const seconds = headers.get('retry-after');
    return new PassingFault(said, seconds !== null && /^\d+$/.test(seconds) ? Number(seconds) * 1000 : null);
  }
  return new InputError(t`${url} can’t be fetched: ${said}.`);
}

/** All has come: its length is right, or at least its last line whole. */
async function finish({ url }: Wanted, { store }: Fetching, heard: Heard): Promise<'whole'> {
  const part = await store.state(url);
  if (!part || part.bytes === 0) throw new PassingFault(t`nothing came`);
  const { total } = part.body;
  // More than was announced: it came compressed, and the end of the compressed stream is its own check.
  if (total !== null && part.bytes < total) {
    throw new PassingFault(t`${formatBytes(part.bytes)} of ${formatBytes(total)} came`);
  }
  if (total === null) {
    const last = await (await store.content(url)).slice(-1).text();
    if (last !== '\n') throw new PassingFault(t`it ends in the middle of a line`);
  }
  await store.finish(url);
  heard.bytes(part.bytes, part.bytes);
  return 'whole';
}
