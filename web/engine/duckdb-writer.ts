import * as duckdb from '@duckdb/duckdb-wasm';
import { CSV_FORMAT, TABLES, type Table } from '../../analysis/gather/table-csv.ts';
import schemaSql from '../../analysis/records/sql/schema.sql?raw';
import { bringUpDuckdb, openDuckdb, type BroughtUp } from './duckdb-engine.ts';
import { quoted } from './sql-quote.ts';

/** Rows of the large tables to copy out of another pack's database before one's own. */
export interface CopiedRows {
  readonly database: Blob;
  readonly stations: readonly string[];
}

/** Begin of the names of databases being written; none of them outlives its writer. */
const PREFIX = 'gathering-';

/**
 * Makes the database of a pack as a native file. The engine can write such a file only where it is the database it was opened
 * with, in the origin's private file system: there it lies until it is put where it belongs.
 */
export class DuckdbWriter {
  readonly #engine: Promise<BroughtUp>;
  readonly #name = `${PREFIX}${crypto.randomUUID()}.duckdb`;

  /** Begins to bring the engine up, so that it is there when it is needed. */
  constructor() {
    this.#engine = bringUpDuckdb(() => {});
    this.#engine.catch(() => {});
  }

  /**
   * Writes the tables (lines as `analysis/gather` makes them).
   * @returns the file, there until `close`
   * @throws what the engine says; a lack of room too
   */
  async write(tables: Readonly<Record<Table, Blob>>, copied: CopiedRows | null): Promise<File> {
    const engine = await this.#engine;
    const connection = await openDuckdb(engine, {
      path: `opfs://${this.#name}`,
      accessMode: duckdb.DuckDBAccessMode.READ_WRITE,
    });
    const register = (name: string, content: Blob): Promise<void> =>
      engine.db.registerFileHandle(
        name,
        new File([content], name),
        duckdb.DuckDBDataProtocol.BROWSER_FILEREADER,
        true,
      );
    await connection.query(schemaSql);
    if (copied) {
      await register('joined.duckdb', copied.database);
      await connection.query(`attach 'joined.duckdb' as joined (read_only)`);
      const stations = copied.stations.map(quoted).join(', ');
      for (const table of ['nights', 'dropped'] as const) {
        await connection.query(
          `insert into ${table} by name select * from joined.${table} where station in (${stations})`,
        );
      }
      await connection.query('detach joined');
    }
    for (const table of TABLES) {
      if (tables[table].size === 0) continue;
      await register(`${table}.csv`, tables[table]);
      await connection.query(`copy ${table} from '${table}.csv' (${CSV_FORMAT})`);
    }
    await connection.query('checkpoint');
    await connection.close();
    // Only an engine that is gone lets go of the file.
    await engine.db.terminate();
    const root = await navigator.storage.getDirectory();
    return (await root.getFileHandle(this.#name)).getFile();
  }

  /** Ends the engine and removes the file. */
  async close(): Promise<void> {
    const engine = await this.#engine.catch(() => null);
    engine?.thread.terminate();
    await removeFiles((name) => name.startsWith(this.#name));
  }
}

/** Removes databases that pages which ended in the middle left behind. */
export function removeHalfWritten(): Promise<void> {
  return removeFiles((name) => name.startsWith(PREFIX));
}

/** Removes files of the private file system; one in use stays. */
async function removeFiles(which: (name: string) => boolean): Promise<void> {
  const root = await navigator.storage.getDirectory();
  const names: string[] = [];
  for await (const name of root.keys()) if (which(name)) names.push(name);
  await Promise.all(names.map((name) => root.removeEntry(name).catch(() => {})));
}
