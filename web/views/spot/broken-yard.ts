import { yardOfJson } from '../../../analysis/spot/yard-file.ts';
import type { Yard } from '../../../analysis/spot/yard.ts';
import { keep, type Storage } from '../../state/kept.ts';

const KEY = 'citrus-winters-broken-yard';

/**
 * The address holds a yard only while it can be reckoned with. One that can't be, as it stands in the middle of an edit, is
 * kept in the browser, beside the address's last good one, so that a reload loses nothing. `null` forgets it.
 */
export function keepBroken(storage: Storage | null, goodText: string | null, broken: Yard | null): void {
  keep(storage, KEY, broken && JSON.stringify({ goodText, broken }));
}

/** The broken yard that goes with the address's good one, `null` where there is none. */
export function keptBroken(storage: Storage | null, goodText: string | null): Yard | null {
  try {
    const kept = JSON.parse(storage?.getItem(KEY) ?? 'null') as {
      goodText?: unknown;
      broken?: unknown;
    } | null;
    if (!kept || kept.goodText !== goodText) return null;
    return yardOfJson(kept.broken);
  } catch {
    return null;
  }
}
