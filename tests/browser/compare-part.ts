import type { Locator, Page } from 'playwright-core';

import { openPart } from './visit.ts';

/** Opens the part that compares places and tells of areas. */
export function openCompare(page: Page): Promise<Locator> {
  return openPart(page, 'Compare', (part) => part.getByRole('button', { name: /^(Draw|Pin|Unpin)/ }));
}
