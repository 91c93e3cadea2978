import { BatchAnswers, batchQuestion } from '../../analysis/answer/batch-answer.ts';
import type { BatchTold } from '../../analysis/answer/batch-run.ts';
import { NOTHING_CHOSEN, readProtection } from '../../analysis/answer/protection.ts';
import { isCoverId, writtenCovers } from '../../analysis/cover/cover-ids.ts';
import { findType } from '../../analysis/tree/catalogue.ts';
import type { BatchAsked, BatchReply, BatchRequest } from './batch-messages.ts';
import { WinterTiles, type TileFetch } from './winter-tiles.ts';

/** In the open, without a cover. */
const NOTHING = { ...NOTHING_CHOSEN, hemisphere: 'north', container: false } as const;

/** Answers places of a batch, without being tied to a worker. What was loaded for one batch is kept while it goes on. */
export class BatchDesk {
  #batch: { readonly key: string; readonly answers: Promise<BatchAnswers> } | null = null;

  constructor(
    private readonly send: (reply: BatchReply) => void,
    private readonly fetcher: TileFetch,
  ) {}

  async take({ asked, places }: BatchRequest): Promise<void> {
    try {
      const answers = await this.#answers(asked);
      const told: BatchTold[] = [];
      for (const place of places) told.push(await answers.answer(place));
      this.send({ answers: told });
    } catch (error) {
      this.#batch = null;
      this.send({ failure: error instanceof Error ? error.message : String(error) });
    }
  }

  #answers(asked: BatchAsked): Promise<BatchAnswers> {
    const key = JSON.stringify(asked);
    if (this.#batch?.key !== key) this.#batch = { key, answers: this.#open(asked) };
    return this.#batch.answers;
  }

  async #open({ packUrl, typeIds, tree, protection }: BatchAsked): Promise<BatchAnswers> {
    const tiles = await WinterTiles.open(packUrl, this.fetcher);
    const types = typeIds.flatMap((id) => findType(id) ?? []);
    const covers = writtenCovers(protection?.cover ?? null).filter(isCoverId);
    return new BatchAnswers(tiles, batchQuestion(types, tree, readProtection(protection ?? NOTHING), covers));
  }
}
