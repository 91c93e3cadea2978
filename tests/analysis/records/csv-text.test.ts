import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Fields } from '../../../analysis/read/fields.ts';
import { csvCell, csvLine, harmlessText } from '../../../analysis/records/csv-text.ts';

/** What spreadsheets run: a cell whose first character, blanks and quotes aside, is one of these. */
const RUNS = /^[\s"]*[=+\-@\uff1d\uff0b\uff0d\uff20]/;
const NUMBER = /^-?\d+(\.\d+)?([eE][+-]?\d{1,3})?$/;

/** Text as someone who means harm would write it: everything that begins formulas, separates or quotes, often. */
const hostile = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        '=',
        '+',
        '-',
        '@',
        '\t',
        '\r',
        '\n',
        '"',
        "'",
        ' ',
        ',',
        ';',
        '|',
        '!A1',
        'cmd',
        '1',
        '\u00a0',
      ),
      fc.string({ unit: 'binary', maxLength: 3 }),
    ),
    { maxLength: 12 },
  )
  .map((pieces) => pieces.join(''));

/** Cells of a line as a plain reader of RFC 4180 sees them, by any separator. */
function cells(line: string, separator: string): string[] {
  const found: string[] = [];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < line.length; i++) {
    const c = line[i];
    if (quoted) {
      if (c !== '"') cell += c;
      else if (line[i + 1] === '"') cell += line[++i];
      else quoted = false;
    } else if (c === '"' && cell === '') quoted = true;
    else if (c === separator) {
      found.push(cell);
      cell = '';
    } else cell += c;
  }
  return [...found, cell];
}

describe('cells of an exported table', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ["-2+3+cmd|'/C calc'!A0", "'-2+3+cmd|'/C calc'!A0"],
    ['  @SUM(A1)', `"'  @SUM(A1)"`.slice(1, -1)],
    ['"=1"', `"'""=1"""`],
    ['\tx', `"'\tx"`],
    ['\rx', `"'\rx"`],
    ['a;=1', `"a;'=1"`],
    ['\uff1d1', "'\uff1d1"],
    ['-12.5', '-12.5'],
    ['-1e-7', '-1e-7'],
    ['2026-11-25', '2026-11-25'],
    ["'=1", "'=1"],
    ['Café, bar', '"Café, bar"'],
  ])('writes %j as %j', (text, written) => expect(csvCell(text)).toBe(written));

  it('never begin with what a spreadsheet runs, whatever the text', () => {
    fc.assert(
      fc.property(hostile, (text) => {
        const [cell] = cells(csvCell(text), ',');
        expect(RUNS.test(cell) && !NUMBER.test(cell), JSON.stringify(cell)).toBe(false);
        expect(/^[\t\r\n]/.test(cell)).toBe(false);
      }),
      { numRuns: 2000 },
    );
  });
  it('nor do the pieces that a reader with semicolons makes of an unquoted line', () => {
    fc.assert(
      fc.property(fc.array(hostile, { minLength: 1, maxLength: 3 }), (texts) => {
        for (const piece of cells(texts.map(harmlessText).join(';'), ';'))
          expect(RUNS.test(piece) && !NUMBER.test(piece), JSON.stringify(piece)).toBe(false);
      }),
      { numRuns: 1000 },
    );
  });
  it('keep the text but for apostrophes put in, and change nothing the second time', () => {
    fc.assert(
      fc.property(hostile, (text) => {
        const safe = harmlessText(text);
        expect(harmlessText(safe)).toBe(safe);
        expect(safe.replaceAll("'", '')).toBe(text.replaceAll("'", ''));
      }),
      { numRuns: 1000 },
    );
  });
  it('keep every number a number, and give back plain texts as they were', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(Number(csvCell(value))).toBe(value === 0 ? Number(String(value)) : value);
      }),
    );
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z][a-z ,"]{0,8}[a-z]$/), { minLength: 1, maxLength: 6 }),
        (texts) => {
          const line = csvLine(texts);
          expect(cells(line, ',')).toEqual(texts);
          const fields = new Fields(',');
          fields.split(line, 0, line.length, 1024);
          expect(texts.map((_, at) => fields.text(line, at))).toEqual(texts);
        },
      ),
    );
  });
  it('are empty for what is not known', () =>
    expect(csvLine([null, undefined, '', 0, false])).toBe(',,,0,false'));
});
