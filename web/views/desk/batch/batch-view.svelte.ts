import type { BatchLevel } from '../../../../analysis/answer/batch.ts';
import { CITRUS_TYPES } from '../../../../analysis/tree/catalogue.ts';
import { NO_FILTER, type BatchFilter, type BatchSort } from './batch-entries.ts';

/** Types asked about unless the reader says otherwise: all that are grown for their fruit. */
export const USUAL_TYPES: readonly string[] = CITRUS_TYPES.filter(({ use }) => use !== 'rootstock').map(
  ({ id }) => id,
);

/** How the reader looks at a batch: which types, which rows in which order, which share. */
export class BatchView {
  typeIds = $state.raw<readonly string[]>(USUAL_TYPES);
  filter = $state.raw<BatchFilter>(NO_FILTER);
  sort = $state.raw<BatchSort>({ column: 'line', descending: false });
  page = $state(0);
  shareLevel = $state<BatchLevel>('kill');
  sharePeriod = $state(25);
  shareType = $state<string | null>(null);

  /** Another filter or order begins at its first row. */
  show(change: { readonly filter?: Partial<BatchFilter>; readonly sort?: BatchSort }): void {
    if (change.filter) this.filter = { ...this.filter, ...change.filter };
    if (change.sort) this.sort = change.sort;
    this.page = 0;
  }
}
