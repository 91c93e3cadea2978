import { seededRandom } from '../math/seeded-random.ts';
import { SUSTAINED_HOURS } from '../records/nights.ts';
import type { PackPlaceErrors } from '../records/pack.ts';
import { MEAN_TREND, SCALE_TREND, trendRow, type TrendPrior } from './climate-trend.ts';
import type { Covariance } from './covariance.ts';
import { PlaceField } from './place-field.ts';
import type { PlaceModel } from './place-model.ts';
import { USUAL_ERRORS } from './place-parameters.ts';
import { StationNetwork } from './station-network.ts';

/** Stations dealt into those kept and those left out, by index. */
interface Split {
  readonly kept: readonly number[];
  readonly left: readonly number[];
  readonly network: StationNetwork;
  /** Trend rows of all stations by those kept. */
  readonly rows: readonly Float64Array[];
}

const PARTS = 3;
/** Ways of dealing the stations into parts. */
const DEALS = 2;
const SEED = 1985;
/** How many stations left out weigh as much as the usual figures. */
const USUAL_WEIGHT = 10;

/**
 * Errors of station mean and scale when a third of the stations is left out, against those that kriging promises: the
 * covariances are fitted on one duration, are the same everywhere, and are taken for true, so that intervals made from them
 * alone come out too narrow. By index of SUSTAINED_HOURS.
 */
export function metErrors(model: PlaceModel): PackPlaceErrors[] {
  const random = seededRandom(SEED);
  const n = model.network.members.length;
  const splits = Array.from({ length: DEALS }, (): Split[] => {
    const order = Array.from({ length: n }, (_, i) => ({ i, at: random.uniform() }))
      .sort((a, b) => a.at - b.at)
      .map(({ i }) => i);
    return Array.from({ length: PARTS }, (_, part) => {
      const kept = order.filter((_, k) => k % PARTS !== part);
      const network = new StationNetwork(kept.map((i) => model.network.members[i]));
      // What the stations kept tell of the heights around, as at a point that has no station.
      const sites = network.members.map(({ site }) => site);
      const rows = model.network.members.map(({ site }) => trendRow(site, model.origin, sites));
      return { kept, left: order.filter((_, k) => k % PARTS === part), network, rows };
    });
  }).flat();
  return SUSTAINED_HOURS.map((_, j) => {
    const { meanC, meanVariance, logScale, logScaleVariance } = model.climates(j);
    const usual = USUAL_WEIGHT * USUAL_ERRORS.correlation;
    let [count, means, scales, both] = [USUAL_WEIGHT, USUAL_WEIGHT, USUAL_WEIGHT, usual];
    for (const split of splits) {
      const mean = leftOutErrors(model, split, meanC, meanVariance, model.parameters.mean, MEAN_TREND);
      const scale = leftOutErrors(
        model,
        split,
        logScale,
        logScaleVariance,
        model.parameters.logScale,
        SCALE_TREND,
      );
      mean.forEach((error, i) => {
        // Each station is left out once a deal.
        count += 1 / DEALS;
        means += error ** 2 / DEALS;
        scales += scale[i] ** 2 / DEALS;
        both += (error * scale[i]) / DEALS;
      });
    }
    return {
      mean: rounded(means / count),
      logScale: rounded(scales / count),
      correlation: rounded(both / Math.sqrt(means * scales)),
    };
  });
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}

/** Estimated less known over its standard error, at the stations left out. */
function leftOutErrors(
  { network }: PlaceModel,
  { kept, left, network: keptNetwork, rows }: Split,
  values: Float64Array,
  errorVariance: Float64Array,
  covariance: Covariance,
  priors: readonly TrendPrior[],
): number[] {
  const n = network.members.length;
  const field = new PlaceField(
    keptNetwork,
    kept.map((i) => rows[i]),
    Float64Array.from(kept, (i) => values[i]),
    Float64Array.from(kept, (i) => errorVariance[i]),
    covariance,
    priors,
  );
  return left.map((i) => {
    const separationsKm = Float64Array.from(kept, (k) => network.separationsKm[i * n + k]);
    const promised = field.variance(separationsKm, rows[i]) + errorVariance[i];
    return (field.at(separationsKm, rows[i]) - values[i]) / Math.sqrt(promised);
  });
}
