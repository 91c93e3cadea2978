import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

/** The checker's own text, run inside the page. */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe-core finds, a line a violation; `passed` rules show that there was something to look at. */
export interface Audit {
  /** Serious and critical violations. */
  readonly grave: readonly string[];
  /** Violations of any weight. */
  readonly all: readonly string[];
  readonly passed: number;
}

/** Looks at the page as it stands, or at the first element of a selector. A page with a policy of its own must be visited with `bypassCSP`. */
export async function audit(page: Page, within?: string): Promise<Audit> {
  await page.evaluate(AXE);
  const root = within === undefined ? 'document' : `document.querySelector(${JSON.stringify(within)})`;
  // A rule that passes comes with one element; with all of them there would be megabytes to hand over.
  const { violations, passes } = (await page.evaluate(
    `axe.run(${root}, { resultTypes: ["violations"] })`,
  )) as AxeResults;
  const told = (some: AxeResults['violations']): string[] =>
    some.flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary }) => `${id}: ${String(target)} ${failureSummary ?? ''}`),
    );
  return {
    grave: told(violations.filter(({ impact }) => impact === 'serious' || impact === 'critical')),
    all: told(violations),
    passed: passes.length,
  };
}
