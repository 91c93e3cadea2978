import { describe, expect, it, vi } from 'vitest';
import type { RunningEngine } from '../../../web/engine/engine-port.ts';
import { DatabaseError, RecordsDatabase } from '../../../web/engine/records-database.ts';
import type { ResultTable } from '../../../web/engine/table-rows.ts';

const PACK = 'http://pack.test/one/';
const EMPTY: ResultTable = { columns: ['a'], types: ['Int32'], rows: [[1]], truncated: false };

/** An engine that notes what it was asked. */
function fakeEngine(change: Partial<RunningEngine> = {}) {
  const log: string[] = [];
  const engine: RunningEngine = {
    attach: async (url) => void log.push(`attach ${url}`),
    ask: async (sql, parameters) => (log.push(`ask ${sql} ${JSON.stringify(parameters)}`), EMPTY),
    askStoppable: async (sql) => (log.push(`run ${sql.replaceAll('\n', ' ')}`), EMPTY),
    stop: async () => void log.push('stop'),
    close: async () => void log.push('close'),
    ...change,
  };
  return { engine, log };
}

describe('the database of the open pack', () => {
  it('starts once for questions asked at the same time, and attaches once', async () => {
    const { engine, log } = fakeEngine();
    const start = vi.fn(async () => engine);
    const database = new RecordsDatabase(start);
    expect(start).not.toHaveBeenCalled();
    await Promise.all([database.open(PACK), database.open(PACK), database.ask('select $a', { a: 7 })]);
    expect(start).toHaveBeenCalledTimes(1);
    expect(log).toEqual([`attach ${PACK}records.duckdb`, 'ask select $1 [7]']);
  });

  it('passes on bytes only to those who still wait', async () => {
    const { engine } = fakeEngine();
    const database = new RecordsDatabase(async (onBytes) => (onBytes(5, 10), onBytes(12, null), engine));
    const seen: unknown[] = [];
    await database.open(PACK, (progress) => seen.push(progress));
    expect(seen).toEqual([
      { loaded: 5, total: 10 },
      { loaded: 12, total: null },
    ]);
  });

  it('is not left half-open by a failed start: the next try starts from scratch', async () => {
    const { engine } = fakeEngine();
    let failures = 2;
    const start = vi.fn(async () => {
      if (failures-- > 0) throw new Error('Could not load the database engine: the server answered 503.');
      return engine;
    });
    const database = new RecordsDatabase(start);
    await expect(database.open(PACK)).rejects.toThrow('the server answered 503');
    await expect(database.ask('select 1', {})).rejects.toBeInstanceOf(DatabaseError);
    await database.open(PACK);
    expect((await database.ask('select 1', {})).rows).toEqual([[1]]);
    expect(start).toHaveBeenCalledTimes(3);
  });

  it('attaches again after an attach that failed, on the same engine', async () => {
    let failing = true;
    const { engine, log } = fakeEngine({
      attach: async (url) => {
        log.push(`attach ${url}`);
        if (failing) throw new Error('IO Error: Failed to open file: HTTP 404');
      },
    });
    const start = vi.fn(async () => engine);
    const database = new RecordsDatabase(start);
    await expect(database.open(PACK)).rejects.toThrow('The nights could not be read from the server');
    failing = false;
    await database.open(PACK);
    expect(start).toHaveBeenCalledTimes(1);
    expect(log).toHaveLength(2);
  });

  it('changes packs', async () => {
    const { engine, log } = fakeEngine();
    const database = new RecordsDatabase(async () => engine);
    await database.open(PACK);
    await database.open('http://pack.test/two/');
    expect(log).toEqual([`attach ${PACK}records.duckdb`, 'attach http://pack.test/two/records.duckdb']);
  });

  it('asks the reader’s SQL as a bounded subquery, one question at a time', async () => {
    let running = 0;
    const { engine } = fakeEngine({
      askStoppable: async (sql) => {
        expect(++running).toBe(1);
        await new Promise((resolve) => setTimeout(resolve, 5));
        running--;
        expect(sql).toBe('select * from (\nfrom nights\n) limit 21');
        return EMPTY;
      },
    });
    const database = new RecordsDatabase(async () => engine);
    await database.open(PACK);
    await Promise.all([
      database.run('from nights;', { limit: 20 }),
      database.run('from nights', { limit: 20 }),
    ]);
  });

  it('stops when asked, says so, and goes on', async () => {
    let release: (() => void) | undefined;
    let first = true;
    const { engine, log } = fakeEngine({
      askStoppable: () => {
        if (!first) return Promise.resolve(EMPTY);
        first = false;
        return new Promise((resolve) => (release = () => resolve(EMPTY)));
      },
      stop: async () => {
        log.push('stop');
        release?.();
      },
    });
    const database = new RecordsDatabase(async () => engine);
    await database.open(PACK);
    const control = new AbortController();
    const slow = database.run('from nights', { signal: control.signal });
    setTimeout(() => control.abort(), 10);
    await expect(slow).rejects.toThrow('The query was stopped.');
    expect(log).toContain('stop');
    expect((await database.run('from nights')).rows).toEqual([[1]]);
  });

  it('closes an engine that does not stop, and starts a new one for the next question', async () => {
    vi.useFakeTimers();
    try {
      const stuck = fakeEngine({
        askStoppable: () => new Promise(() => {}),
        stop: () => new Promise(() => {}),
      });
      const fresh = fakeEngine();
      const start = vi.fn().mockResolvedValueOnce(stuck.engine).mockResolvedValueOnce(fresh.engine);
      const database = new RecordsDatabase(start);
      await database.open(PACK);
      const control = new AbortController();
      const slow = database.run('from nights', { signal: control.signal });
      const outcome = expect(slow).rejects.toThrow('The query was stopped.');
      await vi.advanceTimersByTimeAsync(10);
      control.abort();
      await outcome;
      await vi.advanceTimersByTimeAsync(5000);
      expect(stuck.log).toContain('close');
      expect((await database.run('from nights')).rows).toEqual([[1]]);
      expect(start).toHaveBeenCalledTimes(2);
    } finally {
      vi.useRealTimers();
    }
  });

  it('carries the statement in its errors', async () => {
    const { engine } = fakeEngine({
      ask: async () => Promise.reject(new Error('Binder Error: no such column\nLINE 1')),
    });
    const database = new RecordsDatabase(async () => engine);
    await database.open(PACK);
    const error = await database.ask('select x', {}).catch((caught: unknown) => caught);
    expect(error).toMatchObject({ name: 'DatabaseError', message: 'no such column', sql: 'select x' });
  });
});
