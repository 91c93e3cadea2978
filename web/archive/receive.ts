import { t } from '../../analysis/language/t.ts';
import type { Answer } from './ask.ts';
import { PassingFault } from './faults.ts';
import type { BodyDescription, PartStore } from './part-store.ts';
import { tooLarge, type Heard, type Wanted } from './wanted.ts';

/** What comes is kept in pieces of this size, or after this time on a slow line: so much is lost when the page is closed. */
const KEEP_BYTES = 256_000;
const KEEP_MS = 2000;
/** Bytes at the beginning of a body that are looked at before anything is kept. */
const LOOK_BYTES = 200;

/** What is coming and where it goes. */
export interface Receiving {
  readonly wanted: Wanted;
  readonly body: BodyDescription;
  /** Bytes that were there before: 0 begins the part anew. */
  readonly come: number;
  readonly store: PartStore;
  readonly heard: Heard;
}

/**
 * Reads an answer to its end into the store. When it breaks, or is stopped, what has come by then is kept.
 * @throws PassingFault where another page changes the part meanwhile
 */
export async function receive(
  answer: Answer,
  { wanted, body, come, store, heard }: Receiving,
): Promise<void> {
  let begun = come > 0;
  let bytes = come;
  let kept = come;
  let pieces: Uint8Array<ArrayBuffer>[] = [];
  let keptAt = performance.now();
  const waiting = (): number => pieces.reduce((sum, { length }) => sum + length, 0);
  const keep = async (): Promise<void> => {
    if (pieces.length === 0) return;
    if (!begun) {
      wanted.look?.(new Uint8Array(await new Blob(pieces).slice(0, LOOK_BYTES).arrayBuffer()));
      await store.begin(body);
      begun = true;
    }
    const blob = new Blob(pieces);
    pieces = [];
    keptAt = performance.now();
    if (!(await store.append(body.url, blob, kept)))
      throw new PassingFault(t`another page of this site fetches the same file`);
    kept += blob.size;
  };
  heard.bytes(bytes, body.total);
  try {
    for await (const piece of answer.pieces()) {
      pieces.push(piece);
      bytes += piece.length;
      if (bytes > wanted.most) {
        pieces = [];
        await store.discard(body.url);
        throw tooLarge(wanted, bytes);
      }
      heard.bytes(bytes, body.total === null ? null : Math.max(bytes, body.total));
      const first = !begun && waiting() >= LOOK_BYTES;
      if (first || waiting() >= KEEP_BYTES || performance.now() - keptAt >= KEEP_MS) await keep();
    }
  } catch (fault) {
    // Too short to be looked at: nothing is lost.
    if (begun || waiting() >= LOOK_BYTES) await keep();
    throw fault;
  }
  await keep();
}
