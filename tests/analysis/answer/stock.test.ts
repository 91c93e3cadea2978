import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  readStock,
  STOCK_AGE_MOST,
  STOCK_BYTES_MOST,
  STOCK_ROWS_MOST,
  stockTable,
} from '../../../analysis/answer/stock.ts';
import { InputError } from '../../../analysis/records/input-error.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { plainCsv } from '../../../web/format/export-csv.ts';

/** Marks that cut, quote or hide, and letters of names. */
const NASTY = fc.constantFrom(...'",;\t\n\r\0\ufeff\u00a0=+-@ 0123.eimnoruyzñÁ\u0301\ud83d'.split(''));

describe('a nursery’s list from CSV', () => {
  test('any order of columns, English and Spanish names, what is unknown left out and said', () => {
    const english = readStock('Age,Price,Name,Pot\n2,30,Meyer lemon,3 gal\n,45,"Satsuma, Owari",15 gal\n');
    expect(english.rows).toEqual([
      { typeId: 'meyer_lemon', size: '3 gal', ageYears: 2 },
      { typeId: 'satsuma_owari', size: '15 gal', ageYears: null },
    ]);
    expect(english.ignored).toEqual(['Price']);
    // Of two columns that could be meant, the one whose name says it more plainly.
    const both = readStock('Name,Type,Container,Size\nrow 3,yuzu,black,C-20\n');
    expect([both.rows, both.ignored]).toEqual([
      [{ typeId: 'yuzu', size: 'C-20', ageYears: null }],
      ['Name', 'Container'],
    ]);
    const spanish = readStock('\ufeffTamaño;Edad (años);Variedad\r\nC-20;3 años;Limón Meyer\r\n');
    expect(spanish.rows).toEqual([{ typeId: 'meyer_lemon', size: 'C-20', ageYears: 3 }]);
  });

  test('a line that cannot be taken says why, and the rest go on', () => {
    const { rows, faults } = readStock('type,age\nyuzu,2\nplum,3\n\nkumquat,2\nyuzu,old\n,1\nyuzu,4\n');
    expect(rows).toHaveLength(2);
    expect(faults).toEqual([
      { line: 3, words: '“plum” is no type of the catalogue.' },
      { line: 5, words: '“kumquat” could be Nagami kumquat or Meiwa kumquat: name one of them.' },
      { line: 6, words: `“old” is no age: whole years from 1 to ${STOCK_AGE_MOST} are taken.` },
      { line: 7, words: 'It names no type.' },
    ]);
  });

  test.each([
    ['', 'Line 1'],
    ['price,stock\n1,2', 'Line 1'],
    [`type\n${'yuzu\n'.repeat(STOCK_ROWS_MOST + 1)}`, `${STOCK_ROWS_MOST}`],
    ['x'.repeat(STOCK_BYTES_MOST + 1), 'at most 200,000'],
  ])('a file that is none of these is refused with one sentence', (text, words) => {
    expect(() => readStock(text)).toThrow(InputError);
    expect(() => readStock(text)).toThrow(words);
  });

  test('what is written comes back, formulas as harmless text', () => {
    const row = fc.record({
      typeId: fc.constantFrom(...CITRUS_TYPES.map(({ id }) => id)),
      size: fc.constantFrom('', '3 gal', '=1+1', '+cmd|x', '-2 L', '@sum', 'a "tall" pot', 'C;20', 'x, y'),
      ageYears: fc.option(fc.integer({ min: 1, max: STOCK_AGE_MOST })),
    });
    fc.assert(
      fc.property(fc.array(row, { maxLength: 20 }), (rows) => {
        const text = plainCsv(stockTable(rows));
        expect(readStock(text)).toEqual({ rows, faults: [], ignored: [] });
        for (const cell of text.split(/[,\r\n]/)) expect(cell).not.toMatch(/^"?[=+@]/);
      }),
    );
  });

  test('any text is read or refused with a sentence', () => {
    fc.assert(
      fc.property(fc.string({ unit: NASTY, maxLength: 200 }), (noise) => {
        for (const text of [noise, `type,size,age\n${noise}`]) {
          try {
            const { rows } = readStock(text);
            for (const { size, typeId } of rows) {
              expect(size.length).toBeLessThanOrEqual(40);
              expect(CITRUS_TYPES.some(({ id }) => id === typeId)).toBe(true);
            }
          } catch (error) {
            expect(error).toBeInstanceOf(InputError);
          }
        }
      }),
      { numRuns: 500 },
    );
  });
});
