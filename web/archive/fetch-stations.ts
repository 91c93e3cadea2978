import { RecordCheck } from '../../analysis/archive/check-record.ts';
import { recordPath } from '../../analysis/archive/layout.ts';
import { t } from '../../analysis/language/t.ts';
import { lineBlocks } from '../../analysis/read/line-blocks.ts';
import { openText } from '../../analysis/read/open-text.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { bring, type Fetching } from './bring.ts';
import { Unreached } from './faults.ts';
import { lookAtRecord } from './look.ts';
import { pause } from './pause.ts';

/** Largest record of a station that is taken, bytes; the longest of the archive have about 15 million. */
const MOST_RECORD_BYTES = 60_000_000;

/** How far a station's record has come. */
export type StationProgress =
  | { readonly phase: 'waiting' }
  | { readonly phase: 'coming'; readonly come: number; readonly total: number | null }
  /** Tried again in `waitMs`. */
  | { readonly phase: 'again'; readonly come: number; readonly reason: string; readonly waitMs: number }
  | { readonly phase: 'there'; readonly bytes: number; readonly tminDays: number }
  /** The archive has none. */
  | { readonly phase: 'missing' }
  /** Something else came. */
  | { readonly phase: 'refused'; readonly reason: string };

/** How many are fetched at once, and the pause after each: an open archive is not to be stormed. */
export interface Politeness {
  readonly atOnce: number;
  readonly pauseMs: number;
}
export const POLITENESS: Politeness = { atOnce: 2, pauseMs: 250 };

/**
 * Brings the records of stations into the store; results in the ids of those that are there, in their order. One that the
 * archive lacks, or that is something else, is left out and told of.
 * @throws InputError when the archive can't be reached any more, the signal's reason when stopped; what has come stays
 */
export async function fetchStations(
  ids: readonly string[],
  base: string,
  how: Fetching,
  { atOnce, pauseMs }: Politeness,
  heard: (id: string, progress: StationProgress) => void,
): Promise<readonly string[]> {
  const end = new AbortController();
  const signal = how.signal ? AbortSignal.any([how.signal, end.signal]) : end.signal;
  const there = new Set<string>();
  const waiting = [...ids];
  for (const id of ids) heard(id, { phase: 'waiting' });
  async function takeTurns(): Promise<void> {
    for (let id = waiting.shift(); id !== undefined; id = waiting.shift()) {
      const progress = await fetchOne(id, base, { ...how, signal }, heard);
      if (progress.phase === 'there') there.add(id);
      heard(id, progress);
      if (waiting.length > 0) await pause(pauseMs, signal);
    }
  }
  const turns = Array.from({ length: Math.min(atOnce, ids.length) }, () =>
    takeTurns().catch((error: unknown) => {
      end.abort(error);
      throw error;
    }),
  );
  // All have ended before this does: none goes on behind the reader's back.
  const [failed] = (await Promise.allSettled(turns)).filter(({ status }) => status === 'rejected');
  how.signal?.throwIfAborted();
  if (failed) throw end.signal.reason;
  return ids.filter((id) => there.has(id));
}

async function fetchOne(
  id: string,
  base: string,
  how: Fetching,
  heard: (id: string, progress: StationProgress) => void,
): Promise<StationProgress> {
  const url = recordUrl(id, base);
  let come = 0;
  try {
    const look = lookAtRecord(id, new URL(base).host);
    const outcome = await bring({ url, most: MOST_RECORD_BYTES, look }, how, {
      bytes: (bytes, total) => heard(id, { phase: 'coming', come: (come = bytes), total }),
      again: (reason, waitMs) => heard(id, { phase: 'again', come, reason, waitMs }),
    });
    if (outcome === 'missing') return { phase: 'missing' };
    const content = await how.store.content(url);
    const tminDays = await daysWithMinimum(content, id);
    if (tminDays === 0) throw new InputError(t`The record of ${id} has no minimum.`);
    return { phase: 'there', bytes: content.size, tminDays };
  } catch (error) {
    if (!(error instanceof InputError) || error instanceof Unreached) throw error;
    await how.store.discard(url);
    return { phase: 'refused', reason: error.message };
  }
}

/** Address of a station's record. */
export function recordUrl(id: string, base: string): string {
  return new URL(recordPath(id), base).href;
}

/** @throws InputError when a line is no value of the station */
async function daysWithMinimum(content: Blob, id: string): Promise<number> {
  const check = new RecordCheck(id, `${id}.csv`);
  for await (const { text } of lineBlocks(openText(content.stream(), `${id}.csv`))) {
    for (const line of text.split('\n')) check.take(line.replace(/\r$/, ''));
  }
  return check.tminDays;
}
