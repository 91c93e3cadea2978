import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { audit, BUT_COLOURS, expectFitsPhone, expectNothingFound } from './axe.ts';
import { launchChromium } from './chromium.ts';
import { walkThrough } from './keyboard.ts';
import { PATIENCE_MS, TEST_MS } from './patience.ts';
import {
  rankingRow,
  siteAddress,
  startVisit,
  turnTo,
  untilAnswered,
  winterSlider,
  type Visit,
} from './visit.ts';

/** A station with a short record: the checker goes through each winter of each planting. */
const STATION = 'ZZA00000307';
/** Two places beside it, an area, a cover and two types for the sheet: all that a part shows only when chosen. */
const MUCH =
  `station=${STATION}&type=meyer_lemon&cover=cloth-heavy,tied&sheet=satsuma_owari,meyer_lemon.a4` +
  '&pin=postcode:SC 123&pin=postcode:SC 101&area=31.05,-42.55_0,87s_5k0,0_0,-87s';
/** Parts in their order on the page, with something that only their view has. */
const PARTS: readonly (readonly [id: string, ready: (part: Locator) => Locator])[] = [
  ['choose', (part) => part.getByRole('slider')],
  ['winters', (part) => winterSlider(part.page()).or(part.getByRole('slider'))],
  ['spot', (part) => part.getByRole('textbox')],
  ['cover', (part) => part.getByRole('table')],
  ['life', (part) => part.getByRole('button')],
  ['year', (part) => part.getByRole('button')],
  ['sheet', (part) => part.getByRole('article')],
  ['desk', (part) => part.getByRole('search')],
  ['compare', (part) => part.getByRole('table')],
  ['records', (part) => part.getByRole('table')],
  ['method', (part) => part.getByRole('table')],
];
const STOCK = 'Edad;Nombre;Maceta\n2;Limón Meyer;C-20\n3;Plum;C-10\n;Satsuma;C-5\n';
const READINGS = ['date,tmax,tmin', '2001-01-05,20,5', '2001-01-06,20,4', '2001-01-07,19,3'].join('\n');

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const partOf = (page: Page, id: string): Locator => page.locator(`section#${id}`);

/** Every part is opened, one after another: it comes when a reader comes near it. */
async function openParts(page: Page): Promise<void> {
  for (const [id, ready] of PARTS) {
    const near = async (): Promise<number> => {
      await partOf(page, id).evaluate((part) => part.scrollIntoView({ behavior: 'instant' }));
      return ready(partOf(page, id)).count();
    };
    await expect.poll(near, { timeout: 20_000, message: id, interval: 150 }).toBeGreaterThan(0);
  }
}

/** What parts show only when asked for; told by what stays the same in every language. */
async function openMore(page: Page): Promise<void> {
  await partOf(page, 'life').locator('.nights button').first().click();
  await partOf(page, 'life').locator('svg[role="grid"]').waitFor({ timeout: PATIENCE_MS });
  await partOf(page, 'year').getByRole('table').first().waitFor({ timeout: PATIENCE_MS });
  const desk = partOf(page, 'desk');
  const stock = { name: 'stock.csv', mimeType: 'text/csv', buffer: Buffer.from(STOCK) };
  await desk.locator('input[type=file]').first().setInputFiles(stock);
  await desk.locator('.faults').waitFor();
  const records = partOf(page, 'records');
  const readings = { name: 'own.csv', mimeType: 'text/csv', buffer: Buffer.from(READINGS) };
  await records.locator('.own input[type=file]').first().setInputFiles(readings);
  await records.locator('.own').getByRole('button', { name: '°C' }).click();
  await records.locator('.own form').first().waitFor();
  await page.evaluate(() => document.querySelectorAll('details').forEach((details) => (details.open = true)));
}

describe('every part, in English', { timeout: TEST_MS }, () => {
  let visit: Visit;
  let page: Page;
  beforeAll(async () => {
    // axe reads the page by script, which the site's own policy would refuse from outside.
    visit = await startVisit(browser, { bypassCSP: true });
    ({ page } = visit);
    await page.goto(siteAddress());
    await untilAnswered(page);
  });
  afterAll(() => visit.close());

  it('has no fault on the first screen, light or dark', async () => {
    await expectNothingFound(page, 'first screen');
  });

  it('has no fault in an error', async () => {
    await turnTo(page, '?level=bark&postcode=ZZ 1');
    await page.getByRole('alert').first().waitFor();
    await expectNothingFound(page, 'errors', 'main > :first-child', '.choices');
  });

  it('has no fault with all parts open, nights counted, files brought and folds unfolded, light or dark', async () => {
    await turnTo(page, `?${MUCH}`);
    await rankingRow(page, 'Meyer lemon').waitFor();
    await openParts(page);
    await openMore(page);
    const spot = partOf(page, 'spot');
    await spot.getByRole('button', { name: 'Draw on this plot' }).click();
    await spot.getByRole('application').waitFor();
    const desk = partOf(page, 'desk');
    await desk.getByRole('rowheader').getByRole('button').first().click();
    const records = partOf(page, 'records');
    await records.getByRole('button', { name: 'Look for stations around a place' }).click();
    await records.getByRole('textbox', { name: 'Degrees north, degrees east' }).fill('31, -42');
    await page.keyboard.press('Enter');
    await records.getByRole('button', { name: 'Open the database' }).click();
    await records.getByRole('textbox', { name: 'Ask in SQL' }).waitFor({ timeout: 40_000 });
    await records.getByRole('button', { name: 'Run', exact: true }).click();
    await records.getByRole('table', { name: /^\d+ rows?/ }).waitFor();
    await page.evaluate(() =>
      document.querySelectorAll('details').forEach((details) => (details.open = true)),
    );
    await expectNothingFound(page, 'all parts open');
  });

  it('has one h1, a main part and no skipped level of headings', async () => {
    expect(await page.getByRole('main').count()).toBe(1);
    const levels = await page.evaluate(() =>
      [...document.querySelectorAll('h1, h2, h3, h4, h5')].map(({ tagName }) => Number(tagName[1])),
    );
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    levels.forEach((level, i) => expect(level - (levels[i - 1] ?? 0), `heading ${i}`).toBeLessThanOrEqual(1));
  });

  it('is gone through by keyboard in its newer parts: no trap, focus shown and uncovered, in order', async () => {
    const desk = await walkThrough(page, '#desk');
    expect(desk).toEqual(
      expect.arrayContaining(['Show', 'Choose a file', 'Save as CSV', 'Size of Meyer lemon']),
    );
    const sheet = await walkThrough(page, '#sheet');
    expect(sheet).toEqual(expect.arrayContaining(['Print the sheet', 'Save as picture']));
    const records = await walkThrough(page, '#records');
    for (const stop of ['Choose files', 'Choose a folder', 'It stands there', 'Take this point', 'Run'])
      expect(records).toContain(stop);
  });

  it('is nowhere wider than a phone', async () => {
    await expectFitsPhone(page);
  });
});

describe('every part, in Spanish on a phone', { timeout: TEST_MS }, () => {
  it('says its language, has no fault, and is nowhere wider than the phone', async () => {
    const visit = await startVisit(browser, {
      bypassCSP: true,
      viewport: { width: 390, height: 844 },
      isMobile: true,
      hasTouch: true,
    });
    const { page } = visit;
    await page.goto(siteAddress(`?lang=es&${MUCH}`));
    await page.locator('#ranking [aria-expanded="true"]').waitFor({ timeout: 20_000 });
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('es');
    const english = page.getByRole('button', { name: 'English' });
    expect(await english.getAttribute('lang')).toBe('en');
    await openParts(page);
    await openMore(page);
    await expectFitsPhone(page);
    // What the publishers of records want said stays in their language, and says so.
    expect(await partOf(page, 'records').locator('dl dd [lang="en"]').count()).toBeGreaterThan(0);
    // Colours are those of the English page.
    expect((await audit(page, [], BUT_COLOURS)).found).toEqual([]);
    expect(visit.complaints).toEqual([]);
    await visit.close();
  });
});
