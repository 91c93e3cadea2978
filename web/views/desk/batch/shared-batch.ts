import { BatchState } from '../../../state/batch-state.svelte.ts';
import { answerBatch } from '../../../workers/batch-client.ts';
import type { BatchAsked } from '../../../workers/batch-messages.ts';
import { BatchView } from './batch-view.svelte.ts';

/** The page's one batch and how it is looked at: both outlast the part that shows them. */
export const batch = new BatchState<BatchAsked>(answerBatch, () => performance.now());
export const view = new BatchView();
