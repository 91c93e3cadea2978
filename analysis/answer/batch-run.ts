import type { BatchAnswer, BatchPlace, BatchRefusal } from './batch.ts';
import { batchPieces } from './batch-places.ts';

/** Places answered at once: so many are lost, or waited for, when a batch is stopped. */
const PIECE_SIZE = 8;

export type BatchTold = BatchAnswer | BatchRefusal;

/** Somebody who answers places: a worker of the page, a thread of a command. */
export type BatchHelper = (places: readonly BatchPlace[]) => Promise<readonly BatchTold[]>;

export interface BatchRunOptions {
  /** Hears of each place with its index as soon as it is answered. */
  readonly onAnswers: (indices: readonly number[], answers: readonly BatchTold[]) => void;
  /** Asked before each piece; what is on its way is still told. */
  readonly stopped?: () => boolean;
}

/**
 * Hands the places out to the helpers, neighbours together, until all are answered or it is stopped.
 * @returns whether all were answered
 * @throws whatever a helper fails with; the others then stop too
 */
export async function runBatch(
  places: readonly BatchPlace[],
  helpers: readonly BatchHelper[],
  { onAnswers, stopped = () => false }: BatchRunOptions,
): Promise<boolean> {
  const pieces = batchPieces(places, PIECE_SIZE);
  let next = 0;
  let failed = false;
  const work = async (helper: BatchHelper): Promise<void> => {
    while (next < pieces.length && !failed && !stopped()) {
      const piece = pieces[next++];
      try {
        onAnswers(piece, await helper(piece.map((at) => places[at])));
      } catch (error) {
        failed = true;
        throw error;
      }
    }
  };
  await Promise.all(helpers.map(work));
  return next >= pieces.length && !failed;
}
