import { describe, expect, it } from 'vitest';
import { formatDay, formatWinter, hemisphereOf, monthName } from '../../../web/format/dates.ts';
import {
  formatBytes,
  formatChance,
  formatCount,
  formatDistance,
  formatElevation,
  formatHours,
  formatPoint,
  plural,
} from '../../../web/format/numbers.ts';
import {
  formatHeadline,
  formatHeadlineShort,
  formatPeriod,
  formatPeriodFigure,
  formatPeriodRange,
} from '../../../web/format/periods.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('return periods in words', () => {
  it.each([
    [1, 'every winter'],
    [1.03, 'nearly every winter'],
    [1.4, 'about 1 winter in 1.4'],
    [2, 'about 1 winter in 2'],
    [9.96, 'about 1 winter in 10'],
    [11.6, 'about 1 winter in 12'],
    [118, 'about 1 winter in 120'],
    [null, 'rarer than the record can tell'],
  ])('%s', (period, words) => expect(formatPeriod(period)).toBe(words));

  it('keep two figures, no more', () => {
    expect([2.34, 34.4, 137, 1234].map(formatPeriodFigure).map(plain)).toEqual(['2.3', '34', '140', '1,200']);
  });

  it('write ranges with an open end as such', () => {
    expect(formatPeriodRange(8, 20)).toBe('1 in 8 to 1 in 20');
    expect(formatPeriodRange(8, null)).toBe('1 in 8 or rarer');
    expect(formatPeriodRange(null, null)).toBe('range not known');
    expect(formatPeriodRange(12.1, 12.3)).toBe('1 in 12');
    expect(formatPeriodRange(1, 1.4)).toBe('every winter to 1 in 1.4');
    expect(formatPeriodRange(1.02, 3.4)).toBe('nearly every winter to 1 in 3.4');
  });

  it('never claim "never"', () => {
    const unseen = { period: null, low: 23, high: null, basis: 'not seen' } as const;
    expect(formatHeadline(unseen, 61)).toBe('not seen in 61 winters; could be as often as 1 in 23');
    expect(formatHeadline(unseen, 1)).toMatch(/not seen in 1 winter;/);
    expect(formatHeadlineShort(unseen, 61)).toBe('0 of 61');
    const beyond = { period: null, low: 90, high: null, basis: 'beyond' } as const;
    expect(formatHeadline(beyond, 61)).toBe('too rare to tell, 1 winter in 90 or rarer');
  });
});

describe('numbers, chances, sizes', () => {
  it('count', () => {
    expect(plain(formatCount(1234567))).toBe('1,234,567');
    expect(plural(1, 'winter')).toBe('1 winter');
    expect(plural(2, 'station')).toBe('2 stations');
  });
  it('tell chances without never and always', () => {
    expect([0, 0.004, 0.345, 0.996, 1, null].map(formatChance).map(plain)).toEqual([
      '0%',
      'under 1%',
      '35%',
      'over 99%',
      '100%',
      '–',
    ]);
  });
  it('measure', () => {
    expect([999, 340_000, 7_620_000, 34_200_000].map(formatBytes)).toEqual([
      '999 B',
      '340 kB',
      '7.6 MB',
      '34 MB',
    ]);
    // 1 mile = 1.609344 km, 1 foot = 0.3048 m (international yard, 1959).
    expect(plain(formatDistance(16.09344, 'F'))).toBe('10 mi');
    expect(plain(formatDistance(6.44, 'C'))).toBe('6.4 km');
    expect(plain(formatElevation(30.48, 'F'))).toBe('100 ft');
    expect(plain(formatElevation(-3, 'C'))).toBe('−3 m');
    expect(formatElevation(null, 'C')).toBe('–');
    expect(formatHours(0)).toBe('an instant');
    expect(plain(formatHours(0.5))).toBe('0.5 h');
    expect(formatPoint(-30.618, 42.1)).toBe('30.62° S, 42.10° E');
  });
});

describe('dates', () => {
  it('are written out', () => {
    expect(formatDay('1989-12-23')).toBe('23 December 1989');
    expect(formatDay(0, 'short')).toBe('1 Jan 1970');
    expect(formatDay('not a day')).toBe('not a day');
    expect(monthName(12)).toBe('December');
  });
  it('name winters by both years in the north, by one in the south', () => {
    expect(formatWinter(1990, 'north')).toBe('1989–90');
    expect(formatWinter(2000, 'north')).toBe('1999–00');
    expect(formatWinter(1990, 'south')).toBe('1990');
    expect([hemisphereOf(0), hemisphereOf(-0.1)]).toEqual(['north', 'south']);
  });
});
