import { describe, it } from 'vitest';

import { ALL_READERS } from './all-readers.ts';
import { CASES } from './cases.ts';

describe(`readers of what people bring, ${CASES.short} cases each`, () => {
  it.each(ALL_READERS)('$name', ({ holds }) => holds(CASES.short));
});
