import { MISSING_HUNDREDTHS, NIGHT_KINDS } from '../records/nights.ts';
import type { SourceNights } from './winter-nights.ts';

/** Hundredths of °C by which a kind's coldest night may miss its level before another night is looked for. */
const NEAR = 25;
/** A night that no station calls by a kind is as good for it as one all do that is so much farther from its level. Hundredths of °C. */
const VOTES_WORTH = 300;

/**
 * Kind of each night at a point: the stations' votes among the kinds that the winter has there. Stations name the same
 * night differently, so that votes alone would leave the rarer kinds without their coldest night; where the winter's level of
 * a kind says that there was one, the night next to that level takes its name. Every kind of the winter gets a night, if
 * there are as many.
 * @param rows by station, row of each night or -1
 * @param levels the winter's coldest `S_0` by index of NIGHT_KINDS, hundredths of °C; MISSING_HUNDREDTHS for a kind it lacks
 * @param minima `S_0` of the nights, of which the coldest stands at the lowest of the levels
 */
export function kindsOfNights(
  sources: readonly SourceNights[],
  rows: readonly Int32Array[],
  levels: readonly number[],
  minima: Float64Array,
): Uint8Array {
  const votes = votesByKind(sources, rows);
  const allowed = NIGHT_KINDS.map((_, kind) => kind)
    .filter((kind) => levels[kind] !== MISSING_HUNDREDTHS)
    .sort((a, b) => levels[a] - levels[b]);
  const [first, ...others] = allowed;
  const coldest = minima.indexOf(Math.min(...minima));
  const kinds = Uint8Array.from(minima, (minimum, t) => {
    if (t === coldest) return first;
    const possible = allowed.filter((kind) => minimum >= levels[kind] - NEAR);
    return possible.reduce((best, kind) => (votes[kind][t] > votes[best][t] ? kind : best), first);
  });
  const taken = new Set([coldest]);
  for (const kind of others) {
    const night = coldestOfKind(kind, levels[kind], { kinds, votes: votes[kind], minima, taken });
    if (night === null) continue;
    kinds[night] = kind;
    taken.add(night);
  }
  return kinds;
}

function votesByKind(sources: readonly SourceNights[], rows: readonly Int32Array[]): Float64Array[] {
  const votes = NIGHT_KINDS.map(() => new Float64Array(rows[0].length));
  sources.forEach(({ nights, part }, s) =>
    rows[s].forEach((row, t) => {
      if (row >= 0) votes[nights.kind[row]][t] += part;
    }),
  );
  return votes;
}

interface Naming {
  readonly kinds: Uint8Array;
  readonly votes: Float64Array;
  readonly minima: Float64Array;
  /** Nights that are the coldest of another kind. */
  readonly taken: ReadonlySet<number>;
}

/** The night that is to be the coldest of a kind: its coldest by votes when near the level, else the fittest; `null` when none is free. */
function coldestOfKind(kind: number, level: number, { kinds, votes, minima, taken }: Naming): number | null {
  let chosen: number | null = null;
  let lowest = Infinity;
  kinds.forEach((own, t) => {
    if (own !== kind || minima[t] >= lowest || taken.has(t)) return;
    lowest = minima[t];
    chosen = t;
  });
  if (lowest - level <= NEAR) return chosen;
  let least = Infinity;
  minima.forEach((minimum, t) => {
    if (taken.has(t)) return;
    const cost = Math.abs(minimum - level) + VOTES_WORTH * (1 - votes[t]);
    if (cost >= least) return;
    least = cost;
    chosen = t;
  });
  return chosen;
}
