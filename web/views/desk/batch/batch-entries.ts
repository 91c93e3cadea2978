import {
  BATCH_ADVICE,
  batchPeriod,
  type BatchAnswer,
  type BatchLevel,
  type BatchRow,
} from '../../../../analysis/answer/batch.ts';
import type { BatchTold } from '../../../../analysis/answer/batch-run.ts';
import type { OpenAdvice } from '../../../../analysis/answer/advice.ts';
import { spokenLocale } from '../../../../analysis/language/t.ts';
import type { TypeRef } from '../../../state/batch-state.svelte.ts';

export const SORT_COLUMNS = [
  'line',
  'place',
  'customer',
  'type',
  'class',
  'fruit',
  'leaf',
  'kill',
  'winters',
] as const;
export type SortColumn = (typeof SORT_COLUMNS)[number];

export interface BatchSort {
  readonly column: SortColumn;
  readonly descending: boolean;
}

export interface BatchFilter {
  /** Part of a label, a customer's number or a postcode, whatever its case. */
  readonly text: string;
  readonly typeId: string | null;
  /** `'none'`: too few winters to advise. */
  readonly advice: OpenAdvice | 'none' | null;
}

export const NO_FILTER: BatchFilter = { text: '', typeId: null, advice: null };

/** Rows of the file times types, as numbers: row x types + type. Filters and sorts tens of thousands at once. */
export class BatchEntries {
  /** All with an answer, in the order of the file. */
  readonly all: Uint32Array;
  readonly #texts: readonly string[];
  readonly #keys = new Map<SortColumn, Float64Array>();

  constructor(
    readonly rows: readonly BatchRow[],
    readonly answers: readonly (BatchTold | null)[],
    readonly types: readonly TypeRef[],
  ) {
    const answered = rows.flatMap((_, row) => (this.answerOf(row) ? [row] : []));
    this.all = Uint32Array.from(answered.flatMap((row) => types.map((_, type) => row * types.length + type)));
    this.#texts = rows.map(({ label, customer, postcode }) =>
      `${label}\n${customer}\n${postcode}`.toLowerCase(),
    );
  }

  /** Row, type and answer of an entry. */
  at(entry: number): { readonly row: BatchRow; readonly answer: BatchAnswer; readonly type: number } {
    const row = Math.floor(entry / this.types.length);
    return { row: this.rows[row], answer: this.answerOf(row)!, type: entry % this.types.length };
  }

  answerOf(row: number): BatchAnswer | null {
    const told = this.answers[this.rows[row].place];
    return told && told.problem === null ? told : null;
  }

  filtered({ text, typeId, advice }: BatchFilter): Uint32Array {
    const wanted = text.trim().toLowerCase();
    const type = typeId === null ? -1 : this.types.findIndex(({ id }) => id === typeId);
    const numbered = BATCH_ADVICE.indexOf(advice === 'none' ? null : advice);
    return this.all.filter((entry) => {
      const row = Math.floor(entry / this.types.length);
      const of = entry % this.types.length;
      return (
        (type < 0 || of === type) &&
        (advice === null || this.answerOf(row)!.advice[of] === numbered) &&
        (wanted === '' || this.#texts[row].includes(wanted))
      );
    });
  }

  /** Entries in another order; equals stay as in the file. What was never seen counts as its bound. */
  sorted(entries: Uint32Array, { column, descending }: BatchSort): Uint32Array {
    const keys = this.#key(column);
    const sign = descending ? -1 : 1;
    return entries.slice().sort((a, b) => sign * (keys[a] - keys[b]) || a - b);
  }

  #key(column: SortColumn): Float64Array {
    let keys = this.#keys.get(column);
    if (!keys) {
      const of = this.#keyOf(column);
      keys = new Float64Array(this.rows.length * this.types.length);
      for (const entry of this.all) {
        const row = Math.floor(entry / this.types.length);
        keys[entry] = of(row, entry % this.types.length, this.answerOf(row)!);
      }
      this.#keys.set(column, keys);
    }
    return keys;
  }

  #keyOf(column: SortColumn): (row: number, type: number, answer: BatchAnswer) => number {
    switch (column) {
      case 'line':
        return (row) => this.rows[row].line;
      case 'place': {
        const ranks = ranked(this.rows.map(({ label, postcode }) => `${postcode} ${label}`.trim()));
        return (row) => ranks[row];
      }
      case 'customer': {
        const ranks = ranked(this.rows.map(({ customer }) => customer));
        return (row) => ranks[row];
      }
      case 'type': {
        const ranks = ranked(this.types.map(({ name }) => name));
        return (_, type) => ranks[type];
      }
      case 'class':
        return (_, type, { advice }) => advice[type];
      case 'winters':
        return (_row, _type, { winters }) => winters;
      default:
        return (_, type, answer) => rarity(answer, type, column);
    }
  }
}

function rarity(answer: BatchAnswer, type: number, level: BatchLevel): number {
  const { period, low } = batchPeriod(answer, type, level);
  return period ?? low;
}

/** The rank of each text among all, numbers in texts by their value; equal texts have the same. */
function ranked(texts: readonly string[]): number[] {
  const { compare } = new Intl.Collator(spokenLocale(), { numeric: true });
  const order = [...new Set(texts)].sort(compare);
  const rank = new Map(order.map((text, at) => [text, at]));
  return texts.map((text) => rank.get(text)!);
}
