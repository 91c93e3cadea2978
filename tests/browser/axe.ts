import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

import type Axe from 'axe-core';
import type { RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

import { inBothSchemes } from './visit.ts';

/** The checker's own text, run inside the page. */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** WCAG 2.2 at level AA with all before it, and what axe-core itself holds to be good practice; all weights count. */
const ALL: RunOptions = {
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
  // Off unless asked for: 24 px to hit, or room around (2.5.8).
  rules: { 'target-size': { enabled: true } },
};
/** The same but for colours, the slowest to look at, where they are looked at elsewhere. */
export const BUT_COLOURS: RunOptions = {
  ...ALL,
  rules: { ...ALL.rules, 'color-contrast': { enabled: false } },
};
/** What another colour scheme can change. */
const COLOURS: RunOptions = { runOnly: { type: 'rule', values: ['color-contrast', 'link-in-text-block'] } };

/** What axe-core finds; `passed` rules show that there was something to look at. */
export interface Audit {
  /** A line a violation and element. */
  readonly found: readonly string[];
  readonly passed: number;
}

/**
 * Looks at the page as it stands, or at what some selectors find: one look for several, since each goes over the whole page
 * first. A page with a policy of its own must be visited with `bypassCSP`.
 */
export async function audit(
  page: Page,
  within: readonly string[] = [],
  options: RunOptions = ALL,
): Promise<Audit> {
  if (!(await page.evaluate('"axe" in window'))) await page.evaluate(AXE);
  return page.evaluate(
    async ([selectors, asked]) => {
      const { axe } = window as unknown as { axe: typeof Axe };
      const root = selectors.length === 0 ? document : { include: selectors.map((one) => [one]) };
      // Of rules that pass one element each is told; with all of them there would be megabytes.
      const { violations, passes } = await axe.run(root, {
        ...asked,
        resultTypes: ['violations'],
        elementRef: true,
      });
      const found = violations.flatMap(({ id, impact, nodes }) =>
        nodes.map(({ element, target, failureSummary }) => {
          const part = element?.closest('section[id]')?.id ?? 'page';
          return `${id} (${impact}) in ${part}: ${String(target)} ${failureSummary ?? ''}`;
        }),
      );
      return { found, passed: passes.length };
    },
    [within, options] as const,
  );
}

/** Nothing is to be found in the page, or in parts of it, in its light colours and in its dark ones. */
export async function expectNothingFound(page: Page, of: string, ...within: string[]): Promise<void> {
  await inBothSchemes(page, async (scheme) => {
    const { found, passed } = await audit(page, within, scheme === 'light' ? ALL : COLOURS);
    expect(found, `${of}, ${scheme}`).toEqual([]);
    expect(passed, `rules with something to look at: ${of}, ${scheme}`).toBeGreaterThan(
      scheme === 'light' ? 20 : 0,
    );
  });
}

/** Elements that stick out of the window to the right though nothing around them scrolls, told by part, tag and text. */
export function sticksOut(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    const told = [...document.querySelectorAll('main *')].filter((element) => {
      const { right, width: own } = element.getBoundingClientRect();
      if (right <= width + 1 || own === 0) return false;
      // What is placed freely is clipped only by what it is placed in.
      for (let above: Element | null = element; above;) {
        const style = getComputedStyle(above);
        if (style.overflowX !== 'visible') return false;
        above = style.position === 'absolute' ? (above as HTMLElement).offsetParent : above.parentElement;
      }
      return !element.parentElement!.closest('svg');
    });
    const wide = document.documentElement.scrollWidth > width ? ['the page scrolls sideways'] : [];
    const where = (element: Element): string => element.closest('section[id]')?.id ?? '';
    return [
      ...wide,
      ...told.map((e) => `${where(e)} ${e.tagName} "${(e.textContent ?? '').trim().slice(0, 30)}"`),
    ].slice(0, 8);
  });
}

/** The page as a phone 390 px wide shows it: nothing in it is wider, unless it scrolls on its own. */
export async function expectFitsPhone(page: Page): Promise<void> {
  await page.setViewportSize({ width: 390, height: 844 });
  await expect.poll(() => sticksOut(page), { timeout: 5000 }).toEqual([]);
}
