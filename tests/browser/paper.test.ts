import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import { PATIENCE_MS, TEST_MS } from './patience.ts';
import { siteAddress, startVisit, untilAnswered } from './visit.ts';

/** A station of the demo pack whose plantings fill the grid. */
const STATION = 'ZZC00000206';
/** Width between the margins of a printed page, CSS px. */
const PAPER_PX = 720;

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const part = (page: Page, name: string): Locator => page.getByRole('region', { name, exact: true });

/** Opens the parts that need the nights, as they stand on a wide screen, and turns the page to paper. */
async function printed(page: Page): Promise<void> {
  await page.goto(`${siteAddress()}?pack=sallowmere&station=${STATION}`);
  await untilAnswered(page);
  const link = (name: string): Locator =>
    page.getByRole('navigation').getByRole('link', { name, exact: true });
  // A part comes when a reader comes near it.
  await link('Which to plant').click();
  await part(page, 'Which to plant').getByText('5 nights', { exact: true }).waitFor({ timeout: PATIENCE_MS });
  await link('Life').click();
  const life = part(page, 'Life');
  await life.getByRole('button', { name: 'Follow the trees' }).click({ timeout: PATIENCE_MS });
  await life.getByText(/^In brackets the 90% range/).waitFor({ timeout: PATIENCE_MS });
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: PAPER_PX, height: 960 });
}

describe('life and choice on paper', () => {
  it(
    'say what was wished and chosen, draw the grid whole, and show no controls',
    async () => {
      const visit = await startVisit(browser);
      const { page } = visit;
      await printed(page);
      const life = part(page, 'Life');
      expect(await life.getByText('Invented', { exact: true }).isVisible()).toBe(true);
      expect(await life.getByText(/^In brackets the 90% range/).isVisible()).toBe(true);

      const grid = life.locator('svg[role="grid"]');
      const { x, width } = (await grid.boundingBox())!;
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x + width).toBeLessThanOrEqual(PAPER_PX);
      const cut = await grid.evaluate((svg) => getComputedStyle(svg.closest('.scroll')!).overflowX);
      expect(cut).toBe('visible');

      // Of the ages it can be planted at, the one that counts.
      expect(await life.getByText('1 year', { exact: true }).isVisible()).toBe(true);
      expect(await life.getByText('5', { exact: true }).first().isVisible()).toBe(false);
      expect(await life.getByText('The same as a table').first().isVisible()).toBe(false);

      const wishes = part(page, 'Which to plant');
      expect(await wishes.getByText('5 nights', { exact: true }).isVisible()).toBe(true);
      const sliders = await wishes.locator('input[type="range"]').all();
      expect(sliders.length).toBe(4);
      for (const slider of sliders) expect(await slider.isVisible()).toBe(false);
      await visit.close();
    },
    TEST_MS,
  );
});
