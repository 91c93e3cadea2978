import type { BadRow, BatchPlace } from '../../../../analysis/answer/batch.ts';
import { BATCH_COLUMNS, batchCells } from '../../../../analysis/answer/batch-table.ts';
import type { CsvCell } from '../../../../analysis/records/csv-text.ts';
import { t } from '../../../../analysis/language/t.ts';
import { today } from '../../../data/save-text.ts';
import type { OpenPack } from '../../../data/open-pack.ts';
import { csvPieces, plainCsv } from '../../../format/export-csv.ts';
import type { BatchEntries } from './batch-entries.ts';
import { BATCH_NOTES, heightsMissing } from './batch-words.ts';

/** Work between two looks at what else the page has to do, ms. */
const REST_MS = 50;

/**
 * The rows shown, or all, as CSV with the columns of the command, under lines that say where they come from; piece by piece,
 * since 20,000 rows of all types are 740,000 lines.
 */
export function batchPieces(
  entries: BatchEntries,
  shown: Uint32Array,
  places: readonly BatchPlace[],
  { meta }: Pick<OpenPack, 'meta'>,
  question: string,
): Generator<string> {
  return csvPieces(BATCH_COLUMNS, cellsOf(entries, shown, places), {
    title: meta.title,
    invented: meta.invented,
    sources: meta.sources,
    question,
    units: t`Periods and their ends in winters; temperatures in °C, heights in metres, distances in km.`,
    date: today(),
    notes: [...heightsMissing(entries), ...BATCH_NOTES],
  });
}

function* cellsOf(
  entries: BatchEntries,
  shown: Uint32Array,
  places: readonly BatchPlace[],
): Generator<CsvCell[]> {
  for (const entry of shown) {
    const { row, answer, type } = entries.at(entry);
    yield batchCells(row, places[row.place], answer, entries.types[type], type);
  }
}

/** The pieces as one file. Each leaves the script's memory at once, and the page stays awake between them. */
export async function fileOf(pieces: Iterable<string>, type: string): Promise<Blob> {
  const parts: Blob[] = [];
  let restedAt = performance.now();
  for (const piece of pieces) {
    parts.push(new Blob([piece]));
    if (performance.now() - restedAt < REST_MS) continue;
    await new Promise((resolve) => setTimeout(resolve));
    restedAt = performance.now();
  }
  return new Blob(parts, { type });
}

/** Bad rows as a table of their own. */
export function badRowsCsv(bad: readonly BadRow[]): string {
  return plainCsv({
    columns: ['line', 'reason', 'text'],
    rows: bad.map(({ line, reason, text }) => [line, reason, text]),
  });
}
