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
export function toCsv(table: ExportTable, provenance: Provenance): string {
  const { title, invented, sources, question, units, date, notes = [] } = provenance;
  const head = [
    invented ? t`${title} (invented: no reading here is real)` : title,
    ...sources.map(
      ({ name, licence, attribution }) => t`Source: ${name}. ${attribution} Licence: ${licence}.`,
    ),
    t`Question: ${question}`,
    units,
    t`Written ${date}.`,
    ...(table.truncated ? [t`Cut off after ${table.rows.length} rows: there were more.`] : []),
    ...notes,
  ];
  const lines = head.flatMap((text) => text.split(/\r\n|\r|\n/)).map(remark);
  return `${[...lines, ...tableLines(table)].join('\r\n')}\r\n`;
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
