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
  const count = network.labels.length;
  const gapsOfKind = NIGHT_KINDS.map((_, kind) => network.gapsC(j, kind));
  const kinds = NIGHT_KINDS.map(() => new Int16Array(count).fill(MISSING_HUNDREDTHS));
  const gaps = new Float64Array(kinds.length);
  for (let w = 0; w < count; w++) {
    const entry = weights[w];
    if (!entry) continue;
    let least = Infinity;
    for (let kind = 0; kind < kinds.length; kind++) {
      const gap = meanGap(gapsOfKind[kind], entry, count, w);
      gaps[kind] = gap;
      if (gap < least) least = gap;
    }
    for (let kind = 0; kind < kinds.length; kind++) {
      const level = levelsC[w] + gaps[kind] - least;
      if (!Number.isNaN(level)) kinds[kind][w] = Math.round(level * 100);
    }
  }
  return kinds;
}

/** Mean of the stations' gaps by their weights; NaN where fewer than half of the weight knows such a night. */
function meanGap(gapsC: Float64Array, { members, weights }: WinterWeights, count: number, w: number): number {
  let [sum, known, all] = [0, 0, 0];
  for (let a = 0; a < members.length; a++) {
    const weight = weights[a];
    if (weight <= 0) continue;
    all += weight;
    const gap = gapsC[members[a] * count + w];
    if (Number.isNaN(gap)) continue;
    known += weight;
    sum += weight * gap;
  }
  return known > 0 && known >= all / 2 ? sum / known : NaN;
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
