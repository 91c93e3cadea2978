import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { audit } from './axe.ts';
import { launchChromium } from './chromium.ts';
import { openCover, PATIENCE_MS, plain, TEST_MS } from './cover-part.ts';
import { inBothSchemes, siteAddress, startVisit, untilAnswered } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** Grave violations in a part, where there is something to look at. */
async function graveFaults(page: Page, part: string): Promise<readonly string[]> {
  const { grave, passed } = await audit(page, part);
  expect(passed).toBeGreaterThan(5);
  return grave;
}

describe('tonight', () => {
  it(
    'orders the trees by need, gives the day, and keeps the trees on this device until they are forgotten',
    async () => {
      const visit = await startVisit(browser);
      const { page } = visit;
      await page.goto(siteAddress('?cover=cloth-heavy'));
      await untilAnswered(page);
      let part = await openCover(page);
      for (const name of ['Add a tree', 'Add another tree']) await part.getByRole('button', { name }).click();
      await part.getByRole('combobox', { name: 'Type' }).nth(1).selectOption('mexican_lime');
      await part.getByRole('combobox', { name: 'Cover at hand' }).nth(0).selectOption('');
      await part.getByLabel(/^Lowest temperature/).fill('22');
      await part.getByText('The hours below 32 °F are missing.').waitFor();
      await part.getByLabel(/^Hours below/).fill('8');
      await part.getByLabel(/^Wind in/).fill('3');
      const trees = part.getByRole('list', { name: 'Trees in order of need' }).getByRole('heading');
      await expect.poll(() => trees.count()).toBe(2);
      const names = (await trees.allTextContents()).map(plain);
      expect(names[0]).toMatch(/lime/i);
      expect(names[1]).toMatch(/^Satsuma/);
      const day = part.getByRole('term');
      expect((await day.allTextContents()).map(plain)).toContain('Late, just before sunset');
      expect(await part.getByText('A forecast or warning in force goes before this.').count()).toBe(1);

      await part.getByLabel(/^Lowest temperature/).fill('45');
      await part.getByLabel(/^Hours below/).fill('0');
      await expect.poll(() => part.getByText('Needs nothing tonight.').count()).toBe(2);

      await page.reload();
      await untilAnswered(page);
      part = await openCover(page);
      expect(await part.getByRole('combobox', { name: 'Type' }).nth(1).inputValue()).toBe('mexican_lime');
      await part.getByRole('button', { name: 'Forget the trees' }).click();
      await page.reload();
      await untilAnswered(page);
      part = await openCover(page);
      expect(await part.getByRole('combobox', { name: 'Type' }).count()).toBe(0);
      expect(page.url()).not.toContain('lime');
      await visit.close();
    },
    TEST_MS,
  );
});

describe('accessibility', () => {
  it(
    'of the part and of the choices has no serious fault, light or dark, and a phone needs no scrolling sideways',
    async () => {
      const viewport = { width: 390, height: 844 };
      const visit = await startVisit(browser, { bypassCSP: true, viewport });
      const { page } = visit;
      await page.goto(siteAddress('?level=leaf&cover=cloth-heavy,lights,led-lights'));
      await untilAnswered(page);
      const part = await openCover(page);
      await part.getByRole('button', { name: 'Add a tree' }).click();
      await part.getByLabel(/^Lowest temperature/).fill('20');
      await part.getByLabel(/^Hours below/).fill('9');
      await part.getByLabel(/^Wind in/).fill('3');
      await part.getByRole('button', { name: 'Count the nights' }).click();
      await part.getByText(/it would have gone on|never have had to/).waitFor({ timeout: PATIENCE_MS });
      await page.evaluate(() =>
        document
          .querySelectorAll('#cover details')
          .forEach((details) => ((details as HTMLDetailsElement).open = true)),
      );
      await inBothSchemes(page, async (scheme) => {
        expect(await graveFaults(page, '#cover'), scheme).toEqual([]);
        expect(await graveFaults(page, '.choices'), scheme).toEqual([]);
      });
      const wide = await part.evaluate((section) => section.scrollWidth - section.clientWidth);
      expect(wide).toBeLessThanOrEqual(0);
      await visit.close();
    },
    TEST_MS,
  );
});
