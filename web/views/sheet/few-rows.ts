import type { StripRow } from '../../charts/year-strip.ts';

/** Rows that the sheet's strip keeps, by their keys: the losses that count, the crop, and what has its day. */
const KEPT = ['leaf', 'kill', 'harvest', 'covers-ready', 'plant', 'prune'];

/** The rows of a year that the sheet has room for, in their order. */
export function fewRows(rows: readonly StripRow[]): readonly StripRow[] {
  return rows
    .filter(({ key }) => KEPT.includes(key.replace(/ \d+$/, '')))
    .map((row) => ({ ...row, starts: false }));
}
