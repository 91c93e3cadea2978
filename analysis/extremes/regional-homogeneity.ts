import { normalCdf } from '../math/normal.ts';
import { invertPositiveDefinite } from '../math/positive-definite.ts';
import { seededRandom } from '../math/seeded-random.ts';
import { fitKappa, kappaQuantile, type Kappa } from './kappa.ts';
import { sampleLMoments } from './l-moments.ts';

/** What the statistics need of one station. */
export interface RegionSite {
  /** Values the L-moments come from (winters). */
  readonly values: number;
  /**
   * What the stations of a homogeneous group share of the spread: the L-CV (L-scale/mean) for quantities with a true zero,
   * the L-scale itself for temperatures, whose stations differ by a shift.
   */
  readonly spread: number;
  readonly skewness: number;
  readonly kurtosis: number;
}

/** Critical values of the discordancy for 5 to 15 stations, at about 10 % (Hosking and Wallis 1997, table 3.1). */
const CRITICAL = [1.333, 1.648, 1.917, 2.14, 2.329, 2.491, 2.632, 2.757, 2.869, 2.971, 3];
const FEWEST_SITES = 5;

/** Part of their size by which ratios must differ, and determinant their correlations must have, to say anything at all. */
const LEAST_INDEPENDENT = 1e-8;

/** From which discordancy on a station of a group of `count` is to be looked at; Infinity under 5, where none can be. */
export function criticalDiscordancy(count: number): number {
  return count < FEWEST_SITES ? Infinity : CRITICAL[Math.min(count, 15) - FEWEST_SITES]!;
}

/**
 * How far each station's spread, L-skewness and L-kurtosis lie from the middle of the group, in the group's own spread:
 * `D_i = N/3 (u_i - u)' A^-1 (u_i - u)` with `A` the sums of squares and products (Hosking and Wallis 1997, 3.3). The mean of
 * all is 1, none exceeds (N - 1)/3. Stations that agree, or whose three ratios rise and fall together to within rounding
 * ({@link LEAST_INDEPENDENT}), leave a direction in which nothing differs and `A` has no inverse: then all are 0, as they
 * are with fewer than 5 stations, which say nothing.
 */
export function discordancy(sites: readonly RegionSite[]): Float64Array {
  const n = sites.length;
  const result = new Float64Array(n);
  if (n < FEWEST_SITES) return result;
  const ratios = sites.map((site) => [site.spread, site.skewness, site.kurtosis]);
  const middle = [0, 1, 2].map((m) => ratios.reduce((sum, u) => sum + u[m]!, 0) / n);
  const apart = ratios.map((u) => u.map((x, m) => x - middle[m]!));
  const products = Float64Array.from({ length: 9 }, (_, at) =>
    apart.reduce((sum, u) => sum + u[Math.floor(at / 3)]! * u[at % 3]!, 0),
  );
  // As correlations, so that units don't decide what counts as near to singular.
  const size = [0, 4, 8].map((at) => Math.sqrt(products[at]!));
  // L-skewness and L-kurtosis are of the order of 1 themselves, the spread has a unit.
  const order = [Math.abs(middle[0]!) + size[0]!, 1, 1];
  const alike = size.some((s, m) => !(s > LEAST_INDEPENDENT * order[m]! * Math.sqrt(n)));
  if (alike) return result;
  const correlations = products.map((p, at) => p / (size[Math.floor(at / 3)]! * size[at % 3]!));
  if (determinantOf3(correlations) < LEAST_INDEPENDENT) return result;
  const inverse = invertPositiveDefinite(correlations, 3);
  if (!inverse) return result;
  apart.forEach((u, i) => {
    const scaled = u.map((x, m) => x / size[m]!);
    for (let at = 0; at < 9; at++) result[i]! += scaled[Math.floor(at / 3)]! * inverse[at]! * scaled[at % 3]!;
    result[i]! *= n / 3;
  });
  return result;
}

function determinantOf3(a: Float64Array): number {
  return (
    a[0]! * (a[4]! * a[8]! - a[5]! * a[7]!) -
    a[1]! * (a[3]! * a[8]! - a[5]! * a[6]!) +
    a[2]! * (a[3]! * a[7]! - a[4]! * a[6]!)
  );
}

/** Observed spread between stations beside that of simulated homogeneous groups, and how many standard deviations above. */
export interface Heterogeneity {
  readonly observed: number;
  readonly simulatedMean: number;
  readonly simulatedDeviation: number;
  /** Under 1 acceptably homogeneous, 1 to 2 possibly, from 2 definitely heterogeneous. */
  readonly h: number;
}

/** Measures of a group, by what is compared between stations. */
export interface RegionTest {
  /** H1: spread (L-CV, or L-scale of temperatures). The one with power. */
  readonly spread: Heterogeneity;
  /** H2: spread and L-skewness together. */
  readonly spreadAndSkewness: Heterogeneity;
  /** H3: L-skewness and L-kurtosis together. */
  readonly skewnessAndKurtosis: Heterogeneity;
  /** L-skewness alone: what pooling a shape assumes to be shared. Not of the book, made as H1. */
  readonly skewness: Heterogeneity;
  readonly kappa: Kappa;
  readonly basis: 'kappa' | 'generalised logistic';
}

export interface RegionTestOptions {
  readonly seed: number;
  /** Simulated groups; 500 in the book. */
  readonly simulations?: number;
  /** True when `spread` is an L-scale, false (the default) when it is an L-CV. */
  readonly shiftedStations?: boolean;
  /**
   * Correlation between stations in the same year, 0 (the book's assumption) to 1. Neighbours share their winters, which makes
   * them look more alike than independent ones would; simulated groups are then drawn with it (equal between all pairs, normal
   * copula, records ending in the same year).
   */
  readonly correlation?: number;
}

/**
 * Heterogeneity of a group (Hosking and Wallis 1997, 4.3): dispersions between stations, weighted by length of record, against
 * those of groups simulated from one kappa distribution with the group's average L-moments and the stations' lengths.
 * For temperatures the stations of a group share shape and L-scale and differ by a shift.
 * @throws RangeError with fewer than 2 stations, or one of fewer than 4 values, or when no distribution has the average L-moments.
 */
export function testRegion(sites: readonly RegionSite[], options: RegionTestOptions): RegionTest {
  const { seed, simulations = 500, shiftedStations = false, correlation = 0 } = options;
  if (sites.length < 2) throw new RangeError(`A group needs at least 2 stations, got ${sites.length}.`);
  if (!(correlation >= 0 && correlation <= 1))
    throw new RangeError(`A correlation between stations must lie in 0 to 1, not ${correlation}.`);
  const average = averageOf(sites);
  const { kappa, basis } = fitKappa({
    mean: 1,
    scale: average.spread,
    skewness: average.skewness,
    kurtosis: average.kurtosis,
  });
  const random = seededRandom(seed);
  const longest = Math.max(...sites.map((site) => site.values));
  const common = new Float64Array(longest);
  const shared = Math.sqrt(correlation);
  const own = Math.sqrt(1 - correlation);
  const draws = Array.from({ length: simulations }, () => {
    if (correlation > 0) for (let year = 0; year < longest; year++) common[year] = random.normal();
    const group = sites.map(({ values }): RegionSite => {
      const sample = Float64Array.from({ length: values }, (_, year) =>
        kappaQuantile(
          correlation > 0 ? normalCdf(shared * common[year]! + own * random.normal()) : random.uniform(),
          kappa,
        ),
      );
      const { mean, scale, skewness, kurtosis } = sampleLMoments(sample);
      return { values, spread: shiftedStations ? scale : scale / mean, skewness, kurtosis };
    });
    return dispersions(group);
  });
  const observed = dispersions(sites);
  const [spread, spreadAndSkewness, skewnessAndKurtosis, skewness] = observed.map((value, m) =>
    against(
      value,
      draws.map((draw) => draw[m]!),
    ),
  ) as [Heterogeneity, Heterogeneity, Heterogeneity, Heterogeneity];
  return { spread, spreadAndSkewness, skewnessAndKurtosis, skewness, kappa, basis };
}

/** Averages over the stations, weighted by length of record. */
export function averageOf(sites: readonly RegionSite[]): Omit<RegionSite, 'values'> {
  const total = sites.reduce((sum, site) => sum + site.values, 0);
  const mean = (of: (site: RegionSite) => number): number =>
    sites.reduce((sum, site) => sum + site.values * of(site), 0) / total;
  return {
    spread: mean((site) => site.spread),
    skewness: mean((site) => site.skewness),
    kurtosis: mean((site) => site.kurtosis),
  };
}

/** The book's V (4.4), V2 (4.6), V3 (4.7), and V made of the L-skewness. */
function dispersions(sites: readonly RegionSite[]): [number, number, number, number] {
  const average = averageOf(sites);
  const sums: [number, number, number, number] = [0, 0, 0, 0];
  let total = 0;
  for (const site of sites) {
    const spread = site.spread - average.spread;
    const skewness = site.skewness - average.skewness;
    const kurtosis = site.kurtosis - average.kurtosis;
    total += site.values;
    sums[0] += site.values * spread * spread;
    sums[1] += site.values * Math.hypot(spread, skewness);
    sums[2] += site.values * Math.hypot(skewness, kurtosis);
    sums[3] += site.values * skewness * skewness;
  }
  return [Math.sqrt(sums[0] / total), sums[1] / total, sums[2] / total, Math.sqrt(sums[3] / total)];
}

function against(observed: number, simulated: readonly number[]): Heterogeneity {
  const n = simulated.length;
  const mean = simulated.reduce((a, b) => a + b, 0) / n;
  const deviation = Math.sqrt(simulated.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (n - 1));
  return {
    observed,
    simulatedMean: mean,
    simulatedDeviation: deviation,
    h: (observed - mean) / deviation,
  };
}
