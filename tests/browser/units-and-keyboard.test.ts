import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import {
  expectCalm,
  mapOfStations,
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

/** Opens every part, table and list, so that each place where a temperature shows is on the page. */
async function openEverything(page: Page): Promise<void> {
  await rankingRow(page, 'Meyer lemon').click();
  await openPart(page, 'Winters', () => winterSlider(page));
  await openPart(page, 'Spot', (part) => part.getByRole('table'));
  await openPart(page, 'Cover', (part) => part.getByRole('table'));
  await openPart(page, 'Records', (part) => part.getByRole('table'));
  await openPart(page, 'Method', (part) => part.getByRole('table'));
  await page.evaluate(() => document.querySelectorAll('details').forEach((details) => (details.open = true)));
  await winterSlider(page).focus();
  await page.keyboard.press('ArrowLeft');
}

/**
 * Every text that is read or spoken and tells temperatures in `unit` alone, with some words around. Left aside: the switch,
 * the reader's own SQL, sentences that give both units, and what tells how a source had booked its readings.
 */
async function placesWith(page: Page, unit: '°F' | '°C'): Promise<string[]> {
  return page.evaluate((sought) => {
    const other = sought === '°F' ? '°C' : '°F';
    const ofSources = /stored as tenths of °C|so that 28 °F is again 28 °F/;
    const found: string[] = [];
    const spoken = ['aria-label', 'aria-valuetext', 'title', 'alt', 'placeholder'];
    for (const element of document.body.querySelectorAll('*')) {
      if (element.closest('fieldset, form, script, style, noscript')) continue;
      const own = [...element.childNodes].filter((node) => node.nodeType === Node.TEXT_NODE);
      const texts = [
        ...own.map((node) => node.textContent ?? ''),
        ...spoken.map((a) => element.getAttribute(a) ?? ''),
      ];
      for (const text of texts) {
        const at = text.indexOf(sought);
        if (at >= 0 && !text.includes(other) && !ofSources.test(text.replaceAll(/\s+/g, ' ')))
          found.push(`${element.tagName}: ${text.slice(Math.max(0, at - 40), at + 20)}`);
      }
    }
    return found;
  }, unit);
}

describe('the unit switch', () => {
  it('leaves nothing of the other unit anywhere on the page, either way', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    await page.goto(siteAddress('?unit=F&spot=low-spot&cover=cloth-heavy,soil-bank'));
    await untilAnswered(page);
    await openEverything(page);
    for (const [chosen, left] of [
      ['°C', '°F'],
      ['°F', '°C'],
    ] as const) {
      const before = await placesWith(page, left);
      expect(before.length).toBeGreaterThan(60);
      await page.getByRole('radio', { name: chosen }).check({ force: true });
      await expectCalm(page);
      expect(await placesWith(page, left)).toEqual([]);
      expect((await placesWith(page, chosen)).length).toBe(before.length);
    }
    await visit.close();
  });

  it('converts: the same threshold in both', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    await page.goto(siteAddress('?type=meyer_lemon&level=leaf&unit=F'));
    await untilAnswered(page);
    const row = page
      .getByRole('region', { name: /^Meyer lemon.*: the four levels$/ })
      .getByRole('row', { name: /^Threshold/ });
    const cell = row.getByRole('cell').nth(1);
    const figure = async (): Promise<number> =>
      Number(/^(−?[\d.]+)/.exec((await cell.innerText()).trim())![1].replace('−', '-'));
    const f = await figure();
    await page.getByRole('radio', { name: '°C' }).check({ force: true });
    await expect.poll(figure).not.toBe(f);
    expect(Math.abs((await figure()) - (f - 32) / 1.8)).toBeLessThanOrEqual(0.05 + 1e-9);
    await visit.close();
  });

  it('is remembered by the next visit of the same reader', async () => {
    const visit = await startVisit(browser);
    await visit.page.goto(siteAddress());
    await untilAnswered(visit.page);
    await visit.page.getByRole('radio', { name: '°C' }).check({ force: true });
    await visit.page.goto(siteAddress());
    await untilAnswered(visit.page);
    expect(await visit.page.getByRole('radio', { name: '°C' }).isChecked()).toBe(true);
    await visit.close();
  });
});

/** What has the focus: role or tag, name, and whether something on screen shows it. */
async function focused(page: Page): Promise<{ tag: string; name: string; visible: boolean }> {
  return page.evaluate(() => {
    const element = document.activeElement as HTMLElement;
    const shows = (style: CSSStyleDeclaration): boolean =>
      (style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0) || style.boxShadow !== 'none';
    // A hidden radio may hand its outline to the label around it.
    const holders = [element, element.closest('label'), element.parentElement].filter((h) => h !== null);
    return {
      tag: element.tagName.toLowerCase(),
      name: element.getAttribute('aria-label') ?? element.textContent?.trim().slice(0, 60) ?? '',
      visible: holders.some((holder) => shows(getComputedStyle(holder))),
    };
  });
}

/** Presses Tab until `wanted` has the focus; every stop on the way must be visible. */
async function tabTo(
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

describe('with the keyboard alone', () => {
  it('one comes from the load to an opened row and through the bars of the winters', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);

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
    await visit.close();
  });

  it('the map tells its stations and the search its hits', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
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
    await visit.close();
  });
});
