import { DuckDBInstance } from '@duckdb/node-api';
import fc from 'fast-check';

import { bindNamed } from '../../web/engine/bind-named.ts';
import { plainError, readOnlyQuestion } from '../../web/engine/read-only.ts';
import { quoted } from '../../web/engine/sql-quote.ts';
import { anyText, damaged } from './damage.ts';
import { must, property, readOrRefused, type ReaderProperty } from './reader-property.ts';

const LIMIT = 20;

/** Statements that write, alone and behind what would lead out of the brackets they are put in. */
const WRITING = [
  ...[
    'delete from nights',
    'drop table nights',
    'insert into nights values (9)',
    'update nights set tmin = 0',
  ],
  ...[
    'create table mine as from nights',
    'alter table nights add column x int',
    'truncate nights',
    'set threads = 1',
  ],
  ...[
    "copy nights to '/tmp/citrus-winters-never.csv'",
    "attach '/tmp/citrus-winters-never.db'",
    'load json',
    'pragma version',
  ],
];
const READING = [
  'select * from nights',
  'from nights where tmin < 0',
  'with a as (from nights) select count(*) from a',
  'describe nights',
];
const WAYS_OUT = [
  '',
  ';',
  ') limit 1; ',
  '); ',
  ' -- ',
  ' /* ',
  '*/',
  "'",
  '"',
  ') x; ',
  '\n);',
  ' union all ',
  ' returning *',
  '(',
  '$$',
];

const statement = fc.oneof(
  damaged(fc.constantFrom(...READING)),
  fc
    .tuple(
      fc.constantFrom('', ...READING),
      fc.constantFrom(...WAYS_OUT),
      fc.constantFrom(...WRITING),
      fc.constantFrom(...WAYS_OUT),
      fc.constantFrom('', ...READING),
    )
    .map((parts) => parts.join('')),
  fc.constantFrom(...WRITING),
);

const database = await DuckDBInstance.create(':memory:', { threads: '1' });
const connection = await database.connect();
await connection.run('create table nights as select i::integer as tmin from range(30) r(i)');
await connection.run('set enable_external_access = false');
const state = async (): Promise<string> =>
  JSON.stringify([
    (
      await connection.runAndReadAll('select sum(tmin)::integer, count(*)::integer from nights')
    ).getRowsJson(),
    (
      await connection.runAndReadAll('select table_name, column_count::integer from duckdb_tables()')
    ).getRowsJson(),
  ]);
const untouched = await state();

export const QUESTIONS: readonly ReaderProperty[] = [
  property(
    'questions in SQL: whatever is asked, nothing is written, and no more rows than allowed come',
    statement,
    async (sql) => {
      const question = readOrRefused(() => readOnlyQuestion(sql, LIMIT));
      if (question === null) return;
      try {
        // As the page does: prepared, which takes one statement only.
        const prepared = await connection.prepare(question);
        const { currentRowCount } = await prepared.runAndReadAll();
        must(currentRowCount <= LIMIT + 1, `${currentRowCount} rows`);
      } catch (error) {
        must(plainError((error as Error).message, true) !== '', 'refused without a word');
      }
      must((await state()) === untouched, 'something was written');
    },
  ),
  property(
    'statements of ours: a text stays a text, a name takes its own value only',
    fc.tuple(anyText, fc.constantFrom('station', 'constructor', 'toString', '__proto__', 'x')),
    async ([text, name]) => {
      // What a text column can't give back as it is: half a letter, nothing, and a byte order mark.
      if (/[\ud800-\udfff\u0000\ufeff]/.test(text)) return;
      const rows = (await connection.runAndReadAll(`select ${quoted(text)} as t`)).getRowsJson();
      must(rows[0][0] === text, `${JSON.stringify(rows[0][0])} is not ${JSON.stringify(text)}`);
      const bound = readOrRefused(() =>
        bindNamed(`select $${name}, '$${name}' -- $other`, { station: text }),
      );
      must(
        bound === null || (name === 'station' && bound.parameters[0] === text),
        `${name} was given ${JSON.stringify(bound)}`,
      );
    },
  ),
];
