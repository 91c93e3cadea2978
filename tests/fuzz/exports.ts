import fc from 'fast-check';

import { csvLine, harmlessText, type CsvCell } from '../../analysis/records/csv-text.ts';
import { Fields } from '../../analysis/read/fields.ts';
import { plainCsv, toCsv } from '../../web/format/export-csv.ts';
import { anyText } from './damage.ts';
import { must, property, type ReaderProperty } from './reader-property.ts';

/** Texts that a spreadsheet runs, behind what it overlooks. */
const formula = fc
  .tuple(
    fc.constantFrom('', ' ', '"', '\u00a0', '\ufeff', '  "'),
    fc.constantFrom('=', '+', '-', '@', '\t', '\r', '＝', '＠'),
    fc.oneof(anyText, fc.constantFrom('1+1', 'SUM(A1)', "cmd|' /C calc'!A0")),
  )
  .map((parts) => parts.join(''));
const cell: fc.Arbitrary<CsvCell> = fc.oneof(
  formula,
  anyText,
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.integer(),
  fc.boolean(),
  fc.constant(null),
);
const NUMBER = /^-?\d+(\.\d+)?([eE][+-]?\d{1,3})?$/;
/** A reader by semicolons takes a figure and the cells behind it for one text: no formula either. */
const FIGURE_FIRST = /^-?\d+(\.\d+)?([eE][+-]?\d{1,3})?(,|$)/;
const RUNS = /^[\s\u00a0\ufeff"]*[=+\-@＝＋－＠]|^[\t\r\n]/;

/** Cells of a line as a spreadsheet takes them apart, lines inside quotes kept. */
function cellsOf(line: string): string[] {
  const cells: string[] = [];
  for (let at = 0; at <= line.length;) {
    let text = '';
    if (line[at] === '"') {
      for (at++; at < line.length; at++) {
        if (line[at] !== '"') text += line[at];
        else if (line[at + 1] === '"') text += line[++at];
        else break;
      }
      at++;
    } else for (; at < line.length && line[at] !== ','; at++) text += line[at];
    cells.push(text);
    at++;
  }
  return cells;
}

export const EXPORTS: readonly ReaderProperty[] = [
  property(
    'exports: no cell of text runs in a spreadsheet; figures stay figures; all come back',
    fc.array(cell, { minLength: 1, maxLength: 6 }),
    (cells) => {
      const back = cellsOf(csvLine(cells));
      must(back.length === cells.length, `${cells.length} cells became ${back.length}`);
      cells.forEach((value, at) => {
        if (typeof value === 'number')
          must(Number(back[at]) === value && back[at] === String(value), `${value} became ${back[at]}`);
        else if (typeof value !== 'string')
          must(back[at] === (value === null ? '' : String(value)), `${value} became ${back[at]}`);
        else {
          must(NUMBER.test(back[at]) || !RUNS.test(back[at]), `${JSON.stringify(back[at])} would run`);
          must(harmlessText(back[at]) === back[at], 'a second time changes it');
          must(
            back[at].replaceAll("'", '') === value.replaceAll("'", ''),
            `${JSON.stringify(value)} became ${JSON.stringify(back[at])}`,
          );
        }
      });
    },
  ),
  property(
    'exports: neither do names of columns, remarks above the table, or cells for a reader by semicolons',
    fc.tuple(formula, formula, formula),
    ([column, title, text]) => {
      const source = { name: title, licence: text, attribution: title };
      const table = { columns: [column, 'b'], rows: [[text, 1.5]] };
      const csv = toCsv(table, {
        title,
        invented: true,
        sources: [source],
        question: text,
        units: title,
        date: '2026-01-01',
        notes: [text],
      });
      for (const one of [csv, plainCsv(table)])
        for (const separator of [',', ';', '\t'])
          for (const line of one.split(/\r\n|\r|\n/)) {
            const fields = new Fields(separator);
            fields.split(line, 0, line.length, 1024);
            for (let at = 0; at < fields.count; at++) {
              const shown = fields.text(line, at);
              must(
                FIGURE_FIRST.test(shown) || !/^[=+\-@＝＋－＠]/.test(shown),
                `${JSON.stringify(shown)} would run (by ${JSON.stringify(separator)})`,
              );
            }
          }
    },
  ),
];
