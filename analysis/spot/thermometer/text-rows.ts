import { Fields } from '../../read/fields.ts';
import { dateText, withMonthNumbers } from './date-text.ts';
import { numberText } from './number-text.ts';

/** A line that isn't blank, in fields. */
export interface TextRow {
  readonly line: number;
  /** As written, for messages. */
  readonly written: string;
  readonly fields: readonly string[];
}

/** In order of preference where several cut the lines equally well. */
const SEPARATORS = ['\t', ';', ',', '|', ' '] as const;
/** Lines that decide on the separator: a logger writes tens of thousands all alike. */
const LINES_TO_TELL = 400;

/** Cuts a text into rows by whichever separator leaves most lines with a date and a number. */
export function textRows(text: string): TextRow[] {
  const lines = text
    .replace(/^\uFEFF/, '')
    .replaceAll('\u0000', '')
    .split(/\r\n|\n|\r/)
    .map((written, index) => ({ written, line: index + 1, plain: withMonthNumbers(written) }))
    .filter(({ written }) => written.trim() !== '');
  const rowsBy = (separator: string, some: typeof lines): TextRow[] => {
    const fields = new Fields(separator);
    return some.map(({ line, written, plain }) => ({
      line,
      written: written.trim(),
      fields: cut(fields, plain),
    }));
  };
  const head = lines.slice(0, LINES_TO_TELL);
  let [best, most] = ['\t', -1];
  for (const separator of SEPARATORS) {
    const usable = rowsBy(separator, head).filter(isUsable).length;
    if (usable > most) [best, most] = [separator, usable];
  }
  const rows = rowsBy(best, lines);
  return best === ',' ? withDecimalCommas(rows) : rows;
}

function cut(fields: Fields, line: string): string[] {
  fields.split(line, 0, line.length, 200);
  return Array.from({ length: fields.count }, (_, index) => fields.text(line, index).trim());
}

function isUsable({ fields }: TextRow): boolean {
  const date = fields.findIndex((field) => dateText(field) !== null);
  return date >= 0 && fields.some((field, index) => index !== date && numberText(field) !== null);
}

/**
 * Puts `-2,3` together again where it was cut at its comma: each row with a date then ends in a whole number and a single
 * figure, and has one field more than its heading.
 */
function withDecimalCommas(rows: TextRow[]): TextRow[] {
  const dated = rows.slice(0, LINES_TO_TELL).filter(isUsable);
  const first = dated[0];
  if (!first || first.fields.length !== 3) return rows;
  const split = dated.every(
    ({ fields }) => fields.length === 3 && /^[-−–]?\d{1,2}$/.test(fields[1]!) && /^\d$/.test(fields[2]!),
  );
  const heading = rows.find((row) => row.line < first.line && !isUsable(row) && row.fields.length > 1);
  if (!split || (heading ? heading.fields.length !== 2 : dated.length < 3)) return rows;
  return rows.map((row) =>
    row.fields.length === 3 && isUsable(row)
      ? { ...row, fields: [row.fields[0]!, `${row.fields[1]},${row.fields[2]}`] }
      : row,
  );
}
