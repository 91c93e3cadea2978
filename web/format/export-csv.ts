import { t } from '../../analysis/language/t.ts';
import { csvLine, harmlessText, type CsvCell } from '../../analysis/records/csv-text.ts';

/** Where figures come from, written above them. */
export interface Provenance {
  readonly title: string;
  readonly invented: boolean;
  readonly sources: readonly {
    readonly name: string;
    readonly licence: string;
    readonly attribution: string;
  }[];
  /** What was asked, in words or as SQL. */
  readonly question: string;
  /** Units and reading of the columns, one sentence. */
  readonly units: string;
  /** Day of the export, `YYYY-MM-DD`. */
  readonly date: string;
  /** Other sentences that must stand beside the figures. */
  readonly notes?: readonly string[];
}

/** A table to be written: names of its columns, and its rows. */
export interface ExportTable {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly CsvCell[])[];
  /** There were more rows than these. */
  readonly truncated?: boolean;
}

/** A table as CSV (RFC 4180, commas, CRLF) under lines with `#` that say where it comes from. */
export function toCsv({ columns, rows, truncated }: ExportTable, provenance: Provenance): string {
  const cut = truncated ? [t`Cut off after ${rows.length} rows: there were more.`] : [];
  const notes = [...cut, ...(provenance.notes ?? [])];
  return [...csvPieces(columns, rows, { ...provenance, notes })].join('');
}

/** Rows of a piece of {@link csvPieces}. */
const PIECE_ROWS = 2000;

/** The same piece by piece, for tables that are too large for one text: their rows may be made as they are written. */
export function* csvPieces(
  columns: readonly string[],
  rows: Iterable<readonly CsvCell[]>,
  provenance: Provenance,
): Generator<string> {
  yield `${[...headLines(provenance), csvLine(columns)].join('\r\n')}\r\n`;
  let lines: string[] = [];
  for (const row of rows) {
    if (lines.push(csvLine(row)) < PIECE_ROWS) continue;
    yield `${lines.join('\r\n')}\r\n`;
    lines = [];
  }
  if (lines.length > 0) yield `${lines.join('\r\n')}\r\n`;
}

function headLines(provenance: Provenance): string[] {
  const { title, invented, sources, question, units, date, notes = [] } = provenance;
  const head = [
    invented ? t`${title} (invented: no reading here is real)` : title,
    ...sources.map(
      ({ name, licence, attribution }) => t`Source: ${name}. ${attribution} Licence: ${licence}.`,
    ),
    t`Question: ${question}`,
    units,
    t`Written ${date}.`,
    ...notes,
  ];
  return head.flatMap((text) => text.split(/\r\n|\r|\n/)).map(remark);
}

/** A table alone, as it must be where it's to be read in again. */
export function plainCsv(table: ExportTable): string {
  return `${tableLines(table).join('\r\n')}\r\n`;
}

function tableLines({ columns, rows }: ExportTable): string[] {
  return [csvLine(columns), ...rows.map(csvLine)];
}

/** A line before the table. Spreadsheets cut it at its commas, so that a formula could stand behind one. */
function remark(text: string): string {
  const [first, ...others] = text.split(',');
  return harmlessText(`# ${[first, ...others.map(harmlessText)].join(',')}`).trimEnd();
}
