import { describe, expect, it } from 'vitest';
import {
  confusionTable,
  errorTable,
  furtherTables,
  mainTables,
} from '../../../web/views/method/accuracy-tables.ts';

const ROW = {
  nights: 1234,
  maeF: { '1': 0.9, '4': 1.8, '8': 1.8, '12': 1.8 },
  biasF: { '1': -0.18, '4': 0, '8': 0.9, '12': 0 },
};

describe('tables of measured errors', () => {
  it('show differences, not temperatures, in the unit chosen', () => {
    const inC = errorTable('Frost', [['as used', ROW]], 'C');
    expect(inC.title).toBe('Frost, °C');
    // 1.8 °F of difference is 1 °C, 0.9 is 0.5, 0.18 is 0.1.
    expect(inC.rows[0].slice(0, 5)).toEqual([
      'as used',
      '1,234',
      '0.50 (−0.10)',
      '1.00 (0.00)',
      '1.00 (0.50)',
    ]);
    expect(errorTable('Frost', [['as used', ROW]], 'F').rows[0][2]).toBe('0.90 (−0.18)');
    expect(inC.rows[0].at(-1)).toBe('– (–)');
  });

  it('set kinds told against kinds measured', () => {
    const table = confusionTable('Kinds', { calm: { calm: 5, windy: 1 }, windy: { calm: 2, windy: 7 } });
    expect(table.columns).toEqual(['', 'told calm', 'told windy']);
    expect(table.rows).toEqual([
      ['calm by the wind', '5', '1'],
      ['windy by the wind', '2', '7'],
    ]);
  });

  it('have a cell for every column, in both units', () => {
    for (const unit of ['F', 'C'] as const) {
      for (const table of [...mainTables(unit), ...furtherTables(unit)]) {
        for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
        expect(table.rows.flat().join()).not.toMatch(/NaN|undefined/);
      }
    }
  });
});
