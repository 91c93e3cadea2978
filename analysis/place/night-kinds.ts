import { NIGHT_KINDS } from '../records/nights.ts';
import type { SourceNights } from './winter-nights.ts';

/**
 * Kind of each night at a point by the stations' votes, among the kinds that the winter is known to have there. Each of
 * those gets a night, if there are as many: the one with most votes for it, of equals the coldest.
 * @param rows by station, row of each night or -1
 * @param possible by index of NIGHT_KINDS
 * @param levels of the nights, by which equals are told apart
 */
export function kindsByVote(
  sources: readonly SourceNights[],
  rows: readonly Int32Array[],
  possible: readonly boolean[],
  levels: ArrayLike<number>,
): Uint8Array {
  const count = rows[0].length;
  const votes = NIGHT_KINDS.map(() => new Float64Array(count));
  sources.forEach(({ nights, part }, s) =>
    rows[s].forEach((row, t) => {
      if (row >= 0) votes[nights.kind[row]][t] += part;
    }),
  );
  const allowed = NIGHT_KINDS.map((_, kind) => kind).filter((kind) => possible[kind]);
  const kinds = Uint8Array.from({ length: count }, (_, t) =>
    allowed.reduce((best, kind) => (votes[kind][t] > votes[best][t] ? kind : best), allowed[0]),
  );
  const sizes = NIGHT_KINDS.map((_, kind) => kinds.reduce((sum, own) => sum + (own === kind ? 1 : 0), 0));
  for (const kind of allowed) {
    if (sizes[kind] > 0) continue;
    let chosen = -1;
    for (let t = 0; t < count; t++) {
      if (sizes[kinds[t]] < 2) continue;
      const more = chosen < 0 ? 1 : votes[kind][t] - votes[kind][chosen] || levels[chosen] - levels[t];
      if (more > 0) chosen = t;
    }
    if (chosen < 0) continue;
    sizes[kinds[chosen]]--;
    sizes[kind]++;
    kinds[chosen] = kind;
  }
  return kinds;
}
