import { expect, it } from 'vitest';

import { retryAfterMs } from '../../../data-scripts/fetch/retry-after.ts';

it('reads both forms of Retry-After (RFC 9110, 10.2.3)', () => {
  expect(retryAfterMs('120')).toBe(120_000);
  const now = Date.UTC(1999, 11, 31, 23, 59, 0);
  expect(retryAfterMs('Fri, 31 Dec 1999 23:59:59 GMT', now)).toBe(59_000);
  expect(retryAfterMs('Fri, 31 Dec 1999 23:00:00 GMT', now)).toBe(0);
  expect(retryAfterMs('soon')).toBeUndefined();
  expect(retryAfterMs(undefined)).toBeUndefined();
});
