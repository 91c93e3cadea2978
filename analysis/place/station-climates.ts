import { sampleLMoments } from '../extremes/l-moments.ts';
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
  for (let round = 0; round < ROUNDS; round++) {
    const nextMean = meanC.slice();
    const nextScale = scale.slice();
    for (let i = 0; i < n; i++) {
      const told = toldAnomalies(neighbours[i], anomalies, count);
      const seen = told.filter(({ w }) => !Number.isNaN(own[i][w]));
      if (seen.length === 0) continue;
      nextMean[i] = mean(seen.map(({ w, estimate }) => own[i][w] - scale[i] * estimate));
      nextScale[i] = ownScale[i] * scaleFactor(told, seen);
    }
    meanC.set(nextMean);
    scale.set(nextScale);
    standardise();
  }
  const meanVariance = new Float64Array(n);
  const logScaleVariance = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const seen = own[i].reduce((sum, x) => sum + (Number.isNaN(x) ? 0 : 1), 0);
    const explained = mean(toldAnomalies(neighbours[i], anomalies, count).map((part) => part.explained));
    meanVariance[i] = (scale[i] ** 2 * (1 - (explained || 0))) / seen;
    // ln of a sample's L-scale has variance 0.51/n for normal values (Hosking and Wallis 1997, table 2.1, asymptotic).
    logScaleVariance[i] = (0.51 * (1 - (explained || 0) ** 2)) / seen;
  }
  return { meanC, logScale: scale.map(Math.log), meanVariance, logScaleVariance, anomalies };
}

interface Told {
  readonly w: number;
  /** Expected anomaly, shrunk as far as the neighbours are unsure. */
  readonly estimate: number;
  readonly explained: number;
}

function toldAnomalies(
  weights: readonly (WinterWeights | null)[],
  anomalies: Float64Array,
  count: number,
): Told[] {
  return weights.flatMap((entry, w) => {
    if (!entry) return [];
    let estimate = 0;
    entry.members.forEach((member, a) => {
      estimate += entry.weights[a] * anomalies[member * count + w];
    });
    return [{ w, estimate, explained: entry.explained }];
  });
}

/** How much more (or less) the neighbours' winters spread over all winters than over those the station saw. */
function scaleFactor(told: readonly Told[], seen: readonly Told[]): number {
  const telling = told.filter(({ explained }) => explained >= TELLING);
  if (telling.length < 10 || seen.length < 10) return 1;
  const restored = (parts: readonly Told[]) =>
    scaleOf(parts.map(({ estimate, explained }) => estimate / Math.sqrt(Math.max(explained, 0.1))));
  const trust = 0.8 * mean(seen.map(({ explained }) => explained));
  return (restored(telling) / restored(seen)) ** trust;
}

function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i];
  return values.length === 0 ? NaN : sum / values.length;
}

/** L-scale of the known values as a standard deviation. */
function scaleOf(values: ArrayLike<number>): number {
  const known = Float64Array.from(values).filter((x) => !Number.isNaN(x));
  if (known.length < 4) return 1;
  return Math.max(LEAST_SCALE_C, SQRT_PI * sampleLMoments(known).scale);
}
