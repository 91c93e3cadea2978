import { describe, expect, it } from 'vitest';
import { accuracyNotes, accuracyTables, keyWords } from '../../../web/views/method/accuracy-tables.ts';

const REPORT = {
  note: 'Four airports, each left out in turn.',
  coldestNights: {
    published: { nights: 1234, maeF: { '1': 0.9, '4': 1.8 }, biasF: { '1': -0.18, '4': 0 } },
    corrected: { nights: 1234, maeF: { '1': 0.45, '4': 0.9 }, biasF: { '1': 0, '4': 0.9 } },
  },
  kinds: { byTemperatures: { calm: { calm: 5, windy: 1 }, windy: { calm: 2, windy: 7 } } },
};

describe('tables of measured errors', () => {
  it('puts rows of errors that stand together in one table, in the shown unit', () => {
    const [errors] = accuracyTables(REPORT, 'C');
    expect(errors.columns).toEqual(['', 'Nights', '1 h', '4 h']);
    // 1.8 °F of difference is 1 °C, 0.9 is 0.5, 0.45 is 0.25.
    expect(errors.rows[0]).toEqual(['Published', '1,234', '0.50 (−0.10)', '1.00 (0.00)']);
    expect(accuracyTables(REPORT, 'F')[0].rows[1].slice(2)).toEqual(['0.45 (0.00)', '0.90 (0.90)']);
  });

  it('shows the confusion of kinds as a table of its own', () => {
    const kinds = accuracyTables(REPORT, 'F')[1];
    expect(kinds.title).toBe('Kinds, By temperatures');
    expect(kinds.columns).toEqual(['', 'Calm', 'Windy']);
    expect(kinds.rows).toEqual([
      ['Calm', '5', '1'],
      ['Windy', '2', '7'],
    ]);
  });

  it('keeps the sentences, and gives nothing for nothing', () => {
    expect(accuracyNotes(REPORT)).toEqual(['Four airports, each left out in turn.']);
    expect(accuracyTables(null, 'F')).toEqual([]);
    expect(keyWords('nyc_jfk')).toBe('Nyc jfk');
  });
});
