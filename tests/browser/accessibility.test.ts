import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { audit } from './axe.ts';
import { launchChromium } from './chromium.ts';
import { PATIENCE_MS, TEST_MS } from './cover-part.ts';
import {
  expectCalm,
  inBothSchemes,
  openPart,
  rankingRow,
  siteAddress,
  startVisit,
  untilAnswered,
  winterSlider,
} from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

describe('accessibility by axe-core', () => {
  it(
    'finds no serious violation in any part, light or dark',
    async () => {
      // axe reads the page by script, which the site's own policy would refuse from outside.
      const visit = await startVisit(browser, { bypassCSP: true });
      const { page } = visit;
      const auditBoth = (of: string): Promise<void> =>
        inBothSchemes(page, async (scheme) => {
          const { grave, passed } = await audit(page);
          expect(passed).toBeGreaterThan(20);
          expect(grave, `${of}, ${scheme}`).toEqual([]);
        });
      await page.goto(siteAddress());
      await untilAnswered(page);
      await auditBoth('first screen');

      // The rest at a station with a short record: the checker goes through each winter of each planting.
      await page.getByRole('combobox', { name: 'Postcode, town or station' }).fill('Bay Head');
      await page.keyboard.press('Enter');
      await expect.poll(() => page.url()).toContain('station=');
      await expectCalm(page);
      await rankingRow(page, 'Meyer lemon').click();
      await page.getByRole('region', { name: /^Meyer lemon.*: the four levels$/ }).waitFor();
      await openPart(page, 'Winters', () => winterSlider(page));
      await openPart(page, 'Records', (part) => part.getByRole('table'));
      await openPart(page, 'Method', (part) => part.getByRole('table'));
      // Asked for in one of the parts that go through the nights, all three open.
      const life = await openPart(page, 'Life', (part) =>
        part.getByRole('button', { name: 'Follow the trees' }),
      );
      await life.getByRole('button', { name: 'Follow the trees' }).click();
      await life.getByText(/^In brackets the 90/).waitFor({ timeout: PATIENCE_MS });
      await openPart(page, 'Year', (part) => part.getByRole('heading', { name: 'What to do when' }));
      await openPart(page, 'Which to plant', (part) => part.getByRole('list', { name: /^Kinds that/ }));
      await page.evaluate(() =>
        document.querySelectorAll('details').forEach((details) => (details.open = true)),
      );
      await auditBoth('an open row, which to plant, winters, life, year, records and method');
      await visit.close();
    },
    TEST_MS,
  );

  it('finds no serious violation with the database open, and in an error', async () => {
    const visit = await startVisit(browser, { bypassCSP: true });
    const { page } = visit;
    await page.goto(siteAddress('?level=bark&postcode=ZZ 1'));
    await untilAnswered(page);
    await page.getByRole('alert').waitFor();
    const records = await openPart(page, 'Records', (part) =>
      part.getByRole('button', { name: 'Open the database' }),
    );
    await records.getByRole('button', { name: 'Open the database' }).click();
    await records.getByRole('textbox', { name: 'Ask in SQL' }).waitFor({ timeout: 40_000 });
    await records.getByRole('button', { name: 'Run', exact: true }).click();
    await records.getByRole('table', { name: /^\d+ rows?/ }).waitFor();
    expect((await audit(page)).grave).toEqual([]);
    await visit.close();
  });

  it('has one h1, a main part and no skipped level of headings', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    await openPart(page, 'Winters', () => winterSlider(page));
    expect(await page.getByRole('main').count()).toBe(1);
    const levels = await page.evaluate(() =>
      [...document.querySelectorAll('h1, h2, h3, h4')].map(({ tagName }) => Number(tagName[1])),
    );
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    levels.forEach((level, i) => expect(level - (levels[i - 1] ?? 0), `heading ${i}`).toBeLessThanOrEqual(1));
    await visit.close();
  });
});
