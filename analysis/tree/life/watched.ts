import type { WatchedSpan } from '../../extremes/kaplan-meier.ts';

/** How far a planted tree came. */
export interface PlantedEnd {
  /** Position of its first winter. */
  readonly start: number;
  /** Winters it went into, the last of which may have killed it. */
  readonly winters: number;
  readonly killed: boolean;
}

/**
 * The stretches of its life in which a tree could be watched: runs of complete winters. Between them it is taken to live on,
 * but not counted at risk; one that dies in a winter that isn't complete leaves the count there, without a death.
 */
export function* watchedSpans(ends: Iterable<PlantedEnd>, complete: Uint8Array): Generator<WatchedSpan> {
  for (const { start, winters, killed } of ends) {
    const end = start + winters;
    for (let from = start; from < end; from++) {
      if (!complete[from]) continue;
      let to = from + 1;
      while (to < end && complete[to]) to++;
      yield { after: from - start, until: to - start, died: killed && to === end };
      from = to;
    }
  }
}
