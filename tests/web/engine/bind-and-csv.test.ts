import { describe, expect, it } from 'vitest';
import { bindNamed } from '../../../web/engine/bind-named.ts';
import { toCsv } from '../../../web/engine/csv.ts';

describe('names of parameters', () => {
  it('become places in the order they first appear, and repeat', () => {
    expect(bindNamed('select $b, $a, $b', { a: 1, b: 'two' })).toEqual({
      sql: 'select $1, $2, $1',
      parameters: ['two', 1],
    });
  });
  it('are left alone in text and quoted names, and comments go', () => {
    const sql = `-- needs $x\nselect '$a it''s $b', "$c" /* $d */ from t where x = $a`;
    expect(bindNamed(sql, { a: 1 }).sql).toBe(`select '$a it''s $b', "$c"   from t where x = $1`);
  });
  it('must all have a value, and values a parameter', () => {
    expect(() => bindNamed('select $a', {})).toThrow('The statement needs a value for $a.');
    expect(() => bindNamed('select 1', { a: 1 })).toThrow('The statement has no parameter $a.');
  });
});

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
});
