import { DuckDBInstance, type DuckDBConnection, type DuckDBValue } from '@duckdb/node-api';

/** A pack's database, open for reading. */
export class PackDatabase {
  private constructor(
    private readonly instance: DuckDBInstance,
    private readonly connection: DuckDBConnection,
  ) {}

  static async open(file: string): Promise<PackDatabase> {
    const instance = await DuckDBInstance.create(file, { access_mode: 'READ_ONLY' });
    return new PackDatabase(instance, await instance.connect());
  }

  /** Rows of a prepared statement; parameters by name, without the `$`. */
  async rows<Row extends object>(sql: string, parameters: Record<string, DuckDBValue> = {}): Promise<Row[]> {
    const reader = await this.connection.runAndReadAll(sql, parameters);
    return reader.getRowObjects() as Row[];
  }

  /** Rows of a prepared statement that gives nothing but small whole numbers, in the order of its columns. */
  async table(sql: string, parameters: Record<string, DuckDBValue> = {}): Promise<number[][]> {
    const reader = await this.connection.runAndReadAll(sql, parameters);
    return reader.getRows() as number[][];
  }

  close(): void {
    this.connection.closeSync();
    this.instance.closeSync();
  }
}
