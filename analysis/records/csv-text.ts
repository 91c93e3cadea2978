/** What a cell of an exported table may hold; `null` and `undefined` are written as an empty cell. */
export type CsvCell = string | number | boolean | null | undefined;

/** A figure written as text: as harmless as the figure itself. */
const PLAIN_NUMBER = /^-?\d+(\.\d+)?([eE][+-]?\d{1,3})?$/;
/** What spreadsheets take for a formula, also behind blanks and quotes, with the wide forms that some take likewise. */
const FORMULA = /^[\s\u00a0\ufeff"]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/;
/** The same inside a cell, where a reader that separates by semicolons, tabs or lines would begin a new one. */
const HIDDEN_FORMULA = /([;\t\r\n][ \u00a0"]*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])/g;

/**
 * Text as it may stand in a file that a spreadsheet opens: what would run as a formula gets an apostrophe before it. A
 * text that is a plain number stays one. Doing it twice changes nothing.
 */
export function harmlessText(text: string): string {
  if (PLAIN_NUMBER.test(text)) return text;
  const inside = text.replace(HIDDEN_FORMULA, "$1'");
  return FORMULA.test(inside) ? `'${inside}` : inside;
}

/** One cell of a comma-separated line (RFC 4180): figures as they are, texts made harmless and quoted where they must be. */
export function csvCell(value: CsvCell): string {
  if (value === null || value === undefined) return '';
  if (typeof value !== 'string') return String(value);
  const safe = harmlessText(value);
  return /[",;\t\r\n]|^ | $/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Cells as one line, without its end. */
export function csvLine(cells: readonly CsvCell[]): string {
  return cells.map(csvCell).join(',');
}
