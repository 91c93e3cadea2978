import type { Cell } from './table-rows.ts';

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

/** A table as CSV (RFC 4180, commas, CRLF) under lines with `#` that say where it comes from. */
export function toCsv(
  table: {
    readonly columns: readonly string[];
    readonly rows: readonly (readonly Cell[])[];
    readonly truncated?: boolean;
  },
  provenance: Provenance,
): string {
  const { title, invented, sources, question, units, date, notes = [] } = provenance;
  const head = [
    `${title}${invented ? ' (invented: no reading here is real)' : ''}`,
    ...sources.map(
      ({ name, licence, attribution }) => `Source: ${name}. ${attribution} Licence: ${licence}.`,
    ),
    `Question: ${question}`,
    units,
    `Written ${date}.`,
    ...(table.truncated ? [`Cut off after ${table.rows.length} rows: there were more.`] : []),
    ...notes,
  ];
  const lines = [
    ...head.flatMap((line) => line.split('\n')).map((line) => `# ${line}`.trimEnd()),
    table.columns.map(csvCell).join(','),
    ...table.rows.map((row) => row.map(csvCell).join(',')),
  ];
  return `${lines.join('\r\n')}\r\n`;
}

/** Text that a spreadsheet would run as a formula gets a leading apostrophe; figures never do. */
function csvCell(value: Cell): string {
  if (value === null) return '';
  if (typeof value !== 'string') return String(value);
  const safe = /^[=+@\t\r]|^-[^\d.]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
