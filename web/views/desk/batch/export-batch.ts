import type { BadRow, BatchPlace } from '../../../../analysis/answer/batch.ts';
import { BATCH_COLUMNS, batchCells } from '../../../../analysis/answer/batch-table.ts';
import { t } from '../../../../analysis/language/t.ts';
import { today } from '../../../data/save-text.ts';
import type { OpenPack } from '../../../data/open-pack.ts';
import { plainCsv, toCsv } from '../../../format/export-csv.ts';
import type { BatchEntries } from './batch-entries.ts';
import { BATCH_NOTES } from './batch-words.ts';

/** The rows shown, or all, as CSV with the columns of the command, under lines that say where they come from. */
export function batchCsv(
  entries: BatchEntries,
  shown: Uint32Array,
  places: readonly BatchPlace[],
  { meta }: Pick<OpenPack, 'meta'>,
  question: string,
): string {
  const rows = Array.from(shown, (entry) => {
    const { row, answer, type } = entries.at(entry);
    return batchCells(row, places[row.place], answer, entries.types[type], type);
  });
  return toCsv(
    { columns: BATCH_COLUMNS, rows },
    {
      title: meta.title,
      invented: meta.invented,
      sources: meta.sources,
      question,
      units: t`Periods and their ends in winters; temperatures in °C, heights in metres, distances in km.`,
      date: today(),
      notes: BATCH_NOTES,
    },
  );
}

/** Bad rows as a table of their own. */
export function badRowsCsv(bad: readonly BadRow[]): string {
  return plainCsv({
    columns: ['line', 'reason', 'text'],
    rows: bad.map(({ line, reason, text }) => [line, reason, text]),
  });
}
