import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeHistory } from '../../../analysis/place/place-history.ts';
import { PlaceModel } from '../../../analysis/place/place-model.ts';
import { USUAL_PARAMETERS } from '../../../analysis/place/place-parameters.ts';
import { MISSING_HUNDREDTHS, NIGHT_KINDS, SUSTAINED_COUNT } from '../../../analysis/records/nights.ts';
import { InventedLand, levelsOf, wintersOf } from './invented-land.ts';

describe('sustained cold at a point', () => {
  it('is never colder for longer, within each kind of night and over all, and the coldest kind is the level', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), fc.integer({ min: 2, max: 8 }), (seed, count) => {
        const land = new InventedLand({ seed, winters: 25, share: 0.7, middleC: 2 });
        const members = land.members(land.scattered(count, 100, 500, seed));
        const model = new PlaceModel(members, USUAL_PARAMETERS);
        const site = land.site(6, 2, 150);
        const { winters } = placeHistory(model, site);
        const separations = model.separations(site);
        const weights = model.weights(separations);
        let bound = new Float64Array(25).fill(-Infinity);
        for (let j = 0; j < SUSTAINED_COUNT; j++) {
          const own = model.levelsC(j, model.climateAt(site, separations, j), weights);
          bound = own.map((level, w) => Math.max(level, bound[w]));
          levelsOf(winters, j).forEach((level, w) => {
            if (!Number.isNaN(level)) expect(level).toBeCloseTo(bound[w], 1);
          });
          if (j === 0) continue;
          for (let kind = 0; kind < NIGHT_KINDS.length; kind++)
            for (let w = 0; w < 25; w++)
              expect(winters.coldest[kind][j][w]).toBeGreaterThanOrEqual(winters.coldest[kind][j - 1][w]);
        }
      }),
      { numRuns: 25, seed: 2 },
    );
  });

  it('dates each night as a station nearby does', () => {
    const land = new InventedLand({ seed: 15, winters: 30, share: 0.8 });
    const members = land.members(land.scattered(6, 60, 100));
    const { winters } = placeHistory(new PlaceModel(members, USUAL_PARAMETERS), land.site(1, 1, 50));
    winters.coldest.forEach((byHours, kind) =>
      byHours.forEach((levels, j) =>
        levels.forEach((level, w) => {
          const dates = members.map((member) => member.winters.coldestDay[kind][j][w]);
          const date = winters.coldestDay[kind][j][w];
          if (level === MISSING_HUNDREDTHS) expect(date).toBe(0);
          else expect(dates).toContain(date);
        }),
      ),
    );
  });
});

describe('a land without frost', () => {
  it('has complete winters without a single level where no station saw a cold night', () => {
    const warm = new InventedLand({ seed: 16, winters: 30 });
    const members = warm.scattered(5, 60, 0).map((site, i) => ({
      id: `W${i}`,
      site,
      winters: wintersOf(new Float64Array(30).fill(NaN)),
    }));
    const { winters } = placeHistory(new PlaceModel(members, USUAL_PARAMETERS), warm.site(1, 1));
    expect([...winters.complete]).toEqual(new Array(30).fill(1));
    expect(winters.coldest.flat().every((levels) => levels.every((x) => x === MISSING_HUNDREDTHS))).toBe(
      true,
    );
  });

  it('has cold winters on its mountains all the same', () => {
    const land = new InventedLand({ seed: 9, winters: 30, middleC: 15 });
    const members = land.members(land.scattered(6, 80, 0));
    const { winters } = placeHistory(new PlaceModel(members, USUAL_PARAMETERS), land.site(10, 10, 2400));
    // Two kilometres and a half above shores that count as 10 °C at the warmest.
    const levels = levelsOf(winters);
    expect(levels.every((level) => level < 0)).toBe(true);
  });

  it('keeps no level above 10 °C where cold nights are rare', () => {
    const mild = new InventedLand({ seed: 17, winters: 40, share: 0.8, middleC: 9 });
    const members = mild.scattered(8, 60, 0).map((site, i) => ({
      id: `M${i}`,
      site,
      winters: wintersOf(mild.minimaC(site, i).map((x) => (x > 10 ? NaN : x))),
    }));
    const { winters } = placeHistory(new PlaceModel(members, USUAL_PARAMETERS), mild.site(1, 1));
    const minima = levelsOf(winters);
    const cold = minima.filter((level) => !Number.isNaN(level));
    expect(cold.length).toBeGreaterThan(5);
    expect(cold.length).toBeLessThan(40);
    expect(Math.max(...cold)).toBeLessThanOrEqual(10);
  });
});
