import { lMomentsOfAscending } from '../extremes/l-moments.ts';
import type { WinterWeights } from './anomaly-weights.ts';
import type { StationNetwork } from './station-network.ts';

/** Members' winters for one duration, freed from their unequal spans: all arrays by member. */
export interface StationClimates {
  /** Mean over all winters of the network, °C. */
  readonly meanC: Float64Array;
  /** Logarithm of the L-scale over all winters (°C), as a standard deviation: `ln(sqrt(pi) * l2)`. */
  readonly logScale: Float64Array;
  /** Variance of the error of the two, from the winters that are missing or few. */
  readonly meanVariance: Float64Array;
  readonly logScaleVariance: Float64Array;
  /** `(value - mean) / scale` of each complete winter, n x winters by rows; NaN elsewhere. */
  readonly anomalies: Float64Array;
}

const ROUNDS = 3;
/** Smallest explained part of a winter's anomaly from which a neighbour's estimate tells a station's spread. */
const TELLING = 0.3;
/** Least spread of a station's winters, °C: a place that hardly varies still has an uncertain mean. */
const LEAST_SCALE_C = 0.3;
const SQRT_PI = Math.sqrt(Math.PI);

/**
 * Means and scales that stations would have over all winters of the network. A station that missed the great freezes would
 * look milder than it is; what its neighbours' anomalies say of its winters moves its mean (station-plus-winter effects,
 * the winter effect local) and its scale, in rounds, since the anomalies themselves depend on means and scales.
 * @param neighbours for each member the weights of the others, by winter
 */
export function stationClimates(
  network: StationNetwork,
  j: number,
  neighbours: readonly (readonly (WinterWeights | null)[])[],
): StationClimates {
  const n = network.members.length;
  const count = network.labels.length;
  const values = network.valuesC(j);
  const own = Array.from({ length: n }, (_, i) => values.subarray(i * count, (i + 1) * count));
  const meanC = Float64Array.from(own, (row) => mean(row.filter((x) => !Number.isNaN(x))));
  const ownScale = Float64Array.from(own, scaleOf);
  const scale = ownScale.slice();
  const anomalies = new Float64Array(n * count);
  const standardise = () => {
    for (let i = 0; i < n; i++)
      for (let w = 0; w < count; w++) anomalies[i * count + w] = (own[i][w] - meanC[i]) / scale[i];
  };
  standardise();
  const explained = neighbours.map((weights) =>
    Float64Array.from(weights, (entry) => (entry ? entry.explained : NaN)),
  );
  const told = new Float64Array(count);
  for (let round = 0; round < ROUNDS; round++) {
    const nextMean = meanC.slice();
    const nextScale = scale.slice();
    for (let i = 0; i < n; i++) {
      tellAnomalies(neighbours[i], anomalies, told);
      let [sum, seen] = [0, 0];
      for (let w = 0; w < count; w++) {
        if (Number.isNaN(own[i][w]) || Number.isNaN(told[w])) continue;
        sum += own[i][w] - scale[i] * told[w];
        seen++;
      }
      if (seen === 0) continue;
      nextMean[i] = sum / seen;
      nextScale[i] = ownScale[i] * scaleFactor(told, explained[i], own[i]);
    }
    meanC.set(nextMean);
    scale.set(nextScale);
    standardise();
  }
  const meanVariance = new Float64Array(n);
  const logScaleVariance = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const seen = own[i].reduce((sum, x) => sum + (Number.isNaN(x) ? 0 : 1), 0);
    const part = mean(explained[i].filter((x) => !Number.isNaN(x))) || 0;
    meanVariance[i] = (scale[i] ** 2 * (1 - part)) / seen;
    // ln of a sample's L-scale has variance 0.51/n for normal values (Hosking and Wallis 1997, table 2.1, asymptotic).
    logScaleVariance[i] = (0.51 * (1 - part ** 2)) / seen;
  }
  return { meanC, logScale: scale.map(Math.log), meanVariance, logScaleVariance, anomalies };
}

/** Anomalies of a member's winters as the others expect them, shrunk as far as they are unsure; NaN where none tells. */
function tellAnomalies(
  weights: readonly (WinterWeights | null)[],
  anomalies: Float64Array,
  told: Float64Array,
): void {
  const count = told.length;
  for (let w = 0; w < count; w++) {
    const entry = weights[w];
    if (!entry) {
      told[w] = NaN;
      continue;
    }
    let sum = 0;
    for (let a = 0; a < entry.members.length; a++)
      sum += entry.weights[a] * anomalies[entry.members[a] * count + w];
    told[w] = sum;
  }
}

/** How much more (or less) the neighbours' winters spread over all winters than over those the station saw. */
function scaleFactor(told: Float64Array, explained: Float64Array, own: Float64Array): number {
  const telling = new Float64Array(told.length);
  const seen = new Float64Array(told.length);
  let [tellingCount, seenCount, sum] = [0, 0, 0];
  for (let w = 0; w < told.length; w++) {
    if (Number.isNaN(told[w])) continue;
    const restored = told[w] / Math.sqrt(Math.max(explained[w], 0.1));
    if (explained[w] >= TELLING) telling[tellingCount++] = restored;
    if (Number.isNaN(own[w])) continue;
    seen[seenCount++] = restored;
    sum += explained[w];
  }
  if (tellingCount < 10 || seenCount < 10) return 1;
  const trust = (0.8 * sum) / seenCount;
  return (scaleOf(telling.subarray(0, tellingCount)) / scaleOf(seen.subarray(0, seenCount))) ** trust;
}

function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i];
  return values.length === 0 ? NaN : sum / values.length;
}

/** L-scale of the known values as a standard deviation. */
function scaleOf(values: Float64Array): number {
  const known = values.filter((x) => !Number.isNaN(x));
  if (known.length < 4) return 1;
  return Math.max(LEAST_SCALE_C, SQRT_PI * lMomentsOfAscending(known.sort()).scale);
}
