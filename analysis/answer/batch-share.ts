import { batchPeriod, type BatchAnswer, type BatchLevel, type BatchRow, type BatchRefusal } from './batch.ts';

/** Of the rows with an answer, those for whom a loss is rarer than once in so many winters. */
export interface BatchShare {
  /** Rows with an answer. */
  readonly rows: number;
  /** Rarer by the whole range; by the best estimate; by no part of the range; the rest may be either. */
  readonly surely: number;
  readonly likely: number;
  readonly not: number;
  readonly perhaps: number;
}

/**
 * Counts rows by whether a loss of a type (by its index) at a level is rarer than 1 winter in `periodWinters`: surely where even the
 * frequent end of the range is, not where the rare end isn't, perhaps between. A headline without a rare end never says not.
 * The best estimate is the headline's period; a loss that was never seen counts by its frequent end.
 */
export function batchShare(
  rows: readonly BatchRow[],
  answers: readonly (BatchAnswer | BatchRefusal | null)[],
  type: number,
  level: BatchLevel,
  periodWinters: number,
): BatchShare {
  let [count, surely, likely, not] = [0, 0, 0, 0];
  for (const { place } of rows) {
    const answer = answers[place];
    if (!answer || answer.problem !== null) continue;
    const { period, low, high } = batchPeriod(answer, type, level);
    count++;
    if (low > periodWinters) surely++;
    else if (high !== null && high <= periodWinters) not++;
    if ((period ?? low) > periodWinters) likely++;
  }
  return { rows: count, surely, likely, not, perhaps: count - surely - not };
}
