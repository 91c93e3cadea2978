import { t } from '../../analysis/language/t.ts';
import * as duckdb from '@duckdb/duckdb-wasm';
import wasmUrl from '@duckdb/duckdb-wasm/dist/duckdb-eh.wasm?url';
import workerUrl from '@duckdb/duckdb-wasm/dist/duckdb-browser-eh.worker.js?url';
import { Table } from 'apache-arrow';
import type { Parameter } from './bind-named.ts';
import { keptFile } from '../kept/pack-files.ts';
import { checkWasm } from './check-wasm.ts';
import { DownloadError, download, type Fetch, type OnBytes } from './download.ts';
import { WASM_BYTES, WORKER_BYTES } from './engine-size.ts';
import type { RunningEngine } from './engine-port.ts';
import { quoted } from './sql-quote.ts';
import { tableRows, type ResultTable } from './table-rows.ts';

/** Ranges work only with all three, and never silently turn into a download of the whole file. */
const RANGES_ONLY = { reliableHeadRequests: true, allowFullHTTPReads: false, forceFullHTTPReads: false };

/** Starting takes 1 to 3 s once the files are here; a slow phone gets twenty times that. */
const START_PATIENCE_MS = 60_000;

/** DuckDB in its thread, no database open yet. */
export interface BroughtUp {
  readonly db: duckdb.AsyncDuckDB;
  readonly thread: Worker;
}

/**
 * Downloads and starts DuckDB. Both files are fetched here rather than by the engine, so that bytes can be counted and a
 * failure is an error instead of a worker that never answers.
 */
export async function bringUpDuckdb(
  onBytes: OnBytes,
  fetcher: Fetch = (url) => fetch(url),
): Promise<BroughtUp> {
  const [worker, wasm] = await downloadParts(fetcher, onBytes);
  await checkWasm(wasm, WASM_BYTES);
  const [workerBlobUrl, wasmBlobUrl] = [URL.createObjectURL(worker), URL.createObjectURL(wasm)];
  const thread = new Worker(workerBlobUrl);
  const db = new duckdb.AsyncDuckDB(new duckdb.VoidLogger(), thread);
  try {
    await Promise.race([db.instantiate(wasmBlobUrl), failureOf(thread)]);
    return { db, thread };
  } catch (error) {
    thread.terminate();
    throw error;
  } finally {
    URL.revokeObjectURL(workerBlobUrl);
    URL.revokeObjectURL(wasmBlobUrl);
  }
}

/** Opens what was brought up; the engine is ended where that fails. */
export async function openDuckdb(
  { db, thread }: BroughtUp,
  where: Pick<duckdb.DuckDBConfig, 'path' | 'accessMode'>,
): Promise<duckdb.AsyncDuckDBConnection> {
  try {
    await db.open({ ...where, filesystem: RANGES_ONLY });
    const connection = await db.connect();
    await connection.query('set autoload_known_extensions = false');
    await connection.query('set autoinstall_known_extensions = false');
    return connection;
  } catch (error) {
    thread.terminate();
    throw error;
  }
}

/** Starts DuckDB to ask packs. */
export async function startDuckdb(onBytes: OnBytes, fetcher?: Fetch): Promise<RunningEngine> {
  const engine = await bringUpDuckdb(onBytes, fetcher);
  return new DuckdbEngine(engine.db, await openDuckdb(engine, { path: ':memory:' }));
}

async function downloadParts(fetcher: Fetch, onBytes: OnBytes): Promise<[Blob, Blob]> {
  const loaded = [0, 0];
  const totals: (number | null)[] = [WORKER_BYTES, WASM_BYTES];
  const count =
    (part: number): OnBytes =>
    (bytes, total) => {
      loaded[part] = bytes;
      totals[part] = total;
      const [a, b] = totals;
      onBytes(loaded[0] + loaded[1], a === null || b === null ? null : a + b);
    };
  const what = t`the database engine`;
  const absolute = (url: string): string => new URL(url, document.baseURI).href;
  return Promise.all([
    download(
      { url: absolute(workerUrl), what, type: 'text/javascript', expectedBytes: WORKER_BYTES },
      fetcher,
      count(0),
    ),
    download(
      { url: absolute(wasmUrl), what, type: 'application/wasm', expectedBytes: WASM_BYTES },
      fetcher,
      count(1),
    ),
  ]);
}

/** Never resolves; rejects when the worker breaks or takes longer than any machine should. */
function failureOf(thread: Worker): Promise<never> {
  return new Promise((_, reject) => {
    const fail = (): void =>
      reject(new DownloadError(t`The database engine could not be started in this browser.`));
    thread.addEventListener('error', fail, { once: true });
    setTimeout(fail, START_PATIENCE_MS);
  });
}

class DuckdbEngine implements RunningEngine {
  #attempts = 0;
  /** Name of the pack's database; `null` until one has been attached. */
  #attached: string | null = null;
  /** Name under which the engine knows the kept file that is attached. */
  #file: string | null = null;

  constructor(
    private readonly db: duckdb.AsyncDuckDB,
    private readonly connection: duckdb.AsyncDuckDBConnection,
  ) {}

  async attach(recordsUrl: string): Promise<void> {
    const before = this.#attached;
    const name = `records_${++this.#attempts}`;
    const kept = await keptFile(recordsUrl);
    // A name of its own each time: the engine remembers files by name.
    const source = kept ? `${name}.duckdb` : recordsUrl;
    if (kept)
      await this.db.registerFileHandle(source, kept, duckdb.DuckDBDataProtocol.BROWSER_FILEREADER, true);
    await this.connection.query(`attach ${quoted(source)} as ${name} (read_only)`);
    await this.connection.query(`use ${name}`);
    this.#attached = name;
    if (before) await this.connection.query(`detach ${before}`);
    if (this.#file) await this.db.dropFile(this.#file);
    this.#file = kept ? source : null;
  }

  async ask(sql: string, parameters: readonly Parameter[], limit: number): Promise<ResultTable> {
    const statement = await this.connection.prepare(sql);
    try {
      return tableRows(await statement.query(...parameters), limit);
    } finally {
      await statement.close();
    }
  }

  async askStoppable(sql: string, limit: number): Promise<ResultTable> {
    // Preparing takes one statement only; sending would run several.
    await (await this.connection.prepare(sql)).close();
    const reader = await this.connection.send(sql, true);
    const batches = [];
    for await (const batch of reader) batches.push(batch);
    return tableRows(new Table(reader.schema, batches), limit);
  }

  async stop(): Promise<void> {
    await this.connection.cancelSent();
  }

  async close(): Promise<void> {
    await this.db.terminate();
  }
}
