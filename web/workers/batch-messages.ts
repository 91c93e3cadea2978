import type { BatchPlace } from '../../analysis/answer/batch.ts';
import type { BatchTold } from '../../analysis/answer/batch-run.ts';
import type { ProtectionTexts } from '../../analysis/answer/protection.ts';
import type { TreeState } from '../../analysis/tree/penalties.ts';

/** What is asked about every place of a batch. */
export interface BatchAsked {
  /** Address of the pack's folder, ending in `/`. */
  readonly packUrl: string;
  readonly typeIds: readonly string[];
  readonly tree: TreeState;
  readonly protection: ProtectionTexts | null;
}

/** To a worker: some places of a batch. One list is on its way at a time. */
export interface BatchRequest {
  readonly asked: BatchAsked;
  readonly places: readonly BatchPlace[];
}

/** From a worker: what came of the places, in their order, or why nothing did. */
export type BatchReply = { readonly answers: readonly BatchTold[] } | { readonly failure: string };
