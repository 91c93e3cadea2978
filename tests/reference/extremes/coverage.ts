import { fitWinters } from '../../../analysis/extremes/fit-winters.ts';
import { gevQuantile } from '../../../analysis/extremes/gev.ts';
import { stationSkewness } from '../../../analysis/extremes/pooled-shape.ts';
import { normalCdf } from '../../../analysis/math/normal.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';

/** One row of the table: `coverage[T]` is the share of 90 % ranges that hold the true period T. */
export interface CoverageRow {
  readonly k: number;
  readonly winters: number;
  readonly neighbours: number;
  readonly coverage: Readonly<Record<string, number>>;
  /** Share of ranges that lie wholly at rarer periods than the truth: the dangerous misses. */
  readonly tooRare: Readonly<Record<string, number>>;
}

/** Correlation of winters between neighbouring stations, for the pooled rows. */
const NEIGHBOUR_CORRELATION = 0.75;

/**
 * Simulates records of `winters` winters from the GEV of shape `k` and fits them.
 * With neighbours: stations with the same shape, winters joined by a normal copula with correlation 0.75.
 */
export function coverageRow(
  k: number,
  winters: number,
  repetitions: number,
  draws: number,
  neighbours = 0,
): CoverageRow {
  const truth = { location: 0, scale: 2.5, k };
  const random = seededRandom(1000 * winters + Math.round(100 * k) + neighbours);
  const periods = [2, 5, 10, 25, 50, 100].filter((period) => period <= 2 * winters);
  const inside = periods.map(() => 0);
  const rarer = periods.map(() => 0);
  const shared = Math.sqrt(NEIGHBOUR_CORRELATION);
  const own = Math.sqrt(1 - NEIGHBOUR_CORRELATION);
  for (let r = 0; r < repetitions; r++) {
    const region = Array.from({ length: winters }, () => random.normal());
    const station = (): number[] =>
      region.map((common) => -gevQuantile(normalCdf(shared * common + own * random.normal()), truth));
    const valuesC = station();
    const pool = Array.from({ length: neighbours }, () => stationSkewness(station())).filter(
      (s) => s !== null,
    );
    const fit = fitWinters({ valuesC, neighbours: pool, seed: r, draws })!;
    periods.forEach((period, i) => {
      const range = fit.returnPeriod(-gevQuantile(1 - 1 / period, truth));
      if (range.low <= period && period <= range.high) inside[i]!++;
      if (range.low > period) rarer[i]!++;
    });
  }
  const shares = (counts: readonly number[]): Record<string, number> =>
    Object.fromEntries(periods.map((period, i) => [period, Number((counts[i]! / repetitions).toFixed(4))]));
  return { k, winters, neighbours, coverage: shares(inside), tooRare: shares(rarer) };
}
