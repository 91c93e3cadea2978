import { INVENTORY, STATION_LIST } from '../../analysis/archive/layout.ts';
import { IndexBuilder, type StationIndex } from '../../analysis/archive/station-index.ts';
import { t } from '../../analysis/language/t.ts';
import { lineBlocks } from '../../analysis/read/line-blocks.ts';
import { openText } from '../../analysis/read/open-text.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { bring, type Fetching } from './bring.ts';
import { Unreached } from './faults.ts';
import { lookAtList } from './look.ts';

/** Largest list that is taken, bytes; the archive's inventory has about 35 million. */
const MOST_LIST_BYTES = 150_000_000;

/** The inventory first: it tells which stations of the other list are worth keeping. */
const LISTS = [INVENTORY, STATION_LIST] as const;

/** Hears of each list by its name. */
export interface IndexHeard {
  bytes(list: string, come: number, total: number | null): void;
  again(list: string, reason: string, waitMs: number): void;
}

/**
 * Reads the archive's inventory and station list and cuts them down to the stations with 20 or more years of minima. The lists
 * are let go once the index stands.
 * @throws InputError in one sentence: not reached, no such archive, something else in its place
 */
export async function readStationIndex(
  base: string,
  how: Fetching,
  heard: IndexHeard,
): Promise<StationIndex> {
  const letGo = async (): Promise<void> => {
    for (const name of LISTS) await how.store.discard(new URL(name, base).href);
  };
  try {
    const index = await readLists(base, how, heard);
    await letGo();
    return index;
  } catch (error) {
    // What is of no use isn't gone on with; what merely broke off is.
    if (error instanceof InputError && !(error instanceof Unreached)) await letGo();
    throw error;
  }
}

async function readLists(base: string, how: Fetching, heard: IndexHeard): Promise<StationIndex> {
  const builder = new IndexBuilder();
  for (const name of LISTS) {
    const url = new URL(name, base).href;
    const wanted = { url, most: MOST_LIST_BYTES, look: lookAtList(name, new URL(base).host) };
    const outcome = await bring(wanted, how, {
      bytes: (come, total) => heard.bytes(name, come, total),
      again: (reason, waitMs) => heard.again(name, reason, waitMs),
    });
    if (outcome === 'missing') throw new InputError(t`${base} is no GHCN-Daily archive: it has no ${name}.`);
    const text = openText((await how.store.content(url)).stream(), name);
    for await (const block of lineBlocks(text)) {
      how.signal?.throwIfAborted();
      if (name === INVENTORY) builder.inventory(block);
      else builder.stations(block);
    }
  }
  const index = builder.finish();
  if (index.count > 0) return index;
  throw new InputError(t`The lists of ${base} hold no station with 20 or more years of minima.`);
}
