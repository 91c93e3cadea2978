import { describe, it } from 'vitest';

import { CASES } from './cases.ts';
import { STATION_FILES } from './station-files.ts';
import { TABLES } from './tables.ts';

describe('readers of what people bring', () => {
  it.each([...STATION_FILES, ...TABLES])('$name', ({ holds }) =>
    holds(Number(process.env.FUZZ_CASES ?? CASES.short)),
  );
});
