import { expect, it } from 'vitest';
import { readRecords } from '../../../analysis/read/read-records.ts';
import { formatIsoDay } from '../../../analysis/units/calendar.ts';

/** One month of one element, the value of a day being the day itself in tenths of °C. */
function dlyLine(year: number, month: number, days: number): string {
  const cells = Array.from({ length: 31 }, (_, i) => `${String(i < days ? i + 1 : -9999).padStart(5)}  0`);
  return `ZZ000000001${year}${String(month).padStart(2, '0')}TMIN${cells.join('')}\n`;
}

it('reads the last day of every month, before 1970 and after, in leap years and others', async () => {
  const months = [
    [1955, 1, 31],
    [1956, 2, 29],
    [1957, 2, 28],
    [1957, 4, 30],
    [1969, 12, 31],
    [1970, 1, 31],
    [2000, 2, 29],
  ] as const;
  const bytes = new TextEncoder().encode(
    months.map(([year, month, days]) => dlyLine(year, month, days)).join(''),
  );
  const { daily } = await readRecords(new Blob([bytes]).stream(), { fileName: 'ZZ000000001.dly' });
  const [{ day, tminC }] = daily;
  expect(day).toHaveLength(months.reduce((sum, [, , days]) => sum + days, 0));
  for (const [year, month, days] of months) {
    const last = `${year}-${String(month).padStart(2, '0')}-${days}`;
    const at = day.findIndex((number) => formatIsoDay(number) === last);
    expect(tminC[at], last).toBeCloseTo(days / 10, 9);
  }
});
