import { KEPT_NIGHT_MAX_C, MISSING_HUNDREDTHS, NIGHT_KINDS } from '../records/nights.ts';
import type { WinterWeights } from './anomaly-weights.ts';
import type { StationNetwork } from './station-network.ts';

/**
 * Spreads a place's winter levels over the kinds of night. At a station the kind with the winter's coldest night stands at
 * the level itself and the others so much above it; these gaps are averaged by the weights, and the smallest put to 0, so
 * that the coldest of the kinds is the level again.
 * @param j index into SUSTAINED_HOURS
 * @param levelsC by winter, NaN where no station tells
 * @returns hundredths of °C by kind and winter, missing where half of the stations or more had no such night
 */
export function levelsByKind(
  network: StationNetwork,
  j: number,
  levelsC: Float64Array,
  weights: readonly (WinterWeights | null)[],
): Int16Array[] {
  const values = network.valuesC(j);
  const count = network.labels.length;
  const kinds = NIGHT_KINDS.map(() => new Int16Array(count).fill(MISSING_HUNDREDTHS));
  const gaps = new Float64Array(kinds.length);
  for (let w = 0; w < count; w++) {
    const entry = weights[w];
    if (!entry) continue;
    for (let kind = 0; kind < kinds.length; kind++) {
      let sum = 0;
      let known = 0;
      let all = 0;
      for (let a = 0; a < entry.members.length; a++) {
        const weight = Math.max(0, entry.weights[a]);
        const member = entry.members[a];
        all += weight;
        const level = network.members[member].winters.coldest[kind][j][network.row(member, w)];
        if (level === MISSING_HUNDREDTHS) continue;
        known += weight;
        sum += weight * (level / 100 - values[member * count + w]);
      }
      gaps[kind] = known > 0 && known >= all / 2 ? sum / known : NaN;
    }
    const least = gaps.reduce((low, gap) => (gap < low ? gap : low), Infinity);
    for (let kind = 0; kind < kinds.length; kind++) {
      const level = levelsC[w] + gaps[kind] - least;
      if (!Number.isNaN(level)) kinds[kind][w] = Math.round(level * 100);
    }
  }
  return kinds;
}

/** Takes out the kinds of night of winters in which no such night would have been kept: its minimum is above 10 °C. */
export function dropWarmKinds(coldest: readonly (readonly Int16Array[])[]): void {
  for (const byHours of coldest) {
    byHours[0].forEach((minimum, w) => {
      if (minimum <= KEPT_NIGHT_MAX_C * 100) return;
      for (const levels of byHours) levels[w] = MISSING_HUNDREDTHS;
    });
  }
}
