import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';

import { InputError } from '../../analysis/records/input-error.ts';

/** Lines of a text file, one at a time. The file is opened when the first line is asked for. */
export async function* linesOf(path: string): AsyncGenerator<string> {
  yield* createInterface({ input: createReadStream(path, 'utf8'), crlfDelay: Infinity });
}

/**
 * Days with a minimum in a station's record as the archive writes it (id, date, element, value, flags). Throws
 * {@link InputError} when the file is not that station's record, such as a page that a network puts in its place.
 */
export async function countTminDays(path: string, id: string): Promise<number> {
  let line = 0;
  let days = 0;
  for await (const text of linesOf(path)) {
    line++;
    const [station, , element] = text.replaceAll('"', '').split(',', 3);
    const header = line === 1 && /^(id|station)$/i.test(station);
    if (station !== id && !header && text !== '') {
      throw new InputError(`${path}, line ${line}: "${text.slice(0, 40)}" is not a value of station ${id}`);
    }
    if (element === 'TMIN') days++;
  }
  return days;
}
