import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';

import { RecordCheck } from '../../analysis/archive/check-record.ts';

/** Lines of a text file, one at a time. The file is opened when the first line is asked for. */
export async function* linesOf(path: string): AsyncGenerator<string> {
  yield* createInterface({ input: createReadStream(path, 'utf8'), crlfDelay: Infinity });
}

/**
 * Days with a minimum in a station's record as the archive writes it (id, date, element, value, flags). Throws
 * `InputError` when the file is not that station's record, such as a page that a network puts in its place.
 */
export async function countTminDays(path: string, id: string): Promise<number> {
  const check = new RecordCheck(id, path);
  for await (const text of linesOf(path)) check.take(text);
  return check.tminDays;
}
