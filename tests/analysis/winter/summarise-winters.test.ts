import { describe, expect, it } from 'vitest';
import { nightsFromDaily } from '../../../analysis/night/nights-from-daily.ts';
import {
  MISSING_HUNDREDTHS,
  NIGHT_KINDS,
  SUSTAINED_HOURS,
  type NightTable,
} from '../../../analysis/records/nights.ts';
import { dayNumber, parseIsoDay } from '../../../analysis/units/calendar.ts';
import { summariseWinters } from '../../../analysis/winter/summarise-winters.ts';
import { gainsByKindC, winterMinima } from '../../../analysis/winter/winter-minima.ts';

/** Nights of 8 °C throughout, but for the nights named: [date, kind, S_0 in hundredths]; S_h rises 10 a step of hours. */
function nightsWith(
  first: string,
  last: string,
  cold: [string, (typeof NIGHT_KINDS)[number], number][],
): NightTable {
  const firstNight = parseIsoDay(first)!;
  const count = parseIsoDay(last)! - firstNight + 1;
  const sustained = SUSTAINED_HOURS.map((_, j) => new Int16Array(count).fill(800 + 10 * j));
  const kind = new Uint8Array(count).fill(NIGHT_KINDS.indexOf('unclear'));
  for (const [date, name, level] of cold) {
    const i = parseIsoDay(date)! - firstNight;
    kind[i] = NIGHT_KINDS.indexOf(name);
    sustained.forEach((column, j) => (column[i] = level === MISSING_HUNDREDTHS ? level : level + 10 * j));
  }
  const fill = () => new Int16Array(count).fill(MISSING_HUNDREDTHS);
  return {
    firstNight,
    count,
    kind,
    basis: new Uint8Array(count),
    tmin: sustained[0],
    tmaxBefore: fill(),
    tmaxAfter: fill(),
    sustained,
    coolHours: fill(),
  };
}

const FOUR = SUSTAINED_HOURS.indexOf(4);

describe('winters of a station', () => {
  const nights = nightsWith('1988-07-01', '1991-06-30', [
    ['1989-12-24', 'windy', -900],
    ['1990-01-10', 'calm', -950],
    ['1990-02-01', 'calm', -950],
    ['1991-04-20', 'calm', -300],
  ]);
  const winters = summariseWinters(nights, 'north');

  it('keeps the coldest level and its first night for each kind, outside the cold months too', () => {
    expect([...winters.winter]).toEqual([1989, 1990, 1991]);
    const [calm, windy] = winters.coldest;
    expect([...windy[0]]).toEqual([MISSING_HUNDREDTHS, -900, MISSING_HUNDREDTHS]);
    expect([...calm[0]]).toEqual([MISSING_HUNDREDTHS, -950, -300]);
    expect(winters.coldestDay[0][0][1]).toBe(dayNumber(1990, 1, 10));
    expect(calm[FOUR][1]).toBe(-950 + 10 * FOUR);
    expect([...winters.complete]).toEqual([1, 1, 1]);
  });

  it('takes the smallest of level plus gain over the kinds of night, so a cover on calm nights leaves the windy one', () => {
    expect([...winterMinima(winters, 0, { calmC: 0, windyC: 0 })]).toEqual([800, -950, -300]);
    expect([...winterMinima(winters, 0, { calmC: 3, windyC: 0 })]).toEqual([800, -900, 0]);
    expect([...winterMinima(winters, 0, { calmC: 3, windyC: 1 })]).toEqual([900, -800, 0]);
  });

  it('interpolates between the kept durations', () => {
    const [six, eight] = [6, 8].map((hours) => winterMinima(winters, hours, { calmC: 0, windyC: 0 })[2]);
    expect(winterMinima(winters, 7, { calmC: 0, windyC: 0 })[2]).toBe((six + eight) / 2);
  });

  it('gives an unclear night the smaller of the two gains', () => {
    expect(gainsByKindC({ calmC: 4, windyC: 1 })).toEqual([4, 1, 1]);
    expect(gainsByKindC({ calmC: 0, windyC: 2 })).toEqual([0, 2, 0]);
  });

  it('does not count a cold night whose sustained cold is unknown as present', () => {
    const holes = nightsWith('1988-07-01', '1989-06-30', [
      ['1989-01-03', 'calm', -100],
      ['1989-01-04', 'calm', -100],
      ['1989-01-05', 'calm', -100],
      ['1989-01-06', 'calm', -100],
    ]);
    for (const date of ['1989-01-03', '1989-01-04', '1989-01-05', '1989-01-06']) {
      holes.sustained[FOUR][parseIsoDay(date)! - holes.firstNight] = MISSING_HUNDREDTHS;
    }
    expect(summariseWinters(holes, 'north').reason).toEqual(['January misses 4 nights']);
  });

  it('counts the winters of a record of minima alone, but not nights without a minimum', () => {
    const firstDay = dayNumber(1999, 7, 1);
    const days = dayNumber(2001, 7, 1) - firstDay;
    const station = { id: 'ZZ1', name: 'Minima', lat: 31, lon: -42, elevationM: 5 };
    const series = {
      station,
      firstDay,
      tminC: new Float64Array(days).fill(4),
      tmaxC: new Float64Array(days).fill(NaN),
      windMs: new Float64Array(days).fill(NaN),
    };
    const complete = (tminC: Float64Array, tmaxC = series.tmaxC): number[] => [
      ...summariseWinters(nightsFromDaily({ ...series, tminC, tmaxC }), 'north').complete,
    ];
    expect(complete(series.tminC)).toEqual([1, 1]);
    expect(complete(new Float64Array(days).fill(11))).toEqual([1, 1]);
    expect(complete(series.tminC, new Float64Array(days).fill(14).fill(NaN, 200, 240))).toEqual([1, 1]);
    const short = series.tminC.slice().fill(NaN, 0, 200);
    expect(complete(short)).toEqual([0, 1]);
    expect(summariseWinters(nightsFromDaily({ ...series, tminC: short }), 'north').reason[0]).toMatch(
      /^only \d+ of 152 nights$/,
    );
  });

  it('marks a winter without a night at or below 10 °C as such, not as unknown', () => {
    const warm = nightsWith('1988-07-01', '1989-06-30', []);
    warm.sustained.forEach((column) => column.fill(1500));
    const summary = summariseWinters(warm, 'north');
    expect([...summary.complete]).toEqual([1]);
    expect([...winterMinima(summary, 4, { calmC: 0, windyC: 0 })]).toEqual([MISSING_HUNDREDTHS]);
  });
});
