import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverGains } from '../../../analysis/cover/cover-gains.ts';
import { MEASURE_IDS } from '../../../analysis/cover/cover-ids.ts';
import { ACTION_MARGIN_C, coverNights } from '../../../analysis/cover/cover-nights.ts';
import { forgetting } from '../../../analysis/cover/forgetting.ts';
import { countingIds, refusals } from '../../../analysis/cover/refusals.ts';
import { countHits } from '../../../analysis/extremes/counted.ts';
import { wilsonInterval } from '../../../analysis/extremes/wilson.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import { keptNights, type KeptNights } from '../../../analysis/records/kept-nights.ts';
import { SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import { toHundredths } from '../../../analysis/units/temperature.ts';
import { countHitNights, hitNights } from '../../../analysis/winter/hit-nights.ts';
import { NO_GAINS, winterMinima } from '../../../analysis/winter/winter-minima.ts';
import { inventedNights, wintersOfNights } from '../place/invented-nights.ts';

const WINTERS = 25;
const site = { lat: 31, lon: -42, elevationM: 20, coastKm: 10 };
const { members, nights: stationNights } = inventedNights({
  seed: 4,
  winters: WINTERS,
  sites: [site],
  gaps: 0.2,
});
const [nights] = stationNights;
const { winters } = members[0];

/** Nights of one winter (2001) given as day and level in hundredths, all hours alike. */
function nightsOf(rows: readonly (readonly [day: number, kind: number, hundredths: number])[]): KeptNights {
  return keptNights(rows.map(([day, kind, level]) => [day, 2001, kind, ...SUSTAINED_HOURS.map(() => level)]));
}
const ONE_WINTER = { winter: Int16Array.of(2001), complete: Uint8Array.of(1) };

describe('nights to cover', () => {
  it('are saved, lost or only covered, judged at the hundredth', () => {
    const given = nightsOf([
      [100, 0, -500],
      [101, 0, -501],
      [102, 0, -200],
      [103, 0, -89],
      [104, 0, -88],
      [110, 1, -250],
      [120, 2, -250],
    ]);
    const record = coverNights(given, ONE_WINTER, {
      hours: 4,
      limitC: -2,
      without: NO_GAINS,
      withCover: { calmC: 3.01, windyC: 0 },
    });
    expect(record.nights.map(({ day, outcome, spell }) => [day, outcome, spell])).toEqual([
      [100, 'saved', 1],
      [101, 'lost', 1],
      [102, 'saved', 1],
      [103, 'only covered', 1],
      [110, 'lost', 2],
      [120, 'lost', 3],
    ]);
    expect(record.nights[0].coveredC).toBe(-1.99);
    expect(record.toCover).toEqual({ total: 6, perWinter: 6, worst: { winter: 2001, nights: 6 } });
    expect(record.spells.total).toBe(3);
  });

  it('counts means over complete winters and lists the others', () => {
    const record = coverNights(
      nightsOf([[100, 0, -500]]),
      { winter: Int16Array.of(2000, 2001, 2002), complete: Uint8Array.of(1, 0, 1) },
      { hours: 4, limitC: -2, without: NO_GAINS, withCover: NO_GAINS },
    );
    expect(record.completeWinters).toBe(2);
    expect(record.toCover).toEqual({ total: 0, perWinter: 0, worst: null });
    expect(record.nights).toHaveLength(1);
    expect(record.winters[0]).toMatchObject({ winter: 2001, complete: false, lost: 1 });
  });

  it('says nothing of means without a complete winter', () => {
    const none = { winter: Int16Array.of(2001), complete: Uint8Array.of(0) };
    const record = coverNights(nightsOf([]), none, {
      hours: 0,
      limitC: 0,
      without: NO_GAINS,
      withCover: NO_GAINS,
    });
    expect(record.lost).toEqual({ total: 0, perWinter: null, worst: null });
  });

  it('refuses a cover that makes it colder, and hours that are not kept', () => {
    const question = { hours: 4, limitC: -2, without: { calmC: 1, windyC: 0 }, withCover: NO_GAINS };
    expect(() => coverNights(nights, winters, question)).toThrow(RangeError);
    expect(() => coverNights(nights, winters, { ...question, without: NO_GAINS, hours: 7 })).toThrow(
      /not for 7/,
    );
  });
});

const degrees = fc.integer({ min: 0, max: 800 }).map((hundredths) => hundredths / 100);
const question = fc
  .record({
    hours: fc.constantFrom(...SUSTAINED_HOURS),
    limitC: fc.integer({ min: -1400, max: 300 }).map((hundredths) => hundredths / 100),
    spotCalm: degrees,
    spotWindy: fc.integer({ min: -100, max: 300 }).map((hundredths) => hundredths / 100),
    calm: degrees,
    windy: degrees,
  })
  .map(({ hours, limitC, spotCalm, spotWindy, calm, windy }) => ({
    hours,
    limitC,
    without: { calmC: spotCalm, windyC: spotWindy },
    withCover: { calmC: spotCalm + calm, windyC: spotWindy + windy },
  }));

describe('nights to cover against the count of hits', () => {
  it('saved and lost are the hits without the cover, lost those with it, covered those 2 °F above', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const { hours, limitC, without, withCover } = asked;
        const { saved, lost, toCover, nights: list } = coverNights(nights, winters, asked);
        expect(saved.total + lost.total).toBe(
          countHitNights(nights, winters, { hours, limitC, gains: without }),
        );
        expect(lost.total).toBe(countHitNights(nights, winters, { hours, limitC, gains: withCover }));
        const warmer = toHundredths(limitC) / 100 + toHundredths(ACTION_MARGIN_C) / 100;
        expect(toCover.total).toBe(
          countHitNights(nights, winters, { hours, limitC: warmer, gains: without }),
        );
        expect(
          list.filter(({ outcome }) => outcome === 'lost').map(({ day, coveredC }) => [day, coveredC]),
        ).toEqual(
          hitNights(nights, { hours, limitC, gains: withCover }).map(({ day, levelC }) => [day, levelC]),
        );
      }),
      { numRuns: 150 },
    );
  });

  it('more cover never loses more nights, and never shortens the counted period', () => {
    fc.assert(
      fc.property(question, degrees, (asked, more) => {
        const { calmC, windyC } = asked.withCover;
        const larger = { calmC: calmC + more, windyC: windyC + more / 2 };
        const less = coverNights(nights, winters, asked);
        const all = coverNights(nights, winters, { ...asked, withCover: larger });
        expect(all.lost.total).toBeLessThanOrEqual(less.lost.total);
        expect(all.toCover).toEqual(less.toCover);
        expect(forgetting(all).faithful.period).toBeGreaterThanOrEqual(forgetting(less).faithful.period);
        expect(forgetting(all).forgetting.hits).toBeLessThanOrEqual(forgetting(less).forgetting.hits + 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it('another measure never shortens the counted period', () => {
    const under = (ids: readonly string[]): number => {
      const { leaf } = coverGains(ids);
      const withCover = { calmC: leaf.calm.centreC, windyC: leaf.windy.centreC };
      const asked = { hours: 4, limitC: -8, without: NO_GAINS, withCover };
      return forgetting(coverNights(nights, winters, asked)).faithful.period;
    };
    const choices = [...MEASURE_IDS, 'tied', 'lights-confirmed'];
    const periods = new Set<number>();
    fc.assert(
      fc.property(fc.subarray(choices), fc.constantFrom(...choices), (some, more) => {
        const ids = countingIds(some);
        fc.pre(refusals([...ids, more]).length === 0);
        const [less, all] = [under(ids), under([...ids, more])];
        expect(all).toBeGreaterThanOrEqual(less);
        periods.add(less);
      }),
      { numRuns: 150 },
    );
    expect(periods.size).toBeGreaterThan(2);
  });

  it('winters lost are the winters that the count of winters hits', () => {
    const own = wintersOfNights(
      nights,
      WINTERS,
      Array.from(winters.complete, (complete) => complete === 0),
    );
    fc.assert(
      fc.property(question, (asked) => {
        const values = (gains: typeof asked.without): number[] =>
          Array.from(winterMinima(own, asked.hours, gains))
            .filter((_, w) => own.complete[w] === 1)
            .map((value) => (value === -32768 ? NaN : value / 100));
        const { bare, faithful } = forgetting(coverNights(nights, own, asked));
        expect(bare.hits).toBe(countHits(values(asked.without), asked.limitC));
        expect(faithful.hits).toBe(countHits(values(asked.withCover), asked.limitC));
      }),
      { numRuns: 100 },
    );
  });
});

describe('forgetting one night in ten', () => {
  const winter = (label: number, saved: number, lost: number, complete = true) => ({
    winter: label,
    complete,
    toCover: saved + lost,
    saved,
    lost,
    spells: 1,
  });

  it('costs a winter with 1 - 0.9^saved, a lost one anyway', () => {
    const record = {
      completeWinters: 10,
      winters: [winter(2001, 1, 0), winter(2002, 3, 0), winter(2003, 5, 1), winter(2004, 9, 9, false)],
    };
    const { bare, faithful, forgetting: forgot } = forgetting(record);
    expect([bare.hits, faithful.hits]).toEqual([3, 1]);
    expect(forgot.hits).toBeCloseTo(1 + 0.1 + 0.271, 12);
    expect(forgot.period).toBeCloseTo(10 / 1.371, 12);
    const range = wilsonInterval(1.371, 10);
    expect(forgot.low).toBeCloseTo(1 / range.high, 9);
    expect(forgot.high).toBeCloseTo(1 / range.low, 9);
  });

  it('never lies outside all forgotten and none forgotten, which are the ends', () => {
    const record = coverNights(nights, winters, {
      hours: 4,
      limitC: -8,
      without: NO_GAINS,
      withCover: { calmC: 2, windyC: 1 },
    });
    const at = (missed: number) => forgetting(record, missed);
    expect(at(0).forgetting).toEqual(at(0).faithful);
    expect(at(1).forgetting).toEqual(at(1).bare);
    expect(at(0.1).forgetting.hits).toBeGreaterThan(at(0.1).faithful.hits);
    expect(at(0.1).forgetting.hits).toBeLessThan(at(0.1).bare.hits);
    expect(() => at(1.1)).toThrow(RangeError);
  });

  it('agrees with simulated forgetting', () => {
    const record = coverNights(nights, winters, {
      hours: 4,
      limitC: -8,
      without: NO_GAINS,
      withCover: { calmC: 2, windyC: 1 },
    });
    const random = seededRandom(11);
    const runs = 4000;
    let lostWinters = 0;
    for (let run = 0; run < runs; run++) {
      const lost = new Set<number>();
      for (const { winter: label, complete, outcome } of record.nights) {
        if (!complete || outcome === 'only covered') continue;
        if (outcome === 'lost' || random.uniform() < 0.1) lost.add(label);
      }
      lostWinters += lost.size;
    }
    // At most 20 uncertain winters, so the mean of 4,000 runs errs by less than 0.036 (one standard error).
    expect(Math.abs(lostWinters / runs - forgetting(record).forgetting.hits)).toBeLessThan(0.11);
  });
});
