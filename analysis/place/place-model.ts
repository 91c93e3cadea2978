import { anomalyCorrelations, anomalyWeights, type WinterWeights } from './anomaly-weights.ts';
import { MEAN_TREND, SCALE_TREND, trendRow } from './climate-trend.ts';
import { PlaceField } from './place-field.ts';
import { USUAL_ERRORS, type PlaceParameters } from './place-parameters.ts';
import { separationKm, type Site } from './site.ts';
import { stationClimates, type StationClimates } from './station-climates.ts';
import { StationNetwork, type Member } from './station-network.ts';

/** How far the level of a place's winters may be off, for one duration. Standard errors. */
export interface PlaceError {
  /** Estimated mean of the winters, °C, about which the scale turns. */
  readonly meanC: number;
  readonly meanErrorC: number;
  /** Of the logarithm of the scale. */
  readonly logScaleError: number;
  /** Of the two errors. */
  readonly correlation: number;
}

/** Mean and scale of the winters at a place for one duration, °C. */
export interface PlaceClimate {
  readonly meanC: number;
  readonly scaleC: number;
}

/** A winter is told at a point when stations explain at least this part of its anomaly. */
const LEAST_EXPLAINED = 0.15;

/**
 * Winters on either side whose mean is left as it is when the spread is restored: a run of mild winters is shared by all
 * the land, and would be stretched with the rest. On the Spanish network 5 to 15 do alike, on the others it hardly matters.
 */
const SLOW_WINTERS = 10;

/** One duration's fields over the land. */
interface Fields {
  readonly climates: StationClimates;
  readonly mean: PlaceField;
  readonly logScale: PlaceField;
}

/**
 * Winters anywhere among a set of stations, by climatologically aided interpolation (Willmott and Robeson 1995): mean and
 * scale of the winters go to a point by a trend in height, slope or hollow, sea and latitude with kriging of what it leaves; the
 * winters' standardised anomalies by simple kriging, winter by winter, their departures from a run of mild or hard winters
 * divided by the root of the explained part so that their spread isn't shrunk.
 */
export class PlaceModel {
  readonly network: StationNetwork;
  readonly origin: { readonly lat: number; readonly elevationM: number };
  readonly #between: Float64Array;
  readonly #sites: readonly Site[];
  readonly #rows: readonly Float64Array[];
  /** Trend row of the site asked about last: each duration asks about it anew. */
  #last: { readonly site: Site; readonly row: Float64Array } | null = null;
  readonly #neighbours: readonly (readonly (WinterWeights | null)[])[];
  readonly #fields = new Map<number, Fields>();
  /** Variance that an unknown height adds to a mean, °C². */
  readonly #unknownHeight: number;

  /** @throws RangeError without a member */
  constructor(
    members: readonly Member[],
    readonly parameters: PlaceParameters,
  ) {
    this.network = new StationNetwork(members);
    const heights = members.flatMap(({ site }) => site.elevationM ?? []);
    const height = heights.reduce((sum, h) => sum + h, 0) / Math.max(1, heights.length);
    const spread = heights.reduce((sum, h) => sum + (h - height) ** 2, 0) / Math.max(1, heights.length);
    this.#unknownHeight = (MEAN_TREND[1].mean / 1000) ** 2 * spread;
    this.origin = {
      lat: members.reduce((sum, { site }) => sum + site.lat, 0) / members.length,
      elevationM: height,
    };
    this.#sites = members.map(({ site }) => site);
    this.#rows = this.#sites.map((site) => trendRow(site, this.origin, this.#sites));
    const n = members.length;
    this.#between = anomalyCorrelations(this.network, parameters.anomaly);
    this.#neighbours = members.map((_, i) =>
      anomalyWeights(
        this.network,
        parameters.anomaly,
        this.#between,
        this.network.separationsKm.subarray(i * n, (i + 1) * n),
        i,
      ),
    );
  }

  /** Means and scales of the members for a duration (index into SUSTAINED_HOURS). */
  climates(j: number): StationClimates {
    return this.#fieldsOf(j).climates;
  }

  /** Trend rows of the members, in their order. */
  get rows(): readonly Float64Array[] {
    return this.#rows;
  }

  /** Separation from a site to each member, km. */
  separations(site: Site): Float64Array {
    return Float64Array.from(this.network.members, (member) => separationKm(site, member.site));
  }

  /** How the winters' anomalies at a site are put together. */
  weights(separationsKm: ArrayLike<number>): (WinterWeights | null)[] {
    return anomalyWeights(this.network, this.parameters.anomaly, this.#between, separationsKm).map((entry) =>
      entry && entry.explained >= LEAST_EXPLAINED ? entry : null,
    );
  }

  /** Mean and scale of the winters at a site. */
  climateAt(site: Site, separationsKm: ArrayLike<number>, j: number): PlaceClimate {
    const { mean, logScale } = this.#fieldsOf(j);
    const row = this.#rowOf(site);
    return {
      meanC: mean.at(separationsKm, row),
      scaleC: Math.exp(logScale.at(separationsKm, row)),
    };
  }

  /** How far mean and scale at a site may be off. */
  errorAt(
    site: Site,
    separationsKm: ArrayLike<number>,
    j: number,
    { meanC, scaleC }: PlaceClimate,
    weights: readonly (WinterWeights | null)[],
  ): PlaceError {
    const { mean, logScale } = this.#fieldsOf(j);
    const row = this.#rowOf(site);
    let [told, explained] = [0, 0];
    for (const entry of weights) {
      if (!entry) continue;
      told++;
      explained += entry.explained;
    }
    const missing = (1 - explained / told) / told;
    const unknownHeight = site.elevationM === null ? this.#unknownHeight : 0;
    const met = this.parameters.errors?.[j] ?? USUAL_ERRORS;
    const meanVariance = met.mean * mean.variance(separationsKm, row) + unknownHeight;
    const scaleVariance = met.logScale * logScale.variance(separationsKm, row);
    return {
      meanC,
      meanErrorC: Math.sqrt(meanVariance + scaleC ** 2 * missing),
      logScaleError: Math.sqrt(scaleVariance + 0.51 * missing),
      correlation: met.correlation,
    };
  }

  /** Each winter's level over all kinds of night at a site, °C; NaN where no station tells. */
  levelsC(
    j: number,
    { meanC, scaleC }: PlaceClimate,
    weights: readonly (WinterWeights | null)[],
  ): Float64Array {
    const { anomalies } = this.#fieldsOf(j).climates;
    const count = this.network.labels.length;
    const told = new Float64Array(count).fill(NaN);
    for (let w = 0; w < count; w++) {
      const entry = weights[w];
      if (!entry) continue;
      let sum = 0;
      for (let a = 0; a < entry.members.length; a++)
        sum += entry.weights[a] * anomalies[entry.members[a] * count + w];
      told[w] = sum;
    }
    const slow = runningMean(told, SLOW_WINTERS);
    return told.map((anomaly, w) =>
      Number.isNaN(anomaly)
        ? NaN
        : meanC + scaleC * (slow[w] + (anomaly - slow[w]) / Math.sqrt(weights[w]!.explained)),
    );
  }

  #rowOf(site: Site): Float64Array {
    if (this.#last?.site !== site) this.#last = { site, row: trendRow(site, this.origin, this.#sites) };
    return this.#last.row;
  }

  #fieldsOf(j: number): Fields {
    let fields = this.#fields.get(j);
    if (!fields) {
      const climates = stationClimates(this.network, j, this.#neighbours);
      const heightless = Float64Array.from(this.network.members, ({ site }) =>
        site.elevationM === null ? this.#unknownHeight : 0,
      );
      fields = {
        climates,
        mean: new PlaceField(
          this.network,
          this.#rows,
          climates.meanC,
          climates.meanVariance.map((variance, i) => variance + heightless[i]),
          this.parameters.mean,
          MEAN_TREND,
        ),
        logScale: new PlaceField(
          this.network,
          this.#rows,
          climates.logScale,
          climates.logScaleVariance,
          this.parameters.logScale,
          SCALE_TREND,
        ),
      };
      this.#fields.set(j, fields);
    }
    return fields;
  }
}

/** Mean of the known values up to `half` places before and after each. */
function runningMean(values: Float64Array, half: number): Float64Array {
  const count = values.length;
  const sums = new Float64Array(count + 1);
  const known = new Int32Array(count + 1);
  for (let w = 0; w < count; w++) {
    const is = Number.isNaN(values[w]) ? 0 : 1;
    sums[w + 1] = sums[w] + (is ? values[w] : 0);
    known[w + 1] = known[w] + is;
  }
  return values.map((_, w) => {
    const from = Math.max(0, w - half);
    const to = Math.min(count, w + half + 1);
    return (sums[to] - sums[from]) / (known[to] - known[from]);
  });
}
