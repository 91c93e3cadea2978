import { describe, it } from 'vitest';

import { ALL_READERS } from '../fuzz/all-readers.ts';
import { CASES } from '../fuzz/cases.ts';

describe(`readers of what people bring, ${CASES.long} cases each`, () => {
  it.each(ALL_READERS)('$name', ({ holds }) => holds(CASES.long));
});
