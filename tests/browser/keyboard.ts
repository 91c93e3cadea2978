import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** What has the focus: role or tag, name, and whether something on screen shows it. */
export interface Stop {
  readonly tag: string;
  readonly name: string;
  /** An outline or the like is drawn on it, or on what holds it. */
  readonly visible: boolean;
  /** It lies in the window with nothing over it (WCAG 2.4.11). */
  readonly uncovered: boolean;
  /** It stands behind the stop before in the document. */
  readonly follows: boolean;
  /** It lies inside the element of the walk. */
  readonly inside: boolean;
}

declare global {
  interface Window {
    lastStop?: Element;
  }
}

export async function focused(page: Page, within = 'body'): Promise<Stop> {
  return page.evaluate((selector) => {
    const element = document.activeElement as HTMLElement;
    const shows = (style: CSSStyleDeclaration): boolean =>
      (style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0) || style.boxShadow !== 'none';
    // A hidden radio or file field may hand its outline, and its place on screen, to the label around it.
    const label = element.closest('label') ?? (element as HTMLInputElement).labels?.[0] ?? null;
    const holders = [element, label, element.parentElement].filter((h) => h !== null);
    const isMet = (holder: Element): boolean => {
      const { left, right, top, bottom } = holder.getBoundingClientRect();
      // Where it is clipped by a box that scrolls, what of it is in the window counts.
      return [0.1, 0.5, 0.9].some((share) => {
        const met = document.elementFromPoint(
          Math.min(innerWidth - 2, Math.max(1, left + share * (right - left))),
          Math.min(innerHeight - 2, Math.max(1, (top + bottom) / 2)),
        );
        return met !== null && (holder.contains(met) || met.contains(holder));
      });
    };
    const { lastStop } = window;
    window.lastStop = element;
    return {
      tag: element.tagName.toLowerCase(),
      name: element.getAttribute('aria-label') ?? (label ?? element).textContent?.trim().slice(0, 60) ?? '',
      visible: holders.some((holder) => shows(getComputedStyle(holder))),
      uncovered: holders.some(isMet),
      follows:
        !lastStop?.isConnected ||
        (lastStop.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING) > 0,
      inside: document.querySelector(selector)!.contains(element),
    };
  }, within);
}

/** Presses Tab until `wanted` has the focus; every stop on the way must be visible. */
export async function tabTo(
  page: Page,
  wanted: (stop: { tag: string; name: string }) => boolean,
  most = 90,
): Promise<void> {
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab');
    const stop = await focused(page);
    if (stop.tag === 'body') continue;
    expect(stop.visible, `focus is visible on ${stop.tag} "${stop.name}"`).toBe(true);
    if (wanted(stop)) return;
  }
  throw new Error(
    `Not reached within ${most} tabs; the last stop was ${JSON.stringify(await focused(page))}.`,
  );
}

/**
 * Presses Tab from the head of a part until it is left: no trap, every stop shown and uncovered, each behind the one before.
 * @returns the names of the stops
 */
export async function walkThrough(page: Page, part: string, most = 250): Promise<string[]> {
  await page.evaluate((selector) => {
    window.lastStop = document.querySelector<HTMLElement>(selector)!;
    (window.lastStop as HTMLElement).focus();
  }, part);
  const names: string[] = [];
  const faults: string[] = [];
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab');
    const { inside, tag, name, visible, uncovered, follows } = await focused(page, part);
    if (!inside) {
      expect(faults, `stops in ${part}`).toEqual([]);
      return names;
    }
    if (!visible) faults.push(`focus does not show on ${tag} "${name}"`);
    if (!uncovered) faults.push(`something lies over ${tag} "${name}"`);
    if (!follows) faults.push(`the order goes back to ${tag} "${name}"`);
    names.push(name);
  }
  throw new Error(
    `${part} is not left within ${most} tabs; the last stops were ${names.slice(-5).join(', ')}.`,
  );
}
