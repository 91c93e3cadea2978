import { describe, expect, it } from 'vitest';
import { plainCsv, toCsv } from '../../../web/format/export-csv.ts';

describe('CSV with its provenance', () => {
  const provenance = {
    title: 'Sallowmere Coast',
    invented: true,
    sources: [{ name: 'Made archive', licence: 'CC0', attribution: 'Nobody.' }],
    question: 'from nights\nlimit 2',
    units: 'Temperatures °C.',
    date: '2026-11-25',
  };
  it('says where the figures come from before they begin', () => {
    const csv = toCsv(
      { columns: ['date', 'level_c'], rows: [['1989-12-23', -11.67]], truncated: true },
      provenance,
    );
    expect(csv.split('\r\n')).toEqual([
      '# Sallowmere Coast (invented: no reading here is real)',
      '# Source: Made archive. Nobody. Licence: CC0.',
      '# Question: from nights',
      '# limit 2',
      '# Temperatures °C.',
      '# Written 2026-11-25.',
      '# Cut off after 1 rows: there were more.',
      'date,level_c',
      '1989-12-23,-11.67',
      '',
    ]);
  });
  it('quotes what needs it, and keeps spreadsheets from running text', () => {
    const rows = [
      ['a,b', 'say "no"', 'two\nlines', null],
      ['=SUM(A1)', '-cmd', '@x', true],
      ['-3.5', '- 3', '+1', -4],
    ];
    const lines = toCsv({ columns: ['p', 'q', 'r', 's'], rows }, provenance)
      .split('\r\n')
      .slice(-4);
    expect(lines).toEqual([
      '"a,b","say ""no""","two\nlines",',
      `'=SUM(A1),'-cmd,'@x,true`,
      `-3.5,'- 3,'+1,-4`,
      '',
    ]);
  });
  it('lets no formula stand behind a comma of a remark', () => {
    const csv = toCsv({ columns: [], rows: [] }, { ...provenance, title: 'A,=cmd,"@b\rnext, -1' });
    expect(csv.split('\r\n').slice(0, 2)).toEqual([
      `# A,'=cmd,'"@b`,
      '# next, -1 (invented: no reading here is real)'.replace(', -1', ",' -1"),
    ]);
  });
  it('can be written alone, to be read in again', () => {
    expect(plainCsv({ columns: ['code', '=n'], rows: [['SC 101', 4]] })).toBe("code,'=n\r\nSC 101,4\r\n");
  });
});
