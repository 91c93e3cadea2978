import { normalQuantile } from '../../math/normal.ts';

/** Beyond so many values the normal approximation is exact to well under one rank. */
const EXACT_MAX = 100;

/**
 * Quantile of Wilcoxon's signed rank statistic of `n` values without ties: the smallest `q` with chance of at most `q` at
 * least `p`. Exact by counting up to 100 values, normal beyond.
 */
export function signedRankQuantile(p: number, n: number): number {
  const most = (n * (n + 1)) / 2;
  if (n > EXACT_MAX) {
    const spread = Math.sqrt((n * (n + 1) * (2 * n + 1)) / 24);
    return Math.min(most, Math.max(0, Math.ceil(most / 2 + normalQuantile(p) * spread - 0.5)));
  }
  // chance[s]: that a random subset of the ranks 1 to k adds up to s.
  const chance = new Float64Array(most + 1);
  chance[0] = 1;
  for (let rank = 1; rank <= n; rank++) {
    const reach = (rank * (rank + 1)) / 2;
    for (let sum = reach; sum >= 0; sum--) {
      chance[sum] = 0.5 * (chance[sum]! + (sum >= rank ? chance[sum - rank]! : 0));
    }
  }
  let below = 0;
  for (let sum = 0; sum <= most; sum++) {
    below += chance[sum]!;
    if (below >= p - 1e-12) return sum;
  }
  return most;
}
