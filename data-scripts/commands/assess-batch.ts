import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';

import { BATCH_DRAWS, BATCH_LIMITS, type BadRow, type BatchRow } from '../../analysis/answer/batch.ts';
import { locateBatch, type LocatedBatch } from '../../analysis/answer/batch-places.ts';
import { batchText, readBatch } from '../../analysis/answer/batch-read.ts';
import type { BatchTold } from '../../analysis/answer/batch-run.ts';
import {
  BATCH_COLUMNS,
  batchCells,
  byLine,
  refusedRows,
  rowsWithoutHeight,
} from '../../analysis/answer/batch-table.ts';
import { csvLine } from '../../analysis/records/csv-text.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { strictProtection } from '../../analysis/answer/protection.ts';
import type { CitrusType } from '../../analysis/tree/catalogue.ts';
import { answerByThreads } from '../batch/answer-threads.ts';
import { Pack } from '../pack/open-pack.ts';
import type { AssessRequest } from './assess-options.ts';
import { batchProgress } from './batch-progress.ts';
import { protectionTexts } from './protection-texts.ts';
import { print, tell } from './run-command.ts';

/** Rows of the file written at once. */
const ROWS_A_WRITE = 50;

/** A file of places, each with each type: the table on stdout; bad rows and progress on stderr. */
export async function assessBatch(
  request: AssessRequest,
  file: string,
  threads: number | null,
): Promise<void> {
  const name = path.basename(file);
  const { asks, bad } = readBatch(await readText(file, name), name);
  const pack = await Pack.open(request.pack);
  const south = pack.manifest.hemisphere === 'south';
  const protection = await protectionTexts(request, south ? -1 : 1);
  strictProtection(protection);
  const batch = locateBatch(asks, pack.places);
  const answers: (BatchTold | null)[] = batch.places.map(() => null);
  const progress = batchProgress(batch.places.length);
  try {
    const typeIds = request.types.map(({ id }) => id);
    const question = { batch: true, pack: request.pack, typeIds, tree: request.tree, protection } as const;
    await answerByThreads(question, batch.places, threads, {
      onAnswers: (indices, told) => {
        indices.forEach((at, i) => (answers[at] = told[i]));
        progress.more(indices.length);
      },
    });
  } finally {
    progress.stop();
  }
  const refused = byLine([...bad, ...batch.bad, ...refusedRows(batch.rows, answers)]);
  for (const { line, reason, text } of refused)
    tell(`${name}, line ${line}: ${reason}${text && ` (${text})`}`);
  const told = batch.rows.filter(({ place }) => answers[place]?.problem === null);
  tell(
    `${told.length} of ${asks.length + bad.length} rows answered; ranges from ${BATCH_DRAWS} draws, not 1,000.`,
  );
  const heightless = rowsWithoutHeight(batch.rows, answers);
  if (heightless > 0)
    tell(
      `The height of ${heightless} of them isn't known: the mean height of the stations stands in for it, and the answer can be far off. A column elevation_m or elevation_ft gives it.`,
    );
  if (told.length === 0) throw new InputError(`${name}: no row could be answered`);
  if (request.format === 'json') await printJson(told, batch, answers, request.types, refused);
  else await printCsv(told, batch, answers, request.types);
}

async function readText(file: string, name: string): Promise<string> {
  const { size } = await stat(file);
  if (size > BATCH_LIMITS.bytes)
    throw new InputError(
      `${name} has ${(size / 1e6).toFixed(1)} MB; at most ${BATCH_LIMITS.bytes / 1e6} MB are read.`,
    );
  return batchText(new Uint8Array(await readFile(file)));
}

async function printCsv(
  rows: readonly BatchRow[],
  batch: LocatedBatch,
  answers: readonly (BatchTold | null)[],
  types: readonly CitrusType[],
): Promise<void> {
  await print(`${csvLine(BATCH_COLUMNS)}\n`);
  for (let from = 0; from < rows.length; from += ROWS_A_WRITE)
    await print(
      rows
        .slice(from, from + ROWS_A_WRITE)
        .flatMap((row) => cellsOf(row, batch, answers, types).map((cells) => `${csvLine(cells)}\n`))
        .join(''),
    );
}

/** One object: `draws`, `bad` rows, and `rows` with the columns as fields, `null` for empty. */
async function printJson(
  rows: readonly BatchRow[],
  batch: LocatedBatch,
  answers: readonly (BatchTold | null)[],
  types: readonly CitrusType[],
  bad: readonly BadRow[],
): Promise<void> {
  await print(`{"draws":${BATCH_DRAWS},"bad":${JSON.stringify(bad)},"rows":[`);
  for (let from = 0; from < rows.length; from += ROWS_A_WRITE) {
    const objects = rows
      .slice(from, from + ROWS_A_WRITE)
      .flatMap((row) => cellsOf(row, batch, answers, types))
      .map((cells) =>
        JSON.stringify(Object.fromEntries(BATCH_COLUMNS.map((column, c) => [column, cells[c]]))),
      );
    await print(`${from === 0 ? '' : ','}\n${objects.join(',\n')}`);
  }
  await print(']}\n');
}

function cellsOf(
  row: BatchRow,
  { places }: LocatedBatch,
  answers: readonly (BatchTold | null)[],
  types: readonly CitrusType[],
) {
  const answer = answers[row.place];
  if (!answer || answer.problem !== null) return [];
  return types.map((type, index) => batchCells(row, places[row.place], answer, type, index));
}
