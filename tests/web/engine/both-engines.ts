import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import type * as Blocking from '@duckdb/duckdb-wasm/blocking';
import { bindNamed, type Parameter } from '../../../web/engine/bind-named.ts';
import { tableRows, type ResultTable } from '../../../web/engine/table-rows.ts';

const require = createRequire(import.meta.url);
const SCHEMA = readFileSync(new URL('../../../analysis/records/sql/schema.sql', import.meta.url), 'utf8');

/** An engine with the tables of a pack, filled. */
export interface FilledEngine {
  run(sql: string, parameters?: readonly Parameter[]): Promise<ResultTable>;
  ask(sql: string, values: Readonly<Record<string, Parameter>>): Promise<ResultTable>;
}

/** The engine that ships to browsers, with extensions off, inside Node. */
export async function wasmEngine(statements: readonly string[]): Promise<FilledEngine> {
  const duckdb = require('@duckdb/duckdb-wasm/blocking') as typeof Blocking;
  const dist = dirname(require.resolve('@duckdb/duckdb-wasm/dist/duckdb-eh.wasm'));
  const bundle = {
    mainModule: join(dist, 'duckdb-eh.wasm'),
    mainWorker: join(dist, 'duckdb-node-eh.worker.cjs'),
  };
  const db = await duckdb.createDuckDB(
    { mvp: bundle, eh: bundle },
    new duckdb.VoidLogger(),
    duckdb.NODE_RUNTIME,
  );
  await db.instantiate(() => {});
  db.open({});
  const connection = db.connect();
  for (const sql of ['set autoload_known_extensions = false', SCHEMA, ...statements]) connection.query(sql);
  const run = async (sql: string, parameters: readonly Parameter[] = []): Promise<ResultTable> => {
    const statement = connection.prepare(sql);
    try {
      return tableRows(statement.query(...parameters));
    } finally {
      statement.close();
    }
  };
  return {
    run,
    ask: (sql, values) => run(...(Object.values(bindNamed(sql, values)) as [string, Parameter[]])),
  };
}

/** The engine of the commands. */
export async function nativeEngine(statements: readonly string[]): Promise<FilledEngine> {
  const connection = await (await DuckDBInstance.create(':memory:')).connect();
  for (const sql of [SCHEMA, ...statements]) await connection.run(sql);
  const run = async (sql: string, parameters: readonly Parameter[] = []): Promise<ResultTable> => {
    const reader = await connection.runAndReadAll(sql, [...parameters]);
    return {
      columns: reader.columnNames(),
      types: reader.columnTypes().map(String),
      rows: reader.getRowsJson() as ResultTable['rows'],
      truncated: false,
    };
  };
  return {
    run,
    ask: (sql, values) => run(...(Object.values(bindNamed(sql, values)) as [string, Parameter[]])),
  };
}
