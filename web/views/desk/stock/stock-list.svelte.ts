import {
  STOCK_AGE_MOST,
  STOCK_ROWS_MOST,
  STOCK_SIZE_LONGEST,
  type StockRow,
} from '../../../../analysis/answer/stock.ts';
import { findType } from '../../../../analysis/tree/catalogue.ts';
import { keep, readKept, type Storage } from '../../../state/kept.ts';

/** Where the nursery's list is kept on this device. */
export const STOCK_KEY = 'desk-stock';
/** Set to `stock` where the counter tells of the stock alone. */
const STOCK_ONLY_KEY = 'desk-shows';
const UNDONE_MOST = 30;

/** A line of the stock on the page. */
export interface KeptRow extends StockRow {
  /** Stays the same while the line is edited. */
  readonly key: string;
}

/** The nursery's own list, kept on this device; each change can be taken back. */
export class StockList {
  #rows = $state.raw<readonly KeptRow[]>([]);
  #before = $state.raw<readonly (readonly KeptRow[])[]>([]);
  #only = $state(false);
  #keys = 0;

  constructor(private readonly storage: Storage | null) {
    this.#rows = this.#keyed(readStored(storage));
    this.#only = readKept(storage, STOCK_ONLY_KEY, ['stock']) !== null;
  }

  get rows(): readonly KeptRow[] {
    return this.#rows;
  }
  get canUndo(): boolean {
    return this.#before.length > 0;
  }
  /** The counter tells of the stock alone. */
  get only(): boolean {
    return this.#only && this.#rows.length > 0;
  }

  showOnly(on: boolean): void {
    this.#only = on;
    keep(this.storage, STOCK_ONLY_KEY, on ? 'stock' : null);
  }

  /** A whole list in place of the one before. */
  replace(rows: readonly StockRow[]): void {
    this.#change(this.#keyed(rows.slice(0, STOCK_ROWS_MOST)));
  }

  /** One more line, last; nothing where the list is full. */
  add(row: StockRow): boolean {
    if (this.#rows.length >= STOCK_ROWS_MOST) return false;
    this.#change([...this.#rows, ...this.#keyed([row])]);
    return true;
  }

  edit(key: string, change: Partial<Pick<StockRow, 'size' | 'ageYears'>>): void {
    this.#change(this.#rows.map((row) => (row.key === key ? { ...row, ...change } : row)));
  }

  remove(key: string): void {
    this.#change(this.#rows.filter((row) => row.key !== key));
  }

  undo(): void {
    const before = this.#before.at(-1);
    if (!before) return;
    this.#before = this.#before.slice(0, -1);
    this.#write(before);
  }

  #change(next: readonly KeptRow[]): void {
    this.#before = [...this.#before, this.#rows].slice(-UNDONE_MOST);
    this.#write(next);
  }

  #write(rows: readonly KeptRow[]): void {
    this.#rows = rows;
    const plain = rows.map(({ typeId, size, ageYears }) => ({ typeId, size, ageYears }));
    keep(this.storage, STOCK_KEY, plain.length === 0 ? null : JSON.stringify(plain));
  }

  #keyed(rows: readonly StockRow[]): readonly KeptRow[] {
    return rows.map((row) => ({ ...row, key: `stock-${++this.#keys}` }));
  }
}

/** What the device kept; lines that make no sense are left out. */
function readStored(storage: Storage | null): readonly StockRow[] {
  try {
    const kept: unknown = JSON.parse(storage?.getItem(STOCK_KEY) ?? '[]');
    return Array.isArray(kept) ? kept.filter(isRow).slice(0, STOCK_ROWS_MOST) : [];
  } catch {
    return [];
  }
}

function isRow(value: unknown): value is StockRow {
  const { typeId, size, ageYears } = (value ?? {}) as Partial<Record<keyof StockRow, unknown>>;
  return (
    typeof typeId === 'string' &&
    findType(typeId) !== undefined &&
    typeof size === 'string' &&
    size.length <= STOCK_SIZE_LONGEST &&
    (ageYears === null ||
      (Number.isInteger(ageYears) && Number(ageYears) >= 1 && Number(ageYears) <= STOCK_AGE_MOST))
  );
}
