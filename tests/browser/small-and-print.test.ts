import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { sticksOut } from './axe.ts';
import { launchChromium } from './chromium.ts';
import {
  openPart,
  rankingRow,
  rankingRows,
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

describe('on a phone 390 px wide', () => {
  it('the answer is on top and nothing scrolls sideways, in any part', async () => {
    const visit = await startVisit(browser, {
      viewport: { width: 390, height: 844 },
      isMobile: true,
      hasTouch: true,
      deviceScaleFactor: 2,
    });
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    const answer = (await page.getByRole('heading', { level: 1 }).boundingBox())!;
    expect(answer.y).toBeGreaterThanOrEqual(0);
    expect(answer.y + answer.height).toBeLessThan(844);
    const search = (await page.getByRole('combobox', { name: 'Postcode, town or station' }).boundingBox())!;
    const map = (await page.getByRole('application', { name: /^Map of / }).boundingBox())!;
    expect(answer.y).toBeLessThan(search.y);
    expect(search.y).toBeLessThan(map.y);
    expect(map.width).toBeLessThanOrEqual(390);
    expect(map.width).toBeGreaterThan(250);
    expect(await sticksOut(page)).toEqual([]);

    await rankingRow(page, 'Meyer lemon').tap();
    await page.getByRole('region', { name: /^Meyer lemon.*: the four levels$/ }).waitFor();
    await openPart(page, 'Winters', () => winterSlider(page));
    await openPart(page, 'Records', (part) => part.getByRole('table'));
    await openPart(page, 'Method', (part) => part.getByRole('table'));
    await page.evaluate(() =>
      document.querySelectorAll('details').forEach((details) => (details.open = true)),
    );
    expect(await sticksOut(page)).toEqual([]);
    await visit.close();
  });
});

describe('printed', () => {
  it('keeps the answer, every type of the ranking, the map and the cautions, and drops what only a screen can use', async () => {
    const visit = await startVisit(browser, { colorScheme: 'dark' });
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    const rows = await rankingRows(page).count();
    await page.emulateMedia({ media: 'print' });
    for (const caution of [
      'A forecast or warning in force goes first.',
      'A threshold is not a switch.',
      'The station is not your yard.',
      'Covers fail in wind.',
    ])
      expect(await page.getByText(caution).isVisible(), caution).toBe(true);
    expect(await page.getByRole('heading', { level: 1 }).isVisible()).toBe(true);
    expect(await page.getByText('Invented', { exact: true }).first().isVisible()).toBe(true);
    expect(await page.getByRole('combobox').count()).toBe(0);
    expect(await page.getByRole('navigation').count()).toBe(0);
    const paper = await page.evaluate(() => {
      const colour = getComputedStyle(document.body).backgroundColor;
      return (colour.match(/[\d.]+/g) ?? []).map(Number);
    });
    // Transparent or light: never the dark page on paper.
    expect(paper[3] === 0 || Math.min(...paper.slice(0, 3)) > 230, paper.join()).toBe(true);
    // Parts that nobody has come near say on a screen that they open; on paper that would stand for ever.
    const opening = page.getByText('Opening …');
    expect(await opening.count()).toBeGreaterThan(0);
    for (const one of await opening.all()) expect(await one.isVisible()).toBe(false);
    const { length } = await page.pdf();
    expect(length).toBeGreaterThan(20_000);

    // Every type is named with its answer. Rows are found by what they say, since paper has no buttons.
    const shown = await page
      .getByRole('region', { name: 'Ranking', exact: true })
      .getByRole('listitem')
      .evaluateAll(
        (items) => items.filter((item) => (item as HTMLElement).innerText.trim().length > 5).length,
      );
    expect(shown).toBe(rows);
    await visit.close();
  });
});
