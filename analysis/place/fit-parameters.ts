import { MEAN_TREND, SCALE_TREND, expectedTrend, trendVariances, type TrendPrior } from './climate-trend.ts';
import { fitCovariance } from './fit-covariance.ts';
import { minimiseNelderMead } from '../math/nelder-mead.ts';
import { PlaceModel } from './place-model.ts';
import { metErrors } from './promised-errors.ts';
import { USUAL_PARAMETERS, type AnomalyCorrelation, type PlaceParameters } from './place-parameters.ts';
import type { Member } from './station-network.ts';
import type { Covariance } from './covariance.ts';

/** Fewest stations by which the land's variation is fitted. */
export const FEWEST_STATIONS_TO_FIT = 8;
/** More stations than this are thinned: the fit costs the cube of their number. */
const MOST_STATIONS = 120;
/** Duration whose fields the fit is made on: four hours, what most thresholds ask for. Index into SUSTAINED_HOURS. */
const FITTED_DURATION = 4;
/** Fewest winters that two stations share for their correlation to count. */
const FEWEST_SHARED_WINTERS = 12;
const ROUNDS = 2;
/** Two sites of one neighbourhood differ by at least so much of the usual nugget, whatever a smooth network says. */
const LEAST_NUGGET_SHARE = 0.2;
/** Stations nearer than this show how two sites of one neighbourhood differ, and so many pairs of them are needed for it. */
const NEIGHBOURHOOD_KM = 60;
const FEWEST_NEAR_PAIRS = 8;
/** Where there are fewer, the spread over a continent must not pass for that of a neighbourhood: at most this many usual nuggets. */
const MOST_NUGGET_SHARE = 2;

/**
 * How winters vary over the land of these stations: covariances by restricted likelihood, correlation of anomalies by least
 * squares over pairs of stations. With fewer than 8 stations the usual figures.
 */
export function fitPlaceParameters(members: readonly Member[]): PlaceParameters {
  if (members.length < FEWEST_STATIONS_TO_FIT) return USUAL_PARAMETERS;
  const chosen = thinned(members);
  let parameters = USUAL_PARAMETERS;
  for (let round = 0; round < ROUNDS; round++) {
    const model = new PlaceModel(chosen, parameters);
    const { meanC, meanVariance, logScale, logScaleVariance, anomalies } = model.climates(FITTED_DURATION);
    parameters = {
      mean: fitField(model, meanC, meanVariance, MEAN_TREND, USUAL_PARAMETERS.mean),
      logScale: fitField(model, logScale, logScaleVariance, SCALE_TREND, USUAL_PARAMETERS.logScale),
      anomaly: fitAnomalyCorrelation(model, anomalies),
      fitted: true,
    };
  }
  return { ...parameters, errors: metErrors(new PlaceModel(chosen, parameters)) };
}

/** Every k-th station along the order of their ids, which has nothing to do with where they are cold. */
function thinned(members: readonly Member[]): readonly Member[] {
  const step = Math.ceil(members.length / MOST_STATIONS);
  return [...members].sort((a, b) => (a.id < b.id ? -1 : 1)).filter((_, i) => i % step === 0);
}

function fitField(
  { network, rows }: PlaceModel,
  values: Float64Array,
  errorVariance: Float64Array,
  priors: readonly TrendPrior[],
  usual: Covariance,
): Covariance {
  const { covariance } = fitCovariance(
    {
      distancesKm: network.separationsKm,
      trend: Float64Array.from(rows.flatMap((row) => [...row])),
      values: values.map((value, i) => value - expectedTrend(rows[i], priors)),
      errorVariance,
      coefficientVariance: trendVariances(priors),
    },
    {
      expectedRange: { km: usual.rangeKm, logSpread: 1 },
      expectedNugget: { share: usual.nugget / (usual.nugget + usual.sill), spread: 0.1 },
    },
  );
  const most = nearPairs(network) < FEWEST_NEAR_PAIRS ? MOST_NUGGET_SHARE * usual.nugget : Infinity;
  const nugget = Math.min(most, Math.max(covariance.nugget, LEAST_NUGGET_SHARE * usual.nugget));
  return { ...covariance, nugget };
}

function nearPairs({ members, separationsKm }: PlaceModel['network']): number {
  const n = members.length;
  let pairs = 0;
  for (let i = 0; i < n; i++)
    for (let k = 0; k < i; k++) if (separationsKm[i * n + k] < NEIGHBOURHOOD_KM) pairs++;
  return pairs;
}

/** Share and range of `share * exp(-h / range)` nearest to the pairs' correlations, weighted by winters shared. */
function fitAnomalyCorrelation({ network }: PlaceModel, anomalies: Float64Array): AnomalyCorrelation {
  const n = network.members.length;
  const count = network.labels.length;
  const pairs: { km: number; correlation: number; winters: number }[] = [];
  for (let i = 0; i < n; i++)
    for (let k = 0; k < i; k++) {
      const pair = correlation(
        anomalies.subarray(i * count, (i + 1) * count),
        anomalies.subarray(k * count, (k + 1) * count),
      );
      if (pair.winters >= FEWEST_SHARED_WINTERS)
        pairs.push({ km: network.separationsKm[i * n + k], ...pair });
    }
  if (pairs.length < n) return USUAL_PARAMETERS.anomaly;
  const of = (x: Float64Array): AnomalyCorrelation => ({
    share: 0.98 / (1 + Math.exp(-x[1])),
    rangeKm: Math.exp(Math.min(9, Math.max(3, x[0]))),
  });
  const cost = (x: Float64Array): number => {
    const { share, rangeKm } = of(x);
    let sum = 0;
    for (const pair of pairs)
      sum += pair.winters * (pair.correlation - share * Math.exp(-pair.km / rangeKm)) ** 2;
    return sum / pairs.length;
  };
  const { share, rangeKm } = USUAL_PARAMETERS.anomaly;
  const start = [Math.log(rangeKm), Math.log(share / (0.98 - share))];
  return of(minimiseNelderMead(cost, start, [0.5, 0.5], 1e-9, 300).at);
}

/** Pearson's correlation over the winters both know. */
function correlation(a: Float64Array, b: Float64Array): { correlation: number; winters: number } {
  let winters = 0;
  let [sa, sb, saa, sbb, sab] = [0, 0, 0, 0, 0];
  for (let w = 0; w < a.length; w++) {
    if (Number.isNaN(a[w]) || Number.isNaN(b[w])) continue;
    winters++;
    sa += a[w];
    sb += b[w];
    saa += a[w] * a[w];
    sbb += b[w] * b[w];
    sab += a[w] * b[w];
  }
  const spread = Math.sqrt((saa - (sa * sa) / winters) * (sbb - (sb * sb) / winters));
  return { correlation: spread > 0 ? (sab - (sa * sb) / winters) / spread : 0, winters };
}
