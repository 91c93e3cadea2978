import { describe, it } from 'vitest';

import { ARCHIVES } from './archives.ts';
import { CASES } from './cases.ts';
import { EXPORTS } from './exports.ts';
import { KEPT } from './kept.ts';
import { PACKS } from './packs.ts';
import { STATION_FILES } from './station-files.ts';
import { ADDRESSES } from './addresses.ts';
import { TABLES } from './tables.ts';
import { YARDS } from './yards.ts';

describe('readers of what people bring', () => {
  it.each([...STATION_FILES, ...TABLES, ...YARDS, ...ADDRESSES, ...PACKS, ...ARCHIVES, ...KEPT, ...EXPORTS])(
    '$name',
    ({ holds }) => holds(Number(process.env.FUZZ_CASES ?? CASES.short)),
  );
});
