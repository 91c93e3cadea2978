import { parentPort, workerData } from 'node:worker_threads';

import type { BatchPlace } from '../../analysis/answer/batch.ts';
import { BatchAnswers, batchQuestion } from '../../analysis/answer/batch-answer.ts';
import type { BatchTold } from '../../analysis/answer/batch-run.ts';
import { strictProtection, type ProtectionTexts } from '../../analysis/answer/protection.ts';
import { isCoverId, writtenCovers } from '../../analysis/cover/cover-ids.ts';
import { findType } from '../../analysis/tree/catalogue.ts';
import type { TreeState } from '../../analysis/tree/penalties.ts';
import { Pack } from '../pack/open-pack.ts';

/** What a thread is started with. */
export interface ThreadQuestion {
  readonly batch: true;
  readonly pack: string;
  readonly typeIds: readonly string[];
  readonly tree: TreeState;
  readonly protection: ProtectionTexts;
}

/** From a thread: what came of the places sent, or why nothing did. */
export type ThreadReply = { readonly answers: readonly BatchTold[] } | { readonly failure: string };

/** Whether this is a thread started for a batch. */
export function isBatchThread(): boolean {
  return (workerData as ThreadQuestion | null)?.batch === true;
}

/** Answers every list of places that comes, in turn, until the thread is ended. */
export function answerBatchPlaces(): void {
  const { pack, typeIds, tree, protection } = workerData as ThreadQuestion;
  const types = typeIds.flatMap((id) => findType(id) ?? []);
  const covers = writtenCovers(protection.cover).filter(isCoverId);
  const question = batchQuestion(types, tree, strictProtection(protection), covers);
  const answers = Pack.open(pack).then((open) => new BatchAnswers(open, question));
  const reply = (message: ThreadReply): void => parentPort!.postMessage(message);
  parentPort!.on('message', (places: readonly BatchPlace[]) => {
    answerAll(answers, places).then(
      (told) => reply({ answers: told }),
      (error: unknown) => reply({ failure: error instanceof Error ? error.message : String(error) }),
    );
  });
}

async function answerAll(
  answers: Promise<BatchAnswers>,
  places: readonly BatchPlace[],
): Promise<BatchTold[]> {
  const ready = await answers;
  const told: BatchTold[] = [];
  for (const place of places) told.push(await ready.answer(place));
  return told;
}
