import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import { siteAddress, startVisit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** Sections in their order. */
const SECTIONS = [
  'choose',
  'winters',
  'spot',
  'cover',
  'life',
  'year',
  'sheet',
  'desk',
  'compare',
  'records',
  'method',
];

/** Waits until nothing in a section is on its way. */
async function untilStill(section: Locator): Promise<void> {
  await expect.poll(() => section.locator('.waiting, progress').count(), { timeout: 30_000 }).toBe(0);
}

/** A view that comes takes the place of what stood for it, so no element is held on to. */
async function scrollTo(page: Page, id: string): Promise<void> {
  await page.evaluate((part) => document.getElementById(part)?.scrollIntoView(), id);
}

describe('in Spanish', () => {
  it('on a phone, figures have a comma, the page tells its language and nothing scrolls sideways', async () => {
    const visit = await startVisit(browser, {
      locale: 'es-ES',
      viewport: { width: 390, height: 844 },
      isMobile: true,
    });
    const { page } = visit;
    await page.goto(siteAddress());
    await page.locator('#ranking button[aria-expanded]').first().waitFor();
    expect(await page.locator('html').getAttribute('lang')).toBe('es');
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toMatch(/^En .+ habría/);
    for (const id of SECTIONS) {
      await scrollTo(page, id);
      await untilStill(page.locator(`section#${id}`));
    }
    // Spain tells temperatures in °C, with a digit behind the comma.
    expect(await page.locator('#winters').textContent()).toMatch(/−\d+,\d\s°C/);
    const [inside, outside] = await page.evaluate(() => [
      document.documentElement.scrollWidth,
      document.documentElement.clientWidth,
    ]);
    expect(inside).toBeLessThanOrEqual(outside);
    expect(visit.complaints).toEqual([]);
    await visit.close();
  });

  it('is chosen in the masthead by keyboard, kept, in the address, and left again', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    await page.goto(siteAddress('?unit=C'));
    const spanish = page.getByRole('button', { name: 'Español' });
    await spanish.focus();
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => document.documentElement.lang === 'es');
    expect(new URL(page.url()).search).toBe('?unit=C&lang=es');
    await page.goto(siteAddress());
    await page.waitForFunction(() => document.documentElement.lang === 'es');
    await page.goto(siteAddress('?lang=en'));
    expect(await page.locator('html').getAttribute('lang')).toBe('en');
    await visit.close();
  });
});
