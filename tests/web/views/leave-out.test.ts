import { describe, expect, it } from 'vitest';
import type { PackLeaveOutErrors, PackLeftOutStation } from '../../../analysis/records/pack.ts';
import { binRadius, holds, levelExtent, squareSide } from '../../../web/views/method/leave-out-charts.ts';
import { leaveOutTables } from '../../../web/views/method/leave-out-tables.ts';

const ERRORS: PackLeaveOutErrors = {
  hours: 4,
  stations: 1234,
  mean_error_c: 1,
  bias_c: -0.5,
  nearest_mean_error_c: 2,
  inverse_distance_mean_error_c: 1.5,
  interval: { coverage: 0.9, mean_width_c: 4, score_c: 5 },
  same_winters: { mean_error_c: 0.9, bias_c: 0, coverage: 0.88, mean_width_c: 3, score_c: 4 },
  hit_ratio: null,
};
const STATIONS: PackLeftOutStation[] = [
  { id: 'A', observed_c: -3, predicted_c: -4, low_c: -6, high_c: -3 },
  { id: 'B', observed_c: 1, predicted_c: -1, low_c: -2.5, high_c: 0.5 },
];

describe('tables of stations left out', () => {
  it('show errors as differences in the unit chosen, a cell for every column', () => {
    const [errors, ranges] = leaveOutTables({ third: [ERRORS], one: [{ ...ERRORS, hours: 0 }] }, 'F');
    expect(errors.rows).toEqual([
      ['a third left out, 4 hours', '1,234', '1.80', '−0.90', '3.60', '2.70', '–'],
      ['one left out, minimum', '1,234', '1.80', '−0.90', '3.60', '2.70', '–'],
    ]);
    expect(ranges.rows[0]).toEqual([
      'a third left out, 4 hours',
      '90%',
      '7.20',
      '9.00',
      '88%',
      '5.40',
      '7.20',
    ]);
    const ratio = { ...ERRORS, hit_ratio: 1.044 };
    expect(leaveOutTables({ third: [ratio], one: [] }, 'C')[0].rows[0].at(-1)).toBe('1.04');
    for (const table of [errors, ranges])
      for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
  });
});

describe('charts of stations left out', () => {
  it('hold all levels, and tell which range holds what was observed', () => {
    expect(levelExtent(STATIONS)).toEqual([-5, 2]);
    expect(STATIONS.map(holds)).toEqual([true, false]);
  });

  it('are square, at most as wide as their box unless that is tiny', () => {
    expect(squareSide(300)).toBe(240);
    expect(squareSide(2000)).toBe(420);
    expect(squareSide(50)).toBe(120);
  });

  it('mark bins larger the more they stand for', () => {
    const bins = [10, 1000, 100000].map((count) => ({ predicted: 0.5, observed: 0.5, count }));
    const radii = bins.map((bin) => binRadius(bin, bins));
    expect(radii[0]).toBeLessThan(radii[1]);
    expect(radii[1]).toBeLessThan(radii[2]);
    expect(radii[2]).toBe(8);
  });
});
