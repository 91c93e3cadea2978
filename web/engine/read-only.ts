import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';

/** Longest statement, letters. */
export const STATEMENT_LONGEST = 50_000;

/**
 * A question that can only read: the statement becomes a subquery, which the database accepts only for a single
 * statement that gives rows. Prepared as one statement, closing the bracket early to smuggle in another fails too.
 * @param limit rows at most; one more is asked for, to tell whether there were more.
 * @throws InputError for an empty statement
 */
export function readOnlyQuestion(sql: string, limit: number): string {
  const statement = sql.trim().replace(/(\s*;)+$/, '');
  if (statement.length > STATEMENT_LONGEST)
    throw new InputError(
      t`The statement has ${statement.length} letters; at most ${STATEMENT_LONGEST} are taken.`,
    );
  if (statement === '') throw new InputError(t`There is no statement to run.`);
  return `select * from (\n${statement}\n) limit ${limit + 1}`;
}

/** What the database says, in words for someone who writes SQL but doesn't know this page. */
export function plainError(message: string, ownSql: boolean): string {
  const text = message.replace(/^(Error: )+/, '').trim();
  if (/cancel|interrupt/i.test(text)) return t`The query was stopped.`;
  if (/out of memory|memory access out of bounds|Allocation failure/i.test(text)) {
    return t`The query needed more memory than a browser gives. Ask for fewer nights or stations at a time.`;
  }
  if (/table index is out of bounds|unreachable|function signature mismatch|_setThrew/.test(text)) {
    return t`The query used a function that the database in a browser doesn’t have (Parquet, JSON and time zones are missing).`;
  }
  if (/extension/i.test(text) && /autoload|not found|install|load/i.test(text)) {
    return t`The query used something that needs an extension, and extensions are not loaded here.`;
  }
  if (/HTTP|Failed to open|full download|XMLHttpRequest|could not be opened/i.test(text)) {
    return t`The nights could not be read from the server; the connection may be down, or the host does not serve parts of a file.`;
  }
  if (/multiple statements/i.test(text)) return t`Only one statement at a time can be run.`;
  const first = text.split('\n')[0];
  if (ownSql && /Parser Error/.test(first)) {
    return t`This is not a question the database can read from (only select, with, from, describe and summarize work): ${first.replace('Parser Error: ', '')}`;
  }
  return first.replace(/^(Binder|Catalog|Conversion|Invalid Input|Out of Range) Error: /, '');
}
