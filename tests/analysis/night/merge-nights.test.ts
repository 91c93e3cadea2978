import { describe, expect, it } from 'vitest';

import { mergeNights } from '../../../analysis/night/merge-nights.ts';
import { emptyNights } from '../../../analysis/night/night-table.ts';
import { MISSING_HUNDREDTHS, NIGHT_BASES, type NightTable } from '../../../analysis/records/nights.ts';

const HOURLY = NIGHT_BASES.indexOf('hourly');
const DAILY = NIGHT_BASES.indexOf('daily');

function table(first: number, tmin: readonly number[], basis: number, above: number): NightTable {
  const nights = emptyNights(first, tmin.length);
  tmin.forEach((value, i) => {
    nights.basis[i] = basis;
    nights.tmin[i] = value;
    if (value === MISSING_HUNDREDTHS) return;
    nights.sustained.forEach((column, j) => (column[i] = value + j * above));
  });
  return nights;
}

describe('merged nights', () => {
  it('take the hourly night where it is known and the daily one elsewhere, gaps between stay unknown', () => {
    const hourly = table(10, [-100, MISSING_HUNDREDTHS, -300], HOURLY, 10);
    const daily = table(8, [50, 60, 70, 80], DAILY, 20);
    const merged = mergeNights(hourly, daily);
    expect([merged.firstNight, merged.count]).toEqual([8, 5]);
    expect([...merged.tmin]).toEqual([50, 60, -100, 80, -300]);
    expect([...merged.basis]).toEqual([DAILY, DAILY, HOURLY, DAILY, HOURLY]);
    expect([...merged.sustained[3]]).toEqual([110, 120, -70, 140, -270]);
    const apart = mergeNights(table(20, [1], HOURLY, 1), table(10, [2], DAILY, 1));
    expect(apart.count).toBe(11);
    expect(apart.tmin[5]).toBe(MISSING_HUNDREDTHS);
  });

  it('fill a duration unknown by the hour from the daily night, never below the shorter durations', () => {
    const hourly = table(10, [-100], HOURLY, 50);
    hourly.sustained[10][0] = hourly.sustained[11][0] = MISSING_HUNDREDTHS;
    const daily = table(10, [-100], DAILY, 30);
    const { sustained } = mergeNights(hourly, daily);
    expect(sustained.map((column) => column[0]).slice(8)).toEqual([300, 350, 350, 350]);
  });

  it('with an empty table give the other', () => {
    const one = table(10, [5], DAILY, 1);
    expect(mergeNights(emptyNights(0, 0), one)).toBe(one);
    expect(mergeNights(one, emptyNights(0, 0))).toBe(one);
  });
});
