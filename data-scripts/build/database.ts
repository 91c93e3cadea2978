import { DuckDBInstance } from '@duckdb/node-api';
import schemaSql from '../../analysis/records/sql/schema.sql?raw';

/** The tables of a pack's database, in the order their files are read. */
export const TABLES = ['stations', 'nights', 'winters', 'dropped'] as const;

/**
 * Makes `records.duckdb` from one CSV file a table (no header, columns as in schema.sql, rows already in order;
 * an empty cell is unknown, a quoted empty cell an empty text).
 * Storage version v1.0.0 and small blocks, so that the browser's engine reads single stations by byte ranges.
 */
export async function writeDatabase(
  file: string,
  csvFiles: Record<(typeof TABLES)[number], string>,
): Promise<void> {
  const instance = await DuckDBInstance.create(':memory:');
  const connection = await instance.connect();
  try {
    await connection.run(`attach ${quoted(file)} as pack (storage_version 'v1.0.0', block_size 16384)`);
    await connection.run('use pack');
    await connection.run(schemaSql);
    for (const table of TABLES) {
      const format = "format csv, header false, auto_detect false, nullstr '', allow_quoted_nulls false";
      await connection.run(`copy ${table} from ${quoted(csvFiles[table])} (${format})`);
    }
    await connection.run('checkpoint pack');
    await connection.run('use memory');
    await connection.run('detach pack');
  } finally {
    connection.closeSync();
    instance.closeSync();
  }
}

function quoted(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}
