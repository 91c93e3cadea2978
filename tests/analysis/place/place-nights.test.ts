import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nightPlan, type NightPlan } from '../../../analysis/place/night-plan.ts';
import { placeHistory } from '../../../analysis/place/place-history.ts';
import { PlaceModel } from '../../../analysis/place/place-model.ts';
import { placeNights } from '../../../analysis/place/place-nights.ts';
import { USUAL_PARAMETERS } from '../../../analysis/place/place-parameters.ts';
import type { Site } from '../../../analysis/place/site.ts';
import type { KeptNights } from '../../../analysis/records/kept-nights.ts';
import {
  COOL_HOURS_UNKNOWN,
  MISSING_HUNDREDTHS,
  NIGHT_KINDS,
  SUSTAINED_HOURS,
} from '../../../analysis/records/nights.ts';
import { countHitNights, hitNights, hitsByWinter } from '../../../analysis/winter/hit-nights.ts';
import { winterMinima } from '../../../analysis/winter/winter-minima.ts';
import { winterOf } from '../../../analysis/winter/winter-year.ts';
import { InventedLand } from './invented-land.ts';
import { coolHoursOf, inventedNights, type InventedNights, type NightsPlan } from './invented-nights.ts';

const WINTERS = 14;
const land = new InventedLand({ seed: 1, winters: 1 });
const GAINS = { calmC: 1.5, windyC: 0.5 };

interface Estimated {
  readonly plan: NightPlan;
  readonly nights: KeptNights;
}

function estimate({ members, nights }: InventedNights, site: Site): Estimated {
  const model = new PlaceModel(members, USUAL_PARAMETERS);
  const plan = nightPlan(model, site, placeHistory(model, site))!;
  const ids = members.map(({ id }) => id);
  return {
    plan,
    nights: placeNights(
      plan,
      plan.stationIds.map((id) => nights[ids.indexOf(id)]),
    ),
  };
}

/** Coldest of the nights by kind, hours and winter against the winters' own, both with MISSING_HUNDREDTHS for none. */
function expectLevelsMet({ plan, nights }: Estimated): void {
  const { winter, coldest } = plan.winters;
  const lowest = NIGHT_KINDS.map(() =>
    SUSTAINED_HOURS.map(() => new Int16Array(winter.length).fill(MISSING_HUNDREDTHS)),
  );
  nights.day.forEach((_, i) =>
    nights.sustained.forEach((own, j) => {
      const at = lowest[nights.kind[i]][j];
      const w = nights.winter[i] - winter[0];
      if (own[i] !== MISSING_HUNDREDTHS && (at[w] === MISSING_HUNDREDTHS || own[i] < at[w])) at[w] = own[i];
    }),
  );
  expect(lowest).toEqual(coldest);
}

/** Plain loops: a matcher for each of some thousand nights would take minutes. */
function expectSound({ day, winter, kind, sustained }: KeptNights, hemisphere: 'north' | 'south'): void {
  const wrong: string[] = [];
  for (let i = 0; i < day.length; i++) {
    const levels = sustained.map((own) => own[i]);
    if (i > 0 && day[i] <= day[i - 1]) wrong.push(`night ${i}: not after the one before`);
    if (winter[i] !== winterOf(day[i], hemisphere)) wrong.push(`night ${i}: not in its winter`);
    if (!(kind[i] < NIGHT_KINDS.length)) wrong.push(`night ${i}: kind ${kind[i]}`);
    if (!(levels[0] > -9000 && levels[0] <= 1000)) wrong.push(`night ${i}: minimum ${levels[0]}`);
    if (levels.some((level, j) => level < levels[Math.max(0, j - 1)])) wrong.push(`night ${i}: ${levels}`);
  }
  expect(wrong).toEqual([]);
}

const plans = fc.record({
  seed: fc.integer({ min: 1, max: 500 }),
  stations: fc.integer({ min: 1, max: 14 }),
  middleC: fc.integer({ min: -6, max: 11 }),
  gaps: fc.constantFrom(0, 0.2, 0.5),
  south: fc.boolean(),
});
function made({ stations, south, ...rest }: Omit<NightsPlan, 'sites' | 'winters'> & { stations: number }) {
  const ground = new InventedLand({ seed: 1, winters: 1, side: south ? -1 : 1 });
  const sites = ground.scattered(stations, 60, 500, rest.seed);
  return { of: inventedNights({ ...rest, south, winters: WINTERS, sites }), site: ground.site(3, 4, 250) };
}

describe('the nights of a point among stations', () => {
  it('have the coldest of every winter, kind and duration exactly where the winters of the point have it', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const { of, site } = made(plan);
        const point = estimate(of, site);
        expectLevelsMet(point);
        expectSound(point.nights, plan.south ? 'south' : 'north');
      }),
      { numRuns: 25, seed: 5 },
    );
  });

  it('hit in the winters that the winters say, for any limit, hours and gains', () => {
    const { of, site } = made({ seed: 8, stations: 9, middleC: 0, gaps: 0.2 });
    const { plan, nights } = estimate(of, site);
    for (const hours of SUSTAINED_HOURS)
      for (const limitC of [-8, -5.5, -2.2222, 0, 4]) {
        const told = winterMinima(plan.winters, hours, GAINS);
        const fromWinters = [...plan.winters.winter].filter(
          (_, w) => told[w] !== MISSING_HUNDREDTHS && told[w] <= Math.round(100 * limitC),
        );
        const winters = hitsByWinter(nights, plan.winters, { hours, limitC, gains: GAINS });
        expect(winters.map(({ winter }) => winter)).toEqual(fromWinters);
      }
  });

  // The generator's own nights at the point, which no station knows, are the truth.
  it('are as many and as early and late as those a station there would have', () => {
    const sites = land.scattered(14, 60, 500, 3);
    const hidden = [land.site(5, 5, 100), land.site(-20, 10, 300), land.site(15, -25, 450)];
    const all = inventedNights({ seed: 21, winters: WINTERS, sites: [...sites, ...hidden] });
    const known = { members: all.members.slice(0, 14), nights: all.nights.slice(0, 14) };
    const limit = { hours: 4, limitC: -2.2222, gains: { calmC: 0, windyC: 0 } };
    let [estimated, true_, shifted] = [0, 0, 0];
    const late: number[] = [];
    hidden.forEach((site, h) => {
      const { plan, nights } = estimate(known, site);
      const truth = all.nights[14 + h];
      estimated += countHitNights(nights, plan.winters, limit);
      true_ += countHitNights(truth, plan.winters, limit);
      // The stations' own nights, unmoved, are no answer at another height.
      shifted += countHitNights(known.nights[0], plan.winters, limit);
      const firsts = [nights, truth].map((own) => hitsByWinter(own, plan.winters, { ...limit, limitC: 0 }));
      firsts[0].forEach(({ winter, firstDay }) => {
        const same = firsts[1].find((other) => other.winter === winter);
        if (same) late.push(firstDay - same.firstDay);
      });
    });
    expect(true_).toBeGreaterThan(100);
    expect(estimated / true_).toBeGreaterThan(0.85);
    expect(estimated / true_).toBeLessThan(1.15);
    expect(Math.abs(shifted / true_ - 1)).toBeGreaterThan(0.15);
    expect(Math.abs(late.reduce((sum, days) => sum + days, 0) / late.length)).toBeLessThan(7);
  });

  it('of a point that one station tells of are that station’s mornings', () => {
    const of = inventedNights({ seed: 4, winters: WINTERS, sites: [land.site(0, 0, 100)] });
    const { nights } = estimate(of, land.site(4, 0, 100));
    const own = new Set(of.nights[0].day);
    expect(nights.day.length).toBeGreaterThan(0.9 * own.size);
    expect([...nights.day].every((day) => own.has(day))).toBe(true);
  });

  it('move with the stations: a degree warmer there is a degree warmer here', () => {
    const sites = land.scattered(6, 50, 0);
    const [cold, warm] = [-8, -7].map((middleC) =>
      estimate(inventedNights({ seed: 2, winters: WINTERS, sites, middleC }), land.site(1, 1, 0)),
    );
    const limit = (limitC: number) => ({ hours: 4, limitC, gains: { calmC: 0, windyC: 0 } });
    const days = ({ nights }: Estimated, limitC: number) =>
      hitNights(nights, limit(limitC)).map(({ day }) => day);
    const [a, b] = [days(cold, -6.005), days(warm, -5.005)];
    expect(a.length).toBeGreaterThan(200);
    // Winters that the model takes from logarithms and kriging differ in the last hundredth.
    expect(a.filter((day) => b.includes(day)).length).toBeGreaterThan(0.99 * Math.max(a.length, b.length));
  });

  it('are the station’s own where the point stands on one: there is nothing to plan', () => {
    const of = inventedNights({ seed: 4, winters: WINTERS, sites: land.scattered(5, 30, 100) });
    const model = new PlaceModel(of.members, USUAL_PARAMETERS);
    const { site } = of.members[2];
    const history = placeHistory(model, site);
    expect(history.onStation).toBe('N02');
    expect(nightPlan(model, site, history)).toBeNull();
  });

  it('are there even where only the mountain is cold: one a winter and kind, in its middle', () => {
    const mild = new InventedLand({ seed: 9, winters: 30, middleC: 15 });
    const members = mild.members(mild.scattered(6, 80, 0));
    const model = new PlaceModel(members, USUAL_PARAMETERS);
    const site = mild.site(10, 10, 2400);
    const plan = nightPlan(model, site, placeHistory(model, site))!;
    const none: KeptNights = {
      day: new Int32Array(0),
      winter: new Int16Array(0),
      kind: new Uint8Array(0),
      sustained: SUSTAINED_HOURS.map(() => new Int16Array(0)),
      coolHours: new Int16Array(0),
    };
    const nights = placeNights(
      plan,
      plan.stationIds.map(() => none),
    );
    expectLevelsMet({ plan, nights });
    expectSound(nights, 'north');
  });

  it('have cool hours between those of the stations around', () => {
    const { of, site } = made({ seed: 3, stations: 5, middleC: 0, gaps: 0 });
    const { nights } = estimate(of, site);
    expect(nights.coolHours.length).toBe(nights.day.length);
    const known = [...nights.coolHours].filter((hours) => hours !== COOL_HOURS_UNKNOWN);
    expect(known.length).toBeGreaterThan(0.9 * nights.day.length);
    expect(Math.min(...known)).toBeGreaterThanOrEqual(coolHoursOf(0));
    expect(Math.max(...known)).toBeLessThanOrEqual(coolHoursOf(4));
    expect(new Set(known).size).toBeGreaterThan(1);
  });

  it('ask for the nights of six stations at most when all have their winters', () => {
    const { of, site } = made({ seed: 3, stations: 14, middleC: 0, gaps: 0 });
    const { plan } = estimate(of, site);
    expect(plan.stationIds.length).toBeLessThanOrEqual(6);
    for (const sources of plan.sources) {
      expect(sources!.parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 12);
      expect(sources!.stations.length).toBeLessThanOrEqual(6);
    }
  });
});
