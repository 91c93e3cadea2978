import fc from 'fast-check';

import { InputError } from '../../analysis/records/input-error.ts';

/** Most processor time that one case may take, ms. Cases are small: what takes longer grows out of all proportion. */
const CASE_MS = 3000;
/** Longest sentence that still is one. */
const SENTENCE_LONGEST = 700;

/** Something that must hold of a reader for any input. */
export interface ReaderProperty {
  readonly name: string;
  /** @throws Error with the smallest input found for which it doesn't hold */
  readonly holds: (cases: number) => Promise<void>;
}

/** A property of a reader: `check` throws where it doesn't hold. */
export function property<T>(
  name: string,
  input: fc.Arbitrary<T>,
  check: (value: T) => void | Promise<void>,
): ReaderProperty {
  const timed = async (value: T): Promise<void> => {
    const before = process.cpuUsage();
    await check(value);
    const { user, system } = process.cpuUsage(before);
    const ms = (user + system) / 1000;
    if (ms > CASE_MS) throw new Error(`it took ${Math.round(ms)} ms of processor time`);
  };
  return {
    name,
    holds: (cases) => fc.assert(fc.asyncProperty(input, timed), { numRuns: cases, endOnFailure: true }),
  };
}

/** What a reader gives; `null` where it refused in one sentence. Anything else it throws goes on. */
export function readOrRefused<T>(read: () => T): T | null {
  try {
    return read();
  } catch (error) {
    mustBeSentence(error);
    return null;
  }
}

/** The same of a reader that must be waited for. */
export async function laterOrRefused<T>(read: () => Promise<T>): Promise<T | null> {
  try {
    return await read();
  } catch (error) {
    mustBeSentence(error);
    return null;
  }
}

/** @throws what was thrown, where it is no {@link InputError}; Error where its message is no sentence for a person */
function mustBeSentence(error: unknown): void {
  if (!(error instanceof InputError)) throw error;
  const { message } = error;
  if (message === '' || message.length > SENTENCE_LONGEST || /[\r\n]|\[object |undefined/.test(message))
    throw new Error(`this is no sentence: ${JSON.stringify(message)}`);
}

/** @throws Error saying what is wrong, unless it holds */
export function must(holds: boolean, what: string): asserts holds {
  if (!holds) throw new Error(what);
}
