import { KEPT_NIGHT_MAX_C, MISSING_HUNDREDTHS, NIGHT_KINDS } from '../records/nights.ts';
import type { WinterWeights } from './anomaly-weights.ts';
import type { StationNetwork } from './station-network.ts';

const UNCLEAR = NIGHT_KINDS.indexOf('unclear');
/**
 * A winter without a cold night counts as 10 °C at a station, which may be much too cold; so a level near that, told by such
 * stations alone, is none. This far below it is one.
 */
const SURELY_COLD_C = KEPT_NIGHT_MAX_C - 6;

/**
 * Spreads a place's winter levels over the kinds of night. At a station the kind with the winter's coldest night stands at
 * the level itself and the others so much above it; these gaps are averaged by the weights. The kind with the smallest is
 * put to the level; the others keep their gaps, since taking the smallest from all would bring the kinds nearer to each
 * other than they are at any station. Within a kind too, longer cold is never colder than shorter cold: the level goes to a
 * kind that can take it.
 * @param j index into SUSTAINED_HOURS
 * @param levelsC by winter, NaN where no station tells
 * @param shorter what this gave for the duration before; `null` for the first
 * @returns hundredths of °C by kind and winter, missing where half of the stations or more had no such night; where they had
 *   none of any kind (a mountain among mild shores) the level's kind is unclear
 */
export function levelsByKind(
  network: StationNetwork,
  j: number,
  levelsC: Float64Array,
  weights: readonly (WinterWeights | null)[],
  shorter: readonly Int16Array[] | null,
): Int16Array[] {
  const count = network.labels.length;
  const gapsOfKind = NIGHT_KINDS.map((_, kind) => network.gapsC(j, kind));
  // One buffer for all kinds: a map asks for hundreds of thousands of these.
  const levels = new Int16Array(NIGHT_KINDS.length * count).fill(MISSING_HUNDREDTHS);
  const kinds = NIGHT_KINDS.map((_, kind) => levels.subarray(kind * count, (kind + 1) * count));
  const gaps = new Float64Array(kinds.length);
  for (let w = 0; w < count; w++) {
    const entry = weights[w];
    if (!entry) continue;
    for (let kind = 0; kind < kinds.length; kind++) gaps[kind] = meanGap(gapsOfKind[kind], entry, count, w);
    let first = kindAtLevel(gaps, Math.round(levelsC[w] * 100), shorter, w);
    if (first < 0 && levelsC[w] <= SURELY_COLD_C) first = UNCLEAR;
    for (let kind = 0; kind < kinds.length; kind++) {
      const level = levelsC[w] + (kind === first ? 0 : gaps[kind]);
      if (Number.isNaN(level)) continue;
      // A missing level is below all others.
      kinds[kind][w] = Math.max(Math.round(level * 100), shorter ? shorter[kind][w] : MISSING_HUNDREDTHS);
    }
  }
  return kinds;
}

/** The kind with the smallest gap, of those that for shorter cold stand no warmer than the level; -1 when none is known. */
function kindAtLevel(
  gaps: Float64Array,
  level: number,
  shorter: readonly Int16Array[] | null,
  w: number,
): number {
  let first = -1;
  let fits = false;
  for (let kind = 0; kind < gaps.length; kind++) {
    if (Number.isNaN(gaps[kind])) continue;
    const own = shorter === null || shorter[kind][w] <= level;
    if (first >= 0 && (own === fits ? gaps[kind] >= gaps[first] : fits)) continue;
    first = kind;
    fits = own;
  }
  return first;
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
