import type { Table } from '../../analysis/gather/table-csv.ts';
import type { CopiedRows, DuckdbWriter } from './duckdb-writer.ts';

/**
 * Makes a pack's database: the engine and all its code come only with it. To be closed, whether it wrote or not.
 */
export class DatabaseWriter {
  readonly #writer: Promise<DuckdbWriter>;

  /** Begins to bring the engine up, so that it is there when it is needed. */
  constructor() {
    this.#writer = import('./duckdb-writer.ts').then(({ DuckdbWriter: Writer }) => new Writer());
    this.#writer.catch(() => {});
  }

  /**
   * @returns the file, there until `close`
   * @throws what the engine says; a lack of room too
   */
  async write(tables: Readonly<Record<Table, Blob>>, copied: CopiedRows | null): Promise<File> {
    return (await this.#writer).write(tables, copied);
  }

  /** Ends the engine and removes the file. */
  async close(): Promise<void> {
    await (await this.#writer.catch(() => null))?.close();
  }
}

/** Removes databases that pages which ended in the middle left behind. */
export async function removeHalfWritten(): Promise<void> {
  await (await import('./duckdb-writer.ts')).removeHalfWritten();
}
