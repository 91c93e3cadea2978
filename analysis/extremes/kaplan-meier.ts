/** A stretch of ages through which one subject was watched; it may have others before and after. */
export interface WatchedSpan {
  /** Watched from just after this age: 0 from the start, more for late entry or for coming back. */
  readonly after: number;
  /** Last age watched, a whole number above `after`. */
  readonly until: number;
  /** Died at age `until`. */
  readonly died: boolean;
}

/** At each age from 1 (entry 0) on: how many were watched and how many of those died. */
export interface RiskSets {
  readonly atRisk: Int32Array;
  readonly deaths: Int32Array;
}

/** Counts ages 1 to `oldest`; what was watched beyond is left out. */
export function riskSets(spans: Iterable<WatchedSpan>, oldest: number): RiskSets {
  const atRisk = new Int32Array(oldest);
  const deaths = new Int32Array(oldest);
  for (const { after, until, died } of spans) {
    if (after >= oldest) continue;
    atRisk[after]!++;
    if (until < oldest) atRisk[until]!--;
    if (died && until <= oldest) deaths[until - 1]!++;
  }
  for (let a = 1; a < oldest; a++) atRisk[a]! += atRisk[a - 1]!;
  return { atRisk, deaths };
}

/**
 * Share living after each age: the product of the shares that got through each age so far (Kaplan and Meier 1958). Whoever
 * isn't watched at an age says nothing about it, so entry may be late and watching may pause (left truncation). An age at
 * which nobody was watched leaves the share as it was: see `atRisk` for where that is so.
 */
export function productLimit({ atRisk, deaths }: RiskSets): Float64Array {
  const share = new Float64Array(atRisk.length);
  let living = 1;
  for (let a = 0; a < share.length; a++) {
    if (atRisk[a]! > 0) living *= 1 - deaths[a]! / atRisk[a]!;
    share[a] = living;
  }
  return share;
}
