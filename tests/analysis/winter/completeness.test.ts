import { describe, expect, it } from 'vitest';
import { dayNumber, parseIsoDay } from '../../../analysis/units/calendar.ts';
import { incompleteReason, judgeCompleteness } from '../../../analysis/winter/completeness.ts';
import { coldMonths, winterBounds, winterOf } from '../../../analysis/winter/winter-year.ts';

const except = (...days: string[]) => {
  const missing = new Set(days.map((day) => parseIsoDay(day)!));
  return (night: number) => !missing.has(night);
};
const span = (first: string, count: number) =>
  Array.from({ length: count }, (_, i) =>
    new Date(Date.parse(first) + i * 86_400_000).toISOString().slice(0, 10),
  );

describe('winter blocks', () => {
  it('run July to June in the north, labelled by January, and by calendar year in the south', () => {
    expect(winterOf(dayNumber(1989, 12, 23), 'north')).toBe(1990);
    expect(winterOf(dayNumber(1990, 6, 30), 'north')).toBe(1990);
    expect(winterOf(dayNumber(1990, 7, 1), 'north')).toBe(1991);
    expect(winterOf(dayNumber(1990, 7, 1), 'south')).toBe(1990);
    expect(winterOf(dayNumber(1990, 12, 31), 'south')).toBe(1990);
  });

  it('have bounds that agree with the label of every night, leap years included', () => {
    for (const hemisphere of ['north', 'south'] as const) {
      for (const winter of [1900, 1999, 2000, 2024]) {
        const { first, last } = winterBounds(winter, hemisphere);
        expect([winterOf(first, hemisphere), winterOf(last, hemisphere)]).toEqual([winter, winter]);
        expect([winterOf(first - 1, hemisphere), winterOf(last + 1, hemisphere)]).toEqual([
          winter - 1,
          winter + 1,
        ]);
      }
    }
  });

  it('have 151 or 152 nights from November to March, 153 from May to September', () => {
    const nights = (winter: number, hemisphere: 'north' | 'south') =>
      coldMonths(winter, hemisphere).reduce((sum, month) => sum + month.end - month.first, 0);
    expect([nights(2023, 'north'), nights(2024, 'north'), nights(2023, 'south')]).toEqual([151, 152, 153]);
  });
});

describe('completeness (design 3.3)', () => {
  it('accepts a whole winter, and three missing nights in each of two months', () => {
    expect(incompleteReason(1990, 'north', () => true)).toBe('');
    expect(incompleteReason(1990, 'north', except(...span('1989-12-01', 3), ...span('1990-01-10', 3)))).toBe(
      '',
    );
  });

  it('refuses a fourth missing night in a month', () => {
    expect(incompleteReason(1990, 'north', except(...span('1990-01-10', 4)))).toBe('January misses 4 nights');
  });

  it('refuses fewer than 95 % of the nights even when no month misses more than three', () => {
    const missing = ['1989-11-05', '1989-12-05', '1990-01-05', '1990-02-05'].flatMap((day) => span(day, 2));
    expect(incompleteReason(1990, 'north', except(...missing))).toBe('only 143 of 151 nights');
    expect(incompleteReason(1990, 'north', except(...missing.slice(1)))).toBe('');
  });

  it('does not look at the warm months', () => {
    expect(incompleteReason(1990, 'north', except(...span('1989-07-01', 120)))).toBe('');
    expect(incompleteReason(1990, 'south', except(...span('1990-01-01', 100)))).toBe('');
  });

  it('refuses a gap over the nights on which half of three or more neighbours were coldest', () => {
    const freeze = parseIsoDay('1989-12-24')!;
    const other = parseIsoDay('1990-02-02')!;
    const gap = except('1989-12-24');
    expect(incompleteReason(1990, 'north', gap, [freeze, freeze, other])).toBe(
      'misses 1989-12-24, the coldest night at 2 of 3 neighbours',
    );
    expect(incompleteReason(1990, 'north', gap, [freeze, other, other])).toBe('');
    expect(incompleteReason(1990, 'north', gap, [freeze, freeze])).toBe('');
  });
});

describe('whole dates (design 3.9 needs October and April too)', () => {
  const whole = (hemisphere: 'north' | 'south', isPresent: (night: number) => boolean): number[] => [
    ...judgeCompleteness(Int16Array.of(1990), hemisphere, { has: isPresent }).datesWhole!,
  ];

  it('want October and April with at most three nights missing each, in both hemispheres', () => {
    expect(whole('north', () => true)).toEqual([1]);
    expect(whole('north', except(...span('1989-10-01', 3), ...span('1990-04-28', 3)))).toEqual([1]);
    expect(whole('north', except(...span('1989-10-01', 4)))).toEqual([0]);
    expect(whole('north', except(...span('1990-04-01', 4)))).toEqual([0]);
    expect(whole('south', except(...span('1990-10-10', 4)))).toEqual([0]);
    expect(whole('south', except(...span('1989-10-10', 4)))).toEqual([1]);
  });

  it('want a complete winter first', () => {
    expect(whole('north', except(...span('1990-01-10', 4)))).toEqual([0]);
    expect(whole('north', except(...span('1989-09-01', 30), ...span('1990-05-01', 30)))).toEqual([1]);
  });
});
