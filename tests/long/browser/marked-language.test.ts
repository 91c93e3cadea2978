import { readFile } from 'node:fs/promises';
import path from 'node:path';

import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';

import { findPhrases } from '../../../data-scripts/language/source-phrases.ts';
import { launchChromium } from '../../browser/chromium.ts';
import { markedCatalogue, unmarkedTexts } from '../../browser/marked-text.ts';
import { siteAddress, startVisit } from '../../browser/visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** Sections in their order, each with buttons to press for all it has to say, by their English names. */
const PRESSED: Readonly<Record<string, readonly string[]>> = {
  choose: ['Look through the kinds'],
  winters: [],
  spot: [],
  cover: [],
  life: [],
  year: [],
  sheet: [],
  desk: [],
  compare: [],
  records: [],
  method: [],
};
/** Names that data bring, airports that the method was checked on, and what Intl writes for months and between the parts of a list. */
async function dataNames(): Promise<string[]> {
  const folder = path.join(inject('packsFolder'), 'sallowmere');
  const read = async (file: string): Promise<unknown> =>
    JSON.parse(await readFile(path.join(folder, file), 'utf8'));
  const months = Array.from({ length: 12 }, (_, month) =>
    (['long', 'short'] as const).map((form) =>
      new Intl.DateTimeFormat('es-ES', { month: form, timeZone: 'UTC' }).format(Date.UTC(2000, month, 1)),
    ),
  );
  const files = await Promise.all(['stations.json', 'places.json', 'pack.json', 'land.json'].map(read));
  const airports: unknown = JSON.parse(await readFile('analysis/night/sustained-correction.json', 'utf8'));
  return [...files.flatMap(namesIn), ...namesIn(airports), ...months.flat(), ' de ', ' y ', ' o '];
}

/** Every text in a value, whole. */
function namesIn(value: unknown): string[] {
  if (typeof value === 'string') return [value, value.replace(/ \(invented\)$/, '')];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(namesIn) : [];
}

/** Waits until nothing in a section is on its way. */
async function untilStill(section: Locator): Promise<void> {
  await expect.poll(() => section.locator('.waiting, progress').count(), { timeout: 30_000 }).toBe(0);
}

/** A view that comes takes the place of what stood for it, so no element is held on to. */
async function scrollTo(page: Page, id: string): Promise<void> {
  await page.evaluate((part) => document.getElementById(part)?.scrollIntoView(), id);
}

/** Brings a section's view, presses its buttons and unfolds what is folded. */
async function openWhole(page: Page, id: string): Promise<void> {
  const section = page.locator(`section#${id}`);
  await scrollTo(page, id);
  await untilStill(section);
  for (const name of PRESSED[id]) {
    const button = section.getByRole('button', { name: `⟦${name}⟧`, exact: true });
    await button.click();
    await button.waitFor({ state: 'detached', timeout: 30_000 });
  }
  await untilStill(section);
  await page.evaluate(() => document.querySelectorAll('details').forEach((details) => (details.open = true)));
}

describe('in a language whose every phrase is marked', () => {
  it('the page says nothing that is in no catalogue', async () => {
    const phrases = [...findPhrases('.').values()].flatMap((said) => [...said.keys()]);
    const visit = await startVisit(browser, { locale: 'es-ES' }, async (context) => {
      await context.route(/phrases-es-[\w-]+\.json$/, (route) =>
        route.fulfill({ json: markedCatalogue(phrases) }),
      );
    });
    const { page } = visit;
    const names = await dataNames();
    await page.goto(siteAddress());
    await page.locator('#ranking button[aria-expanded]').first().waitFor();
    const unmarked: Record<string, string[]> = {};
    unmarked.first = await unmarkedTexts(page, 'header.masthead, #answer, .desk, aside', names);
    for (const id of Object.keys(PRESSED)) {
      await openWhole(page, id);
      unmarked[id] = await unmarkedTexts(page, `section#${id}`, names);
    }
    expect(Object.fromEntries(Object.entries(unmarked).filter(([, texts]) => texts.length > 0))).toEqual({});
    await visit.close();
  });
});
