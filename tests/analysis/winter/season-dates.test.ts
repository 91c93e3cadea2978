import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DATE_CHANCES } from '../../../analysis/answer/year.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import { datedWinters, winterDates } from '../../../analysis/winter/dated-winters.ts';
import { noSeasonDates, seasonDates } from '../../../analysis/winter/season-dates.ts';
import { seasonDayOfDate, seasonDayText } from '../../../analysis/winter/season-day.ts';
import { NO_GAINS } from '../../../analysis/winter/winter-minima.ts';
import { winterDraws } from '../../../analysis/winter/winter-draws.ts';
import { normalDates } from '../../reference/dates/compare-ways.ts';
import reference from '../../reference/dates/r-values.json';
import { completeWinters, nightsByDate } from './nights-by-date.ts';

const FREEZE = { hours: 0, limitC: 0, gains: NO_GAINS };
const days = (values: readonly (number | null)[]): Float64Array =>
  Float64Array.from(values, (value) => value ?? NaN);
const told = (chanced: readonly { day: number | null }[]) => chanced.map(({ day }) => day);
const dates = (first: Float64Array, last = first, draws = 200) =>
  seasonDates({ first, last }, winterDraws(first.length, draws, 1), DATE_CHANCES);
const text = (day: number | null) => (day === null ? null : seasonDayText(day, 'north'));

describe('the mixed distribution of dates', () => {
  /*
   * Our own worked table by the published definition (Thom and Shaw 1958; NOAA's freeze probabilities, S44): a share of
   * seasons without a freeze, and the dates of the others. Nine winters, three without: share without 3/9.
   * First nights: 20 Nov, 1 Dec, 5 Dec, 11 Dec, 20 Dec, 3 Jan, at chances of all winters 1/10, 2/10, ... 6/10.
   * 10 %: 20 Nov. 25 %: half way from 1 to 5 Dec = 3 Dec. 50 %: 20 Dec. 75 % and 90 %: more than the 6/9 that had one.
   * Last nights: 10 Mar, 1 Mar, 27 Feb, 14 Feb, 20 Jan, 3 Jan. 10 %: 10 Mar. 25 %: between 1 Mar and 27 Feb, which lie
   * three numbers apart because 28 and 29 Feb each have one: 28 or 29 Feb. 50 %: 20 Jan.
   */
  const nights = nightsByDate([
    ['2000-12-05', -1],
    ['2001-01-20', 0],
    ['2001-02-27', -3],
    ['2001-12-20', -1],
    ['2002-03-01', -0.01],
    ['2002-12-01', -2],
    ['2003-03-10', -2],
    ['2004-01-03', -2],
    ['2005-11-20', -1],
    ['2006-02-14', -1],
    ['2006-12-11', -1],
    ['2007-01-20', -1],
    // Above the limit, in a winter without.
    ['2007-12-24', 0.01],
  ]);
  const table = datedWinters(completeWinters(2001, 2009), 'north');
  const answer = dates(
    ...(Object.values(winterDates(nights, table, FREEZE, 'north')) as [Float64Array, Float64Array]),
  );

  it('tells the share without and the dates of a table worked by hand', () => {
    expect([answer.winters, answer.without]).toEqual([9, 3]);
    expect(answer.first.map(({ day }) => text(day))).toEqual(['11-20', '12-03', '12-20', null, null]);
    expect(text(answer.last[0].day)).toBe('03-10');
    expect(['02-28', '02-29']).toContain(text(answer.last[1].day));
    expect(text(answer.last[2].day)).toBe('01-20');
    expect(told(answer.last).slice(3)).toEqual([null, null]);
    expect([text(answer.earliest), text(answer.latest)]).toEqual(['11-20', '03-10']);
  });

  it('multiplies the share with a night by the distribution of its dates', () => {
    // P(come by d) = (1 - q) F(d): with F the i/(k + 1)-like share of the others, q = 1/3.
    const q = answer.without / answer.winters;
    const others = [142, 153, 157, 163, 172, 186];
    answer.first.forEach(({ chance, day }) => {
      if (day === null) return expect(chance).toBeGreaterThan(1 - q);
      const within = others.filter((other) => other <= day).length / others.length;
      expect((1 - q) * within).toBeGreaterThan(chance - 1 / 9);
      expect((1 - q) * within).toBeLessThan(chance + 1 / 9);
    });
  });

  it('are those of R (quantile type 6, winters without at infinity)', () => {
    const { first } = dates(days(reference.made.days));
    expect(told(first).map((day) => day && Number(day.toFixed(9)))).toEqual(reference.made.ranked);
  });

  it("the normal distribution it is compared with is R's (qnorm of chance over share)", () => {
    const having = reference.made.days.filter((day) => day !== null).sort((a, b) => a - b);
    reference.made.normal.forEach((expected, c) => {
      if (expected === null) return;
      expect(normalDates(having, reference.made.days.length, DATE_CHANCES[c])).toBeCloseTo(expected, 7);
    });
  });

  it('has no day for a chance that just as many winters make up', () => {
    // Nine of ten had one: rank 0.9 * 11 lies between the last of them and the one without.
    const { first } = dates(days([150, 151, 152, 153, 154, 155, 156, 157, 158, null]));
    expect(first[3].day).toBe(157.25);
    expect(first[4].day).toBe(null);
    expect(dates(days([150, 151, 152, null, null, null, null, null, null, null])).first[1].day).toBe(151.75);
    // With fewer than nine winters the earliest stands for one in ten.
    expect(dates(days([150, null, 160])).first[0].day).toBe(150);
  });

  it('without any night, and without any winter', () => {
    const none = dates(days([null, null, null]));
    expect(none).toMatchObject({ winters: 3, without: 3, earliest: null, latest: null });
    for (const { day, low, high } of [...none.first, ...none.last])
      expect([day, low, high]).toEqual([null, null, null]);
    expect(noSeasonDates(DATE_CHANCES)).toMatchObject({ winters: 0, earliest: null });
    expect(() => winterDraws(0, 10, 1)).toThrow(RangeError);
    expect(() =>
      seasonDates({ first: days([1]), last: days([1]) }, winterDraws(2, 10, 1), DATE_CHANCES),
    ).toThrow(/2 winters/);
  });
});

describe('days and winters that count', () => {
  it('number a date alike in leap years and others, and 29 February by itself', () => {
    const nights = nightsByDate([
      ['2003-03-01', -1],
      ['2004-02-29', -1],
      ['2005-02-28', -1],
    ]);
    const own = winterDates(nights, datedWinters(completeWinters(2003, 2005), 'north'), FREEZE, 'north');
    expect(Array.from(own.last, text)).toEqual(['03-01', '02-29', '02-28']);
    expect(own.last[0] - own.last[2]).toBe(2);
  });

  it('south of the equator winters are calendar years', () => {
    const nights = nightsByDate(
      [
        ['2001-05-20', -1],
        ['2001-09-02', -1],
        ['2002-07-01', -1],
      ],
      'south',
    );
    const table = datedWinters(completeWinters(2001, 2002), 'south');
    const own = winterDates(nights, table, FREEZE, 'south');
    expect(Array.from(own.first)).toEqual([seasonDayOfDate(5, 20, 'south'), seasonDayOfDate(7, 1, 'south')]);
    expect(seasonDayText(dates(own.first, own.last).latest!, 'south')).toBe('09-02');
  });

  it('leaves out incomplete winters and those without October or April, with the reason', () => {
    const table = {
      ...completeWinters(2001, 2003),
      complete: Uint8Array.of(1, 0, 1),
      reason: ['', 'January misses 9 nights', ''],
    };
    expect(datedWinters(table, 'north')).toEqual({
      winters: [2001, 2003],
      leftOut: [{ winter: 2002, reason: 'January misses 9 nights' }],
      byShoulderMonths: false,
    });
    const whole = datedWinters({ ...table, datesWhole: Uint8Array.of(1, 1, 0) }, 'south');
    expect(whole.winters).toEqual([2001]);
    expect(whole.byShoulderMonths).toBe(true);
    expect(whole.leftOut[1]).toEqual({ winter: 2003, reason: 'April or October misses more than 3 nights' });
  });
});

const series = fc.array(fc.option(fc.integer({ min: 60, max: 330 }), { nil: NaN }), {
  minLength: 1,
  maxLength: 45,
});

describe('properties of dates', () => {
  it('a colder limit has no fewer winters without and never an earlier first or later last date', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.integer({ min: 0, max: 19 }),
            fc.integer({ min: 0, max: 212 }),
            fc.integer({ min: -9, max: 1 }),
          ),
          { minLength: 1, maxLength: 120 },
        ),
        fc.integer({ min: -9, max: 0 }),
        fc.integer({ min: 0, max: 4 }),
        (rows, limitC, colder) => {
          const start = Date.UTC(2000, 9, 1);
          const seen = new Map(
            rows.map(([winter, day, levelC]): [string, number] => {
              const date = new Date(start + 86_400_000 * day);
              date.setUTCFullYear(date.getUTCFullYear() + winter);
              return [date.toISOString().slice(0, 10), levelC];
            }),
          );
          const nights = nightsByDate([...seen]);
          const table = datedWinters(completeWinters(2001, 2020), 'north');
          const [warm, cold] = [limitC, limitC - colder].map((limit) => {
            const own = winterDates(nights, table, { ...FREEZE, limitC: limit }, 'north');
            return dates(own.first, own.last);
          });
          expect(cold.without).toBeGreaterThanOrEqual(warm.without);
          cold.first.forEach((own, c) => {
            for (const end of ['day', 'low', 'high'] as const) {
              expect(own[end] ?? Infinity).toBeGreaterThanOrEqual(warm.first[c][end] ?? Infinity);
              expect(cold.last[c][end] ?? -Infinity).toBeLessThanOrEqual(warm.last[c][end] ?? -Infinity);
            }
          });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('more winters have one by a later date, ranges hold the date, the draws are the same every time', () => {
    fc.assert(
      fc.property(series, (values) => {
        const first = days(values);
        const answer = dates(first);
        expect(dates(first)).toEqual(answer);
        let before = -Infinity;
        for (const { day, low, high, chance } of answer.first) {
          const having = values.filter((value) => !Number.isNaN(value)).length;
          expect(day === null).toBe(having < Math.max(1, chance * (values.length + 1)));
          if (day === null) continue;
          expect(day).toBeGreaterThanOrEqual(before);
          expect(low!).toBeLessThanOrEqual(day);
          expect(high ?? Infinity).toBeGreaterThanOrEqual(day);
          expect(day).toBeGreaterThanOrEqual(answer.earliest!);
          expect(day).toBeLessThanOrEqual(answer.latest!);
          before = day;
        }
      }),
    );
  });

  it('told backwards, a first date is a last date', () => {
    fc.assert(
      fc.property(series, (values) => {
        const first = days(values);
        const answer = dates(
          first,
          first.map((day) => 365 - day),
        );
        const back = (day: number | null): number | null => (day === null ? null : 365 - day);
        answer.last.forEach(({ day, low, high }, c) => {
          const first = answer.first[c];
          expect([back(day), back(high), back(low)].map((end) => end?.toFixed(6))).toEqual(
            [first.day, first.low, first.high].map((end) => end?.toFixed(6)),
          );
        });
      }),
    );
  });

  it('ranges of 90 % hold the true date 85 to 95 times in 100', () => {
    // Days normal about 10 December with 20 days of spread, 30 % of winters without: true dates known.
    const random = seededRandom(11);
    const truth = [0.1, 0.25, 0.5].map((chance) => 162 + 20 * standardNormal(chance / 0.7));
    for (const winters of [30, 60]) {
      const held = truth.map(() => 0);
      const runs = 600;
      for (let run = 0; run < runs; run++) {
        const first = Float64Array.from({ length: winters }, () =>
          random.uniform() < 0.3 ? NaN : 162 + 20 * random.normal(),
        );
        const answer = seasonDates({ first, last: first }, winterDraws(winters, 200, run), DATE_CHANCES);
        truth.forEach((day, c) => {
          const { low, high } = answer.first[c];
          if ((low ?? Infinity) <= day && day <= (high ?? Infinity)) held[c]++;
        });
      }
      for (const count of held) {
        expect(count / runs).toBeGreaterThan(0.85);
        expect(count / runs).toBeLessThan(0.95);
      }
    }
  });
});

/** Quantiles of the standard normal at 1/7, 5/14 and 5/7, from SciPy's norm.ppf. */
function standardNormal(p: number): number {
  const known: readonly (readonly [number, number])[] = [
    [1 / 7, -1.0675705238781414],
    [5 / 14, -0.36610635680056963],
    [5 / 7, 0.5659488219328631],
  ];
  return known.find(([chance]) => Math.abs(chance - p) < 1e-9)![1];
}
