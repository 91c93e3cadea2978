import { beforeAll, describe, expect, it } from 'vitest';
import { plainError, readOnlyQuestion } from '../../../web/engine/read-only.ts';
import { wasmEngine, type FilledEngine } from './both-engines.ts';
import { fillStatements, madeNights } from './made-nights.ts';

describe('the reader’s own SQL on the WASM engine', () => {
  let engine: FilledEngine;
  beforeAll(async () => {
    engine = await wasmEngine(fillStatements(madeNights()));
  });
  const ask = (sql: string, limit = 5) => engine.run(readOnlyQuestion(sql, limit));
  const nightCount = async (): Promise<unknown> =>
    (await engine.run('select count(*)::integer from nights')).rows[0][0];

  it.each([
    'select station, count(*) from nights group by station',
    'from nights;',
    'with cold as (from nights where s4_c < -3) select winter, min(s4_c) from cold group by winter order by 2 -- coldest',
    'describe nights',
    'summarize winters',
    'show tables',
    "select ';' as semicolon ; ; ",
  ])('answers %s', async (sql) => {
    const { rows } = await ask(sql);
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.length).toBeLessThanOrEqual(6);
  });

  it('keeps the order of the statement', async () => {
    const { rows } = await ask('select s0_c::double from nights order by s0_c desc limit 100', 100);
    const levels = rows.map(([level]) => level as number);
    expect(levels).toEqual([...levels].sort((a, b) => b - a));
  });

  it.each([
    'delete from nights',
    'drop table nights',
    'create table mine as from nights',
    "copy nights to 'x.csv'",
    'insert into winters values (1)',
    'set threads = 2',
    "attach 'x.db'",
    'select 1; drop table nights',
    'select 1) limit 1; drop table nights; select * from (select 1',
    'from nights) limit 1; delete from nights; --',
  ])('refuses %s and leaves the records as they are', async (sql) => {
    const before = await nightCount();
    await expect(ask(sql)).rejects.toThrow();
    expect(await nightCount()).toBe(before);
  });

  it('reads every type into plain values', async () => {
    const { columns, rows } = await ask(
      `select 1.5::decimal(4,2) as a, -0.05::decimal(4,2) as b, 12345678901234567890::hugeint as c, count(*) as d,
              date '1989-12-23' as e, timestamp '1989-12-23 05:30:00' as f, [1, 2] as g, {'h': 1.25::decimal(5,2)} as h,
              null as i, true as j, 'k' as k, sum(winter) as l, 'nan'::double as m
       from nights`,
    );
    expect(Object.fromEntries(columns.map((name, c) => [name, rows[0][c]]))).toEqual({
      a: 1.5,
      b: -0.05,
      c: '12345678901234567890',
      d: 480,
      e: '1989-12-23',
      f: '1989-12-23 05:30:00',
      g: '[1, 2]',
      h: '{h: 1.25}',
      i: null,
      j: true,
      k: 'k',
      l: 480 * 1986,
      m: 'NaN',
    });
  });

  it('says what is wrong in plain words', async () => {
    const words = async (sql: string): Promise<string> =>
      ask(sql).then(
        () => 'no error',
        (error: Error) => plainError(error.message, true),
      );
    expect(await words('selec 1')).toMatch(/^This is not a question the database can read from/);
    expect(await words('select nonsense from nights')).toMatch(/^Referenced column "nonsense" not found/);
    expect(await words('from elsewhere')).toMatch(/^Table with name elsewhere does not exist/);
    expect(await words(`select json_extract('{}', '$')`)).toMatch(/needs an extension|doesn’t have/);
    expect(() => readOnlyQuestion(' ; ', 5)).toThrow('There is no statement to run.');
  });
});
