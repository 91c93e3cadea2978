import { describe, expect, it } from 'vitest';
import { fitWinters } from '../../../analysis/extremes/fit-winters.ts';
import { FittedWinters } from '../../../analysis/extremes/fitted-winters.ts';
import { gevReturnLevel } from '../../../analysis/extremes/gev.ts';
import { gevWithShape } from '../../../analysis/extremes/gev-l-moments.ts';
import { levelErrorC, spreadDraws } from '../../../analysis/extremes/interpolation-error.ts';
import { sampleLMoments } from '../../../analysis/extremes/l-moments.ts';
import {
  shapeAmong,
  shapeThatAllowsRecord,
  stationSkewness,
} from '../../../analysis/extremes/pooled-shape.ts';
import { quantileType7InPlace } from '../../../analysis/math/quantile.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import { fitPlaceParameters } from '../../../analysis/place/fit-parameters.ts';
import { placeHistory } from '../../../analysis/place/place-history.ts';
import { PlaceModel } from '../../../analysis/place/place-model.ts';
import type { Site } from '../../../analysis/place/site.ts';
import type { Member } from '../../../analysis/place/station-network.ts';
import { InventedLand, levelsOf, wintersOf } from '../place/invented-land.ts';

const WINTERS = 60;
/** A place's own departure of its mean, °C, and of the logarithm of its scale; the second leans against the first. */
const OWN_MEAN_C = 0.7;
const OWN_LOG_SCALE = 0.08;
const LEANING = -0.5;

interface Place {
  readonly site: Site;
  /** True mean and scale of its coldest nights, in the long run. */
  readonly meanC: number;
  readonly scaleC: number;
}

/** A land with peculiarities at every place: hollows colder than their surroundings, and more variable. */
class PeculiarLand {
  readonly #land: InventedLand;

  constructor(private readonly seed: number) {
    this.#land = new InventedLand({ seed, winters: WINTERS, share: 0.85, middleC: -6 });
  }

  places(count: number, halfSideKm: number, seed: number): Place[] {
    const random = seededRandom(31 * this.seed + seed);
    return this.#land.scattered(count, halfSideKm, 500, 100 * this.seed + seed).map((site) => {
      const z = random.normal();
      const other = LEANING * z + Math.sqrt(1 - LEANING ** 2) * random.normal();
      return {
        site,
        meanC: this.#land.meanC(site) + OWN_MEAN_C * z,
        scaleC: this.#land.scaleC(site) * Math.exp(OWN_LOG_SCALE * other),
      };
    });
  }

  member(place: Place, i: number): Member {
    const [plainMean, plainScale] = [this.#land.meanC(place.site), this.#land.scaleC(place.site)];
    const minimaC = this.#land
      .minimaC(place.site, i)
      .map((value) => place.meanC + (place.scaleC * (value - plainMean)) / plainScale);
    return { id: `S${String(i).padStart(3, '0')}`, site: place.site, winters: wintersOf(minimaC) };
  }
}

function networkOf(seed: number): { land: PeculiarLand; model: PlaceModel } {
  const land = new PeculiarLand(seed);
  const members = land.places(40, 150, 1).map((place, i) => land.member(place, i));
  return { land, model: new PlaceModel(members, fitPlaceParameters(members)) };
}

function fitAt(model: PlaceModel, site: Site): FittedWinters {
  const { winters, errors } = placeHistory(model, site);
  const valuesC = levelsOf(winters);
  const fit = fitWinters({
    valuesC,
    neighbours: model.network.members.slice(0, 8).flatMap((m) => stationSkewness(levelsOf(m.winters)) ?? []),
    interpolation: errors![0],
    seed: 5,
  });
  expect(fit).toBeInstanceOf(FittedWinters);
  return fit as FittedWinters;
}

/**
 * The interval as the design words it, slowly: in each draw one error of mean and one of scale, shared by all winters; the
 * anomalies simulated given the neighbours'; winters resampled in blocks; refitted, with a shape drawn from the pool's error.
 */
function referenceLevels(
  model: PlaceModel,
  site: Site,
  periods: readonly number[],
  draws: number,
): Float64Array[] {
  const BLOCK = 5;
  const random = seededRandom(11);
  const separationsKm = model.separations(site);
  const weights = model.weights(separationsKm).map((entry) => entry!);
  const climate = model.climateAt(site, separationsKm, 0);
  const { anomalies } = model.climates(0);
  const count = weights.length;
  const expected = weights.map((entry, w) =>
    entry.members.reduce((sum, member, a) => sum + entry.weights[a] * anomalies[member * count + w], 0),
  );
  // What the neighbours leave open of each winter is simulated below, so it is no part of the error shared by all.
  const certain = weights.map((entry) => ({ ...entry, explained: 1 }));
  const { meanErrorC, logScaleError, correlation } = model.errorAt(site, separationsKm, 0, climate, certain);
  const shape = shapeAmong(
    model.network.members.slice(0, 8).flatMap((m) => stationSkewness(levelsOf(m.winters)) ?? []),
  );
  const levels = periods.map(() => new Float64Array(draws));
  for (let b = 0; b < draws; b++) {
    const warmer = random.normal();
    const wider = correlation * warmer + Math.sqrt(1 - correlation ** 2) * random.normal();
    const meanC = climate.meanC + meanErrorC * warmer;
    const scaleC = climate.scaleC * Math.exp(logScaleError * wider);
    const negated = weights.map(
      ({ explained }, w) => -(meanC + scaleC * (expected[w] + Math.sqrt(1 - explained) * random.normal())),
    );
    const resampled: number[] = [];
    while (resampled.length < count) {
      const start = random.index(count);
      for (let i = 0; i < BLOCK && resampled.length < count; i++)
        resampled.push(negated[(start + i) % count]);
    }
    const { mean, scale } = sampleLMoments(resampled);
    const largest = Math.max(...resampled);
    const k = Math.min(0.5, Math.max(-0.4, shape.k + shape.standardError * random.normal()));
    const gev = gevWithShape(mean, scale, shapeThatAllowsRecord(k, largest, mean, scale));
    periods.forEach((period, p) => (levels[p][b] = -gevReturnLevel(period, gev)));
  }
  return levels;
}

describe('the 90 % range at a point', () => {
  it('is that of simulating, resampling and refitting, within a tenth of its width', () => {
    const ratios: number[] = [];
    for (const seed of [1, 2]) {
      const { land, model } = networkOf(seed);
      for (const { site } of land.places(4, 120, 2)) {
        const fit = fitAt(model, site);
        const reference = referenceLevels(model, site, [5, 10, 25], 1500);
        [5, 10, 25].forEach((period, p) => {
          const { lowC, highC } = fit.level(period)!;
          const low = quantileType7InPlace(reference[p], 0.05);
          const high = quantileType7InPlace(reference[p], 0.95);
          ratios.push((highC - lowC) / (high - low));
          expect(Math.abs(lowC - low) / (high - low), `1 in ${period}, cold end`).toBeLessThan(0.1);
          expect(Math.abs(highC - high) / (high - low), `1 in ${period}, warm end`).toBeLessThan(0.1);
        });
      }
    }
    const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
    expect(mean).toBeGreaterThan(0.95);
    expect(mean).toBeLessThan(1.05);
  }, 60_000);

  it('holds the level in the long run about nine times in ten', () => {
    let [inside, all] = [0, 0];
    for (let seed = 10; seed < 24; seed++) {
      const { land, model } = networkOf(seed);
      for (const { site, meanC, scaleC } of land.places(8, 120, 2)) {
        // Winters of the land are sums of many waves, so normal: 1 in 10 lies 1.2816 standard deviations below.
        const truth = meanC - 1.2816 * scaleC;
        const { lowC, highC } = fitAt(model, site).level(10)!;
        if (truth >= lowC && truth <= highC) inside++;
        all++;
      }
    }
    // 112 points, 8 a land with a network in common: a true 0.9 gives 0.9 +- 0.06 at two standard errors.
    expect(inside / all).toBeGreaterThan(0.84);
    expect(inside / all).toBeLessThan(0.97);
  }, 120_000);
});

describe('errors of mean and scale together', () => {
  const error = { meanC: -5, meanErrorC: 1, logScaleError: 0.2, correlation: -0.5 };

  it('widen the cold side of a level and narrow the warm side when hollows vary more', () => {
    const apart = { ...error, correlation: 0 };
    // Three degrees below the mean: 1, 0.6 and 2 * 0.5 * 1 * 0.6.
    expect(levelErrorC(error, -8)).toBeCloseTo(Math.sqrt(1 + 0.36 + 0.6), 12);
    expect(levelErrorC(apart, -8)).toBeCloseTo(Math.sqrt(1.36), 12);
    expect(levelErrorC(error, -2)).toBeCloseTo(Math.sqrt(1 + 0.36 - 0.6), 12);
  });

  it('move draws as the standard error of a level says', () => {
    const size = 20_000;
    const [location, scale, k] = [5, 2, 0.1].map((value) => new Float64Array(size).fill(value));
    const spread = spreadDraws({ location, scale, k }, error, seededRandom(3));
    const levels = Float64Array.from(spread.location, (at, b) => -(at + 0.5 * spread.scale[b]));
    const mean = levels.reduce((a, b) => a + b) / size;
    const deviation = Math.sqrt(levels.reduce((a, b) => a + (b - mean) ** 2, 0) / size);
    // -(5 + 0.5 * 2) = -6 is 1 °C below the mean.
    expect(mean).toBeCloseTo(-6, 1);
    expect(Math.abs(deviation / levelErrorC(error, -6) - 1)).toBeLessThan(0.03);
  });
});
