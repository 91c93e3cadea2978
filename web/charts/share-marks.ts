/** Where the marks of a share stand on an axis from 0 to 1. */
export interface ShareMarks {
  /** The line of the range; `null` while there is none. */
  readonly range: readonly [from: number, to: number] | null;
  /** Where the mark stands; `null` with nothing to mark. */
  readonly point: number | null;
  /** Nothing or everything was seen, so only one end is known: drawn hollow, dashed towards the end that is not claimed. */
  readonly bound: 'at least' | 'at most' | null;
}

/** A share of 1 or 0 is marked at the end of its range that the record does tell, and is never drawn as certain. */
export function shareMarks(share: number | null, low: number | null, high: number | null): ShareMarks {
  if (share === null) return { range: null, point: null, bound: null };
  const known = low !== null && high !== null;
  if (share >= 1)
    return { range: low === null ? null : [low, 1], point: low === null ? 1 : low, bound: 'at least' };
  if (share <= 0)
    return { range: high === null ? null : [0, high], point: high === null ? 0 : high, bound: 'at most' };
  return { range: known ? [low, high] : null, point: share, bound: null };
}

/** Shares marked on the axis. */
export const SHARE_TICKS = [0, 0.25, 0.5, 0.75, 1] as const;
