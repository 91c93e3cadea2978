import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sampleLMoments } from '../../../analysis/extremes/l-moments.ts';
import { fitPlaceParameters } from '../../../analysis/place/fit-parameters.ts';
import { distanceKm } from '../../../analysis/place/distance.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import { placeHistory } from '../../../analysis/place/place-history.ts';
import { PlaceModel } from '../../../analysis/place/place-model.ts';
import { USUAL_PARAMETERS, type PlaceParameters } from '../../../analysis/place/place-parameters.ts';
import type { Member } from '../../../analysis/place/station-network.ts';
import { SUSTAINED_COUNT } from '../../../analysis/records/nights.ts';
import { InventedLand, levelsOf, wintersOf } from './invented-land.ts';

const WINTERS = 60;

/** Parameters that are true of the invented land with this share of anomalies in common. */
function trueParameters(share: number): PlaceParameters {
  return {
    mean: { kind: 'exponential', sill: 0.6, rangeKm: 200, nugget: 0.01 },
    logScale: { kind: 'exponential', sill: 0.02, rangeKm: 250, nugget: 0.001 },
    anomaly: { share, rangeKm: 1500 },
    fitted: true,
  };
}

function meanOf(values: ArrayLike<number>): number {
  return Array.from(values).reduce((sum, value) => sum + value, 0) / values.length;
}

function meanError(a: ArrayLike<number>, b: ArrayLike<number>): number {
  return meanOf(Array.from(a, (value, w) => Math.abs(value - b[w])));
}

describe('the winters of a point among stations', () => {
  // The truth is the land's own: each winter at the point as the generator has it.
  it('are the true winters, within a fraction of their spread, where the land is smooth', () => {
    const land = new InventedLand({ seed: 1, winters: WINTERS, share: 0.98 });
    const members = land.members(land.scattered(40, 150, 600));
    const model = new PlaceModel(members, fitPlaceParameters(members));
    const errors: number[] = [];
    const nearest: number[] = [];
    land.scattered(12, 120, 600, 2).forEach((site, i) => {
      const truth = land.minimaC(site, 900 + i);
      const { winters, errors: told } = placeHistory(model, site);
      errors.push(meanError(levelsOf(winters), truth));
      const [station] = [...members].sort((a, b) => distanceKm(a.site, site) - distanceKm(b.site, site));
      nearest.push(meanError(levelsOf(station.winters), truth));
      // The mean of the winters lies within four standard errors of the true one.
      const { meanC, meanErrorC } = told![0];
      expect(Math.abs(meanC - meanOf(truth))).toBeLessThan(4 * meanErrorC);
    });
    // Spread of the winters 2 °C; a place's own part of the anomalies alone makes 0.8 * 2 * sqrt(0.02) = 0.23 °C.
    expect(meanOf(errors)).toBeLessThan(0.6);
    expect(meanOf(errors)).toBeLessThan(0.5 * meanOf(nearest));
  });

  // Two sites of one neighbourhood differ by 2 to 3 °F (handbook, microsites 3), whatever a continent's do.
  it('are as well known near a lone station of a network strewn over a continent as near a usual one', () => {
    const land = new InventedLand({ seed: 5, winters: WINTERS, share: 0.9 });
    const random = seededRandom(77);
    const sites = land.scattered(16, 1600, 300, 9);
    const strewn = sites.map((site, i) => {
      const offC = 4 * random.normal();
      const minimaC = land.minimaC(site, i).map((level) => level + offC);
      return { id: `S${100 + i}`, site, winters: wintersOf(minimaC) };
    });
    const { mean } = fitPlaceParameters(strewn);
    expect(mean.nugget + mean.sill).toBeGreaterThan(8);
    expect(mean.nugget).toBeLessThanOrEqual(2 * USUAL_PARAMETERS.mean.nugget);
    const { lat, lon, elevationM } = sites[3];
    const beside = { lat: lat + 0.025, lon, elevationM, coastKm: null };
    const { errors } = placeHistory(new PlaceModel([strewn[3]], fitPlaceParameters(strewn)), beside);
    expect(errors![4].meanErrorC).toBeLessThan(2.4);
  });

  it('are unbiased over many points', () => {
    const land = new InventedLand({ seed: 3, winters: WINTERS, share: 0.8 });
    const members = land.members(land.scattered(40, 150, 600));
    const model = new PlaceModel(members, fitPlaceParameters(members));
    const off = land.scattered(25, 120, 600, 4).map((site, i) => {
      const levels = levelsOf(placeHistory(model, site).winters);
      return meanOf(levels) - meanOf(land.minimaC(site, 900 + i));
    });
    expect(Math.abs(meanOf(off))).toBeLessThan(0.2);
  });

  it('spread as widely as winters do there, not as a mean of stations does', () => {
    const share = 0.6;
    const land = new InventedLand({ seed: 5, winters: WINTERS, share });
    const members = land.members(land.scattered(30, 150, 0));
    const model = new PlaceModel(members, trueParameters(share));
    const ratios = land.scattered(30, 120, 0, 6).map((site) => {
      const separations = model.separations(site);
      const levels = levelsOf(placeHistory(model, site).winters);
      const { scaleC } = model.climateAt(site, separations, 0);
      // For normal values the standard deviation is sqrt(pi) L2 (Hosking 1990, table 1).
      return (Math.sqrt(Math.PI) * sampleLMoments(levels).scale) / scaleC;
    });
    // Without restoring, the ratio would be the root of the explained part: below 0.77 here.
    expect(meanOf(ratios)).toBeGreaterThan(0.94);
    expect(meanOf(ratios)).toBeLessThan(1.06);
    for (const ratio of ratios) expect(Math.abs(ratio - 1)).toBeLessThan(0.25);
  });

  it('move with all stations by the same number of degrees', () => {
    const land = new InventedLand({ seed: 7, winters: 40, share: 0.8, middleC: -8 });
    const sites = land.scattered(9, 100, 400);
    const minima = sites.map((site, i) => land.minimaC(site, i));
    const at = land.site(20, -10, 120);
    const levels = (shiftC: number): Float64Array => {
      const members: Member[] = sites.map((site, i) => ({
        id: `S${i}`,
        site,
        winters: wintersOf(minima[i].map((value) => Math.round(value * 100) / 100 + shiftC)),
      }));
      return levelsOf(placeHistory(new PlaceModel(members, USUAL_PARAMETERS), at).winters, 4);
    };
    const before = levels(0);
    fc.assert(
      fc.property(fc.integer({ min: -800, max: 400 }), (hundredths) => {
        levels(hundredths / 100).forEach((level, w) =>
          // One hundredth for rounding.
          expect(Math.abs(level - before[w] - hundredths / 100)).toBeLessThan(0.0101),
        );
      }),
      { numRuns: 12, seed: 1 },
    );
  });

  it('fill what a station missed: one that missed the great freezes is not taken for mild', () => {
    const land = new InventedLand({ seed: 8, winters: WINTERS, share: 0.9 });
    const sites = land.scattered(12, 120, 0);
    const minima = sites.map((site, i) => land.minimaC(site, i));
    const region = Array.from({ length: WINTERS }, (_, w) => meanOf(minima.map((row) => row[w])));
    const missed = new Set([...region.keys()].sort((a, b) => region[a] - region[b]).slice(0, 15));
    const members = land.members(sites, (i, w) => i !== 0 || !missed.has(w));
    const { meanC, logScale } = new PlaceModel(members, trueParameters(0.9)).climates(0);
    const seen = minima[0].filter((_, w) => !missed.has(w));
    const biasSeen = meanOf(seen) - meanOf(minima[0]);
    expect(biasSeen).toBeGreaterThan(0.7);
    expect(Math.abs(meanC[0] - meanOf(minima[0]))).toBeLessThan(biasSeen / 3);
    const spread = (values: Float64Array) => Math.log(Math.sqrt(Math.PI) * sampleLMoments(values).scale);
    const lost = spread(minima[0]) - spread(seen);
    expect(Math.abs(logScale[0] - spread(minima[0]))).toBeLessThan(lost / 2);
  });

  it.each([1, 2, 5, 40, 120])('come from %i stations, whole and without a gap', (count) => {
    const land = new InventedLand({ seed: 9, winters: 40, share: 0.8 });
    const members = land.members(land.scattered(count, 80, 300));
    const model = new PlaceModel(members, fitPlaceParameters(members));
    const { winters, errors, evidence, onStation } = placeHistory(model, land.site(5, 5, 100));
    expect(onStation).toBeNull();
    expect([...winters.complete]).toEqual(new Array(40).fill(1));
    expect(levelsOf(winters).every(Number.isFinite)).toBe(true);
    expect(errors).toHaveLength(SUSTAINED_COUNT);
    for (const { meanC, meanErrorC, logScaleError } of errors!) {
      expect(Number.isFinite(meanC)).toBe(true);
      expect(meanErrorC).toBeGreaterThan(0);
      expect(logScaleError).toBeGreaterThan(0);
    }
    expect(evidence.length).toBeGreaterThan(0);
    expect(evidence.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 1);
  });

  it('are surer the more stations there are', () => {
    const land = new InventedLand({ seed: 10, winters: 40, share: 0.8 });
    const sites = land.scattered(40, 80, 0);
    const errors = [1, 5, 40].map((count) => {
      const model = new PlaceModel(land.members(sites.slice(0, count)), USUAL_PARAMETERS);
      return placeHistory(model, land.site(0, 0)).errors![0].meanErrorC;
    });
    expect(errors[1]).toBeLessThan(errors[0]);
    expect(errors[2]).toBeLessThan(errors[1]);
  });
});

describe('a point on a station', () => {
  const land = new InventedLand({ seed: 11, winters: 45, share: 0.8 });
  const members = land.members(land.scattered(10, 80, 300), (i, w) => w % 11 !== i);
  const model = new PlaceModel(members, USUAL_PARAMETERS);

  it('gets that record back, every level and date of it, without an error of interpolation', () => {
    for (const member of members) {
      const { winters, errors, evidence, onStation } = placeHistory(model, member.site);
      expect(onStation).toBe(member.id);
      expect(winters).toEqual(member.winters);
      expect(errors).toBeNull();
      expect(evidence).toEqual([{ id: member.id, weight: 1, distanceKm: 0 }]);
    }
  });

  it('gets it too when its height is unknown, but not at another height', () => {
    const { site } = members[3];
    expect(placeHistory(model, { ...site, elevationM: null }).onStation).toBe('S003');
    const above = placeHistory(model, { ...site, elevationM: site.elevationM! + 300 });
    expect(above.onStation).toBeNull();
    // Two degrees by the lapse rate the model starts from; the stations may say otherwise by a degree.
    expect(meanOf(levelsOf(above.winters))).toBeLessThan(meanOf(levelsOf(members[3].winters)) - 0.5);
  });

  it('of several there gets the one with most complete winters', () => {
    const twin = land.member('S999', members[4].site, 77);
    const { onStation, winters } = placeHistory(
      new PlaceModel([...members, twin], USUAL_PARAMETERS),
      members[4].site,
    );
    expect(onStation).toBe('S999');
    expect(winters).toEqual(twin.winters);
  });
});

describe('stations at one place', () => {
  const land = new InventedLand({ seed: 12, winters: 40, share: 0.8 });
  const sites = land.scattered(6, 80, 300);
  it.each([
    ['with the same record', 0],
    ['with different records', 500],
  ])('%s give numbers, by the usual figures and by fitted ones', (_, own) => {
    const members = [...land.members(sites), ...sites.map((site, i) => land.member(`T${i}`, site, own + i))];
    for (const parameters of [USUAL_PARAMETERS, fitPlaceParameters(members), trueParameters(0.98)]) {
      const { winters, errors } = placeHistory(new PlaceModel(members, parameters), land.site(7, -3, 90));
      expect(levelsOf(winters).every(Number.isFinite)).toBe(true);
      expect(errors!.every(({ meanErrorC }) => Number.isFinite(meanErrorC))).toBe(true);
    }
    expect(Object.values(fitPlaceParameters(members).mean).every((x) => !Number.isNaN(x))).toBe(true);
  });

  it('all at one single place give numbers', () => {
    const site = land.site(0, 0, 50);
    const members = [0, 1, 2].map((own) => land.member(`S${own}`, site, own));
    const { winters } = placeHistory(new PlaceModel(members, USUAL_PARAMETERS), land.site(9, 4, 50));
    expect(levelsOf(winters).every(Number.isFinite)).toBe(true);
  });
});

describe('the same land elsewhere on the globe', () => {
  const answerAt = (middleLon: number, side: 1 | -1) => {
    const land = new InventedLand({ seed: 13, winters: 40, share: 0.8, middleLon, side });
    const members = land.members(land.scattered(15, 60, 300));
    const parameters = fitPlaceParameters(members);
    return { members, ...placeHistory(new PlaceModel(members, parameters), land.site(3, -8, 120)) };
  };
  const home = answerAt(0, 1);

  it.each([
    ['across the antimeridian', 180, 1],
    ['south of the equator', 0, -1],
  ] as const)('%s gives the same winters, labels and errors', (_, lon, side) => {
    const there = answerAt(lon, side);
    if (lon === 180) {
      const lons = there.members.map(({ site }) => site.lon);
      expect(Math.min(...lons)).toBeLessThan(-179);
      expect(Math.max(...lons)).toBeGreaterThan(179);
    }
    expect(there.winters.winter).toEqual(home.winters.winter);
    expect(meanError(levelsOf(there.winters, 4), levelsOf(home.winters, 4))).toBeLessThan(0.006);
    expect(there.errors![4].meanErrorC).toBeCloseTo(home.errors![4].meanErrorC, 3);
    expect(there.evidence.map(({ id }) => id)).toEqual(home.evidence.map(({ id }) => id));
  });
});

describe('heights that are not known', () => {
  const land = new InventedLand({ seed: 14, winters: 40, share: 0.8 });
  const members = land.members(land.scattered(15, 80, 900));

  it('of the point widen the error and give the stations’ middle height', () => {
    const model = new PlaceModel(members, USUAL_PARAMETERS);
    const at = land.site(4, 4, model.origin.elevationM);
    const known = placeHistory(model, at);
    const unknown = placeHistory(model, { ...at, elevationM: null });
    expect(unknown.errors![0].meanErrorC).toBeGreaterThan(known.errors![0].meanErrorC + 0.3);
    expect(unknown.errors![0].meanC).toBeCloseTo(known.errors![0].meanC, 0);
  });

  it('of some stations or of all leave numbers, and those stations weigh less in the mean', () => {
    for (const hidden of [(i: number) => i % 2 === 0, () => true]) {
      const blind = members.map((member, i) =>
        hidden(i) ? { ...member, site: { ...member.site, elevationM: null } } : member,
      );
      const { winters, errors } = placeHistory(
        new PlaceModel(blind, fitPlaceParameters(blind)),
        land.site(4, 4, 200),
      );
      expect(levelsOf(winters).every(Number.isFinite)).toBe(true);
      expect(errors![0].meanErrorC).toBeGreaterThan(0);
    }
  });
});
