import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import { focused, tabTo } from './keyboard.ts';
import {
  expectCalm,
  mapOfStations,
  openPart,
  rankingRow,
  rankingRows,
  siteAddress,
  startVisit,
  turnTo,
  untilAnswered,
  winterSlider,
  type Visit,
} from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** Opens every part, table and list, so that each place where a temperature shows is on the page. */
async function openEverything(page: Page): Promise<void> {
  await rankingRow(page, 'Meyer lemon').click();
  await openPart(page, 'Winters', () => winterSlider(page));
  await openPart(page, 'Spot', (part) => part.getByRole('table'));
  await openPart(page, 'Cover', (part) => part.getByRole('table'));
  await openPart(page, 'Desk', (part) => part.getByText(/level is good to about/));
  await openPart(page, 'Records', (part) => part.getByRole('table'));
  await openPart(page, 'Method', (part) => part.getByRole('table'));
  await page.evaluate(() => document.querySelectorAll('details').forEach((details) => (details.open = true)));
  await winterSlider(page).focus();
  await page.keyboard.press('ArrowLeft');
}

/**
 * Every text that is read or spoken and tells temperatures in `unit` alone, with some words around. Left aside: the switch, the sheet (it
 * stays as it is while nobody is near it, and has its own test),
 * the reader's own SQL, sentences that give both units, and what tells how a source had booked its readings.
 */
async function placesWith(page: Page, unit: '°F' | '°C'): Promise<string[]> {
  return page.evaluate((sought) => {
    const other = sought === '°F' ? '°C' : '°F';
    const ofSources = /stored as tenths of °C|so that 28 °F is again 28 °F/;
    const found: string[] = [];
    const spoken = ['aria-label', 'aria-valuetext', 'title', 'alt', 'placeholder'];
    for (const element of document.body.querySelectorAll('*')) {
      if (element.closest('fieldset, form, script, style, noscript, #sheet article')) continue;
      const own = [...element.childNodes].filter((node) => node.nodeType === Node.TEXT_NODE);
      const texts = [
        ...own.map((node) => node.textContent ?? ''),
        ...spoken.map((a) => element.getAttribute(a) ?? ''),
      ];
      for (const text of texts) {
        // Figures differ with the unit, and with it the lengths told beside them.
        const even = text.replaceAll(/[−-]?\d+([.,]\d+)?/g, '#').replaceAll(/\b(mi|km|ft|m)\b/g, 'm');
        const at = even.indexOf(sought);
        if (at >= 0 && !text.includes(other) && !ofSources.test(text.replaceAll(/\s+/g, ' ')))
          found.push(`${element.tagName}: ${even.slice(Math.max(0, at - 40), at + 2)}`);
      }
    }
    return found;
  }, unit);
}

describe('the unit switch', () => {
  let visit: Visit;
  let page: Page;
  const choose = async (unit: '°F' | '°C'): Promise<void> => {
    await page.getByRole('radio', { name: unit }).check({ force: true });
    await expectCalm(page);
  };
  beforeAll(async () => {
    visit = await startVisit(browser);
    ({ page } = visit);
    await page.goto(siteAddress());
    await untilAnswered(page);
  });
  afterAll(() => visit.close());

  it('is remembered by the next visit of the same reader', async () => {
    await choose('°C');
    await page.goto(siteAddress());
    await untilAnswered(page);
    expect(await page.getByRole('radio', { name: '°C' }).isChecked()).toBe(true);
  });

  it('converts: the same threshold in both', async () => {
    await turnTo(page, '?type=meyer_lemon&level=leaf&unit=F');
    const row = page
      .getByRole('region', { name: /^Meyer lemon.*: the four levels$/ })
      .getByRole('row', { name: /^Threshold/ });
    const cell = row.getByRole('cell').nth(1);
    const figure = async (): Promise<number> =>
      Number(/^(−?[\d.]+)/.exec((await cell.innerText()).trim())![1].replace('−', '-'));
    const f = await figure();
    await choose('°C');
    await expect.poll(figure).not.toBe(f);
    expect(Math.abs((await figure()) - (f - 32) / 1.8)).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  it('leaves nothing of the other unit anywhere on the page, either way', async () => {
    await turnTo(page, '?unit=F&spot=low-spot&cover=cloth-heavy,soil-bank');
    await openEverything(page);
    for (const [chosen, left] of [
      ['°C', '°F'],
      ['°F', '°C'],
    ] as const) {
      const before = await placesWith(page, left);
      expect(before.length).toBeGreaterThan(60);
      await choose(chosen);
      expect(await placesWith(page, left)).toEqual([]);
      const anyUnit = (texts: string[]): string[] => texts.map((text) => text.replaceAll(/°[FC]/g, '°'));
      expect(anyUnit(await placesWith(page, chosen))).toEqual(anyUnit(before));
    }
  });
});

describe('with the keyboard alone', () => {
  let visit: Visit;
  let page: Page;
  beforeAll(async () => {
    visit = await startVisit(browser);
    ({ page } = visit);
    await page.goto(siteAddress());
    await untilAnswered(page);
  });
  afterAll(() => visit.close());

  it('one comes from the load to an opened row and through the bars of the winters', async () => {
    await page.keyboard.press('Tab');
    expect((await focused(page)).name).toBe('Skip to the answer');

    await tabTo(page, ({ tag }) => tag === 'input' && true);
    await tabTo(page, ({ tag, name }) => tag === 'div' && name.startsWith('Map of '), 40);
    await page.keyboard.press('ArrowRight');
    const chosen = page.getByRole('heading', { level: 1 });
    const before = await chosen.innerText();
    await page.keyboard.press('Enter');
    await expect.poll(() => chosen.innerText()).not.toBe(before);
    await expectCalm(page);

    const first = (await rankingRows(page).first().getAttribute('aria-label'))!;
    await tabTo(page, ({ name }) => name === first);
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: /: the four levels$/ }).waitFor();
    expect(await rankingRows(page).first().getAttribute('aria-expanded')).toBe('true');

    await tabTo(page, ({ tag, name }) => tag === 'a' && name === 'See every winter', 20);
    await page.keyboard.press('Enter');
    await winterSlider(page).waitFor();
    await tabTo(page, ({ name }) => name.endsWith(': coldest of each winter'), 60);
    const said = (): Promise<string | null> => winterSlider(page).getAttribute('aria-valuetext');
    await page.keyboard.press('Home');
    const oldest = await said();
    expect(oldest).toMatch(/^Winter \d{4}–\d\d: .*(Hit|No hit|no night)/);
    await page.keyboard.press('ArrowRight');
    await expect.poll(said).not.toBe(oldest);
    await page.keyboard.press('End');
    expect(await winterSlider(page).getAttribute('aria-valuenow')).toBe(
      await winterSlider(page).getAttribute('aria-valuemax'),
    );
  });

  it('the map tells its stations and the search its hits', async () => {
    await mapOfStations(page).focus();
    await page.keyboard.press('ArrowUp');
    await page
      .getByRole('status')
      .filter({ hasText: /: .*complete winters|No station that way/ })
      .first()
      .waitFor({ state: 'attached' });

    const box = page.getByRole('combobox', { name: 'Postcode, town or station' });
    await box.focus();
    await page.keyboard.type('SC 1');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    const active = await box.getAttribute('aria-activedescendant');
    expect(active).not.toBeNull();
    const option = page.locator(`[id="${active}"]`);
    expect(await option.getAttribute('aria-selected')).toBe('true');
    const label = ((await option.textContent()) ?? '').trim().slice(0, 6);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: new RegExp(`At ${label}`) }).waitFor();
  });
});
