import { DuckDBInstance } from '@duckdb/node-api';
import { CSV_FORMAT, TABLES, type Table } from '../../analysis/gather/table-csv.ts';
import schemaSql from '../../analysis/records/sql/schema.sql?raw';

/**
 * Makes `records.duckdb` from one CSV file a table (columns as in schema.sql, rows already in order).
 * Storage version v1.0.0 and small blocks, so that the browser's engine reads single stations by byte ranges.
 */
export async function writeDatabase(file: string, csvFiles: Record<Table, string>): Promise<void> {
  const instance = await DuckDBInstance.create(':memory:');
  const connection = await instance.connect();
  try {
    await connection.run(`attach ${quoted(file)} as pack (storage_version 'v1.0.0', block_size 16384)`);
    await connection.run('use pack');
    await connection.run(schemaSql);
    for (const table of TABLES) {
      await connection.run(`copy ${table} from ${quoted(csvFiles[table])} (${CSV_FORMAT})`);
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
