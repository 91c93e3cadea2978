import { describe, expect, it } from 'vitest';
import { leaveOut, type LeftOutStation, type StationWinters } from '../../../analysis/answer/leave-out.ts';
import { intervalScore, leaveOutErrors } from '../../../analysis/answer/leave-out-errors.ts';
import { FittedWinters, type WinterFit } from '../../../analysis/extremes/fitted-winters.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import { distanceKm } from '../../../analysis/place/distance.ts';
import { fitPlaceParameters } from '../../../analysis/place/fit-parameters.ts';
import type { Member } from '../../../analysis/place/station-network.ts';
import { tileOf } from '../../../analysis/records/winter-tile.ts';
import { InventedLand } from '../place/invented-land.ts';

const WINTERS = 50;
const land = new InventedLand({ seed: 4, winters: WINTERS, share: 0.9, middleC: -4 });
const members = land.members(land.scattered(36, 130, 900));
const parameters = fitPlaceParameters(members);

function stationOf({ id, site, winters }: Member): StationWinters {
  const complete = winters.complete.reduce((sum, whole) => sum + whole, 0);
  const { lat, lon, elevationM: elevation_m, coastKm: coast_km } = site;
  const span = { complete, first: winters.winter[0], last: winters.winter.at(-1)! };
  return {
    station: {
      id,
      name: id,
      lat,
      lon,
      elevation_m,
      coast_km,
      winters: span,
      basis: 'daily',
      tile: tileOf(lat, lon),
    },
    winters,
  };
}
const stations = members.map(stationOf);

function judge(all: readonly StationWinters[], parts: number, most = Infinity): LeftOutStation[] {
  return leaveOut(all, { hours: [0], parts, most, random: seededRandom(7), parameters, draws: 100 })[0];
}

describe('stations left out', () => {
  it('are each judged once, never by themselves nor by the others of their third', () => {
    const third = judge(stations, 3);
    expect(third.map(({ id }) => id).sort()).toEqual(stations.map(({ station }) => station.id));
    for (const { id, kept } of third) {
      const site = members.find((member) => member.id === id)!.site;
      const others = members
        .filter((member) => member.id !== id)
        .map((member) => distanceKm(member.site, site));
      const nearest = Math.min(...others);
      expect(kept).toHaveLength(8);
      expect(kept[0].km).toBeGreaterThanOrEqual(nearest - 1e-9);
    }
    // With one left out the nearest of all others is kept.
    for (const { id, kept } of judge(stations, stations.length)) {
      const site = members.find((member) => member.id === id)!.site;
      const others = members
        .filter((member) => member.id !== id)
        .map((member) => distanceKm(member.site, site));
      expect(kept[0].km).toBeCloseTo(Math.min(...others), 9);
    }
  });

  it('are told better than by their neighbours, with ranges that hold', () => {
    const { errors, details } = leaveOutErrors(0, judge(stations, 3))!;
    // The baseline is given the land's very lapse rate; on so smooth a land there is little left to do better.
    expect(errors.mean_error_c).toBeLessThan(1.05 * errors.inverse_distance_mean_error_c);
    expect(errors.mean_error_c).toBeLessThan(0.5 * errors.nearest_mean_error_c);
    expect(Math.abs(errors.bias_c)).toBeLessThan(0.25);
    expect(errors.interval.coverage).toBeGreaterThan(0.85);
    expect(errors.same_winters.coverage).toBeGreaterThan(0.8);
    expect(errors.same_winters.mean_width_c).toBeLessThan(errors.interval.mean_width_c);
    expect(Math.abs(errors.hit_ratio! - 1)).toBeLessThan(0.1);
    expect(details.stations).toHaveLength(36);
    for (const { predicted, observed, count } of details.reliability) {
      if (count > 1000) expect(Math.abs(predicted - observed)).toBeLessThan(0.08);
    }
  });

  it('are the same for the same seed, and as many as asked for at most', () => {
    const some = judge(stations, 3, 5);
    expect(some).toHaveLength(5);
    expect(judge(stations, 3, 5).map(({ id }) => id)).toEqual(some.map(({ id }) => id));
  });

  it('are not judged with few winters, out of reach, or on a station kept', () => {
    const short = stationOf(land.member('SHORT', land.site(5, 5, 100), 90, (w) => w < 15));
    const far = stationOf(land.member('FAR', land.site(600, 0, 100), 91));
    const [twin] = members;
    const same = stationOf({ ...twin, id: 'TWIN' });
    const judged = judge([...stations, short, far, same], stations.length + 3).map(({ id }) => id);
    for (const id of ['SHORT', 'FAR', 'TWIN', twin.id]) expect(judged).not.toContain(id);
    expect(judged).toHaveLength(stations.length - 1);
    expect(judge([], 3)).toEqual([]);
    expect(leaveOutErrors(0, [])).toBeNull();
  });
});

describe('figures of stations left out', () => {
  it('score intervals as Gneiting and Raftery 2007, equation 43, at 90 %', () => {
    const inside = { observedC: 0, predictedC: 0.5, lowC: -1, highC: 1 };
    const below = { observedC: -4, predictedC: 0, lowC: -1, highC: 1 };
    // Widths 2 and 2; the second lies 3 °C outside, each degree costs 2 / 0.1.
    expect(intervalScore([inside, below])).toEqual({ coverage: 0.5, mean_width_c: 2, score_c: 32 });
  });

  it('weigh neighbours by inverse squared distance and height, as a made-up pair shows', () => {
    const levelled = (levelC: number): WinterFit => ({
      hasCurve: true,
      level: () => ({ levelC, lowC: levelC - 1, highC: levelC + 1 }),
      returnPeriod: () => ({ period: 4, low: 3, high: 5 }),
      chanceWithin: () => ({ p: 0, low: 0, high: 0 }),
    });
    const draws = { location: Float64Array.of(5), scale: Float64Array.of(1), k: Float64Array.of(0.1) };
    const shape = { k: 0.1, standardError: 0.1, basis: 'pooled' as const };
    const gev = { location: 5, scale: 1, k: 0.1 };
    const error = { meanC: -5, meanErrorC: 1, logScaleError: 0 };
    const station: LeftOutStation = {
      id: 'X',
      own: levelled(-6),
      valuesC: Float64Array.of(-8, -6, -4, -2),
      whole: levelled(-7.5),
      same: new FittedWinters(gev, shape, draws, 1, null, error),
      kept: [
        { km: 10, aboveM: 200, own: levelled(-9) },
        { km: 20, aboveM: -100, own: levelled(-3) },
      ],
    };
    const { errors } = leaveOutErrors(4, [station])!;
    expect(errors).toMatchObject({
      hours: 4,
      stations: 1,
      mean_error_c: 1.5,
      bias_c: -1.5,
      nearest_mean_error_c: 3,
    });
    // (4 * (-9 + 1.3) + 1 * (-3 - 0.65)) / 5 = -6.89.
    expect(errors.inverse_distance_mean_error_c).toBeCloseTo(0.89, 3);
    expect(errors.interval).toEqual({ coverage: 0, mean_width_c: 2, score_c: 2 + 20 * 0.5 });
    expect(errors.same_winters.mean_width_c).toBeCloseTo(2 * 1.6449, 3);
  });
});
