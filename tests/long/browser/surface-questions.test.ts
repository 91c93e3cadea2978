import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { expectNothingFound } from '../../browser/axe.ts';
import { launchChromium } from '../../browser/chromium.ts';
import { commandAnswer } from '../../browser/command-answer.ts';
import { said, shareOf, TEST_MS, untilSurface, visitMap } from '../../browser/surface-part.ts';
import { mapOfStations, turnTo, untilAnswered, type Visit } from '../../browser/visit.ts';

/** The part of the page that holds the map. */
const MAP = ':has(> figure)';
/** One map; each test turns to a question of its own. */
const TWO_KINDS = '?map=types&type=meyer_lemon&against=satsuma_owari&level=wood';
let browser: Browser;
let visit: Visit;
let page: Page;
beforeAll(async () => {
  browser = await launchChromium();
  visit = await visitMap(browser, TWO_KINDS, { bypassCSP: true });
  ({ page } = visit);
}, TEST_MS);
afterAll(() => browser.close());

async function askMap(query: string): Promise<void> {
  await turnTo(page, query);
  await untilSurface(page);
}

describe('the map’s other questions', () => {
  it('two kinds: turned round, the other side of the scale is shown', { timeout: TEST_MS }, async () => {
    await askMap(TWO_KINDS);
    const sides = async (): Promise<{ oftener: number; rarer: number }> => ({
      oftener:
        (await shareOf(page, '2 to 4 times as often')) + (await shareOf(page, 'over 4 times as often')),
      rarer:
        (await shareOf(page, '2 to 4 times as rarely')) + (await shareOf(page, 'over 4 times as rarely')),
    });
    const tender = await sides();
    expect(tender.oftener).toBeGreaterThan(0.2);
    expect(tender.rarer).toBeLessThan(0.01);
    await page.getByRole('button', { name: 'Turn round' }).click();
    await page
      .getByText(/against Meyer lemon/)
      .first()
      .waitFor();
    await untilSurface(page);
    const hardy = await sides();
    expect(hardy.rarer).toBeCloseTo(tender.oftener, 1);
    expect(hardy.oftener).toBeLessThan(0.01);
    const query = new URL(page.url()).searchParams;
    expect([query.get('type'), query.get('against')]).toEqual(['satsuma_owari', 'meyer_lemon']);
  });

  it('where to grow: less land, the longer a tree must live', { timeout: TEST_MS }, async () => {
    await askMap('?map=where&type=meyer_lemon');
    const legend = page.locator('figure figcaption');
    const share = async (): Promise<number> =>
      Number(/(\d+)% of the land/.exec(await legend.innerText())![1]);
    const at25 = await share();
    const painted25 = await shareOf(page, '1 in 25 or rarer');
    await page.getByLabel('killed at most once in').selectOption('10');
    await expect.poll(() => legend.innerText()).toMatch(/1 in 10 or rarer/);
    await page.waitForTimeout(600);
    expect(await share()).toBeGreaterThan(at25);
    expect(await shareOf(page, '1 in 10 or rarer')).toBeGreaterThan(painted25);
    expect(new URL(page.url()).searchParams.get('at-least')).toBe('10');
    await page.goBack();
    await expect.poll(() => legend.innerText()).toMatch(/1 in 25 or rarer/);
    await expectNothingFound(page, 'the map', MAP);
  });
});

describe('reading the map', () => {
  it(
    'the cross-hair tells the cell, Enter chooses it, and the command says the same',
    { timeout: TEST_MS },
    async () => {
      await askMap('?type=meyer_lemon&level=wood&unit=C&at=31.1,-42.3');
      await mapOfStations(page).focus();
      await page.keyboard.press('r');
      await expect
        .poll(() => page.getByRole('button', { name: /^Read the map/ }).getAttribute('aria-pressed'))
        .toBe('true');
      const first = await said(page).innerText();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowUp');
      await expect.poll(() => said(page).innerText()).not.toBe(first);
      // Resting, the cell's estimate gives way to the point's own answer with its range.
      await expect
        .poll(() => said(page).innerText(), { timeout: 20_000 })
        .toMatch(/1 winter in .+, range 1 in /);
      const own = await said(page).innerText();
      await page.keyboard.press('Enter');
      await expect.poll(() => new URL(page.url()).searchParams.get('at')).not.toBe('31.1,-42.3');
      const at = new URL(page.url()).searchParams.get('at')!;
      await untilAnswered(page);
      const answer = await commandAnswer(`--at=${at}`, '--types', 'meyer_lemon', '--level', 'wood');
      const { headline } = answer.types[0].levels[0];
      const told = Number(/1 winter in ([\d.]+), range/.exec(own)![1]);
      expect(Math.abs(told / headline.period! - 1)).toBeLessThan(0.02);
      await page.keyboard.press('Escape');
    },
  );
});

describe('on a phone', () => {
  it('map, modes and legend stand one under the other within the width', { timeout: TEST_MS }, async () => {
    await page.setViewportSize({ width: 360, height: 740 });
    await askMap('?map=types');
    await expectNothingFound(page, 'the map on a phone', MAP);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    const box = async (part: ReturnType<Page['locator']>) => (await part.boundingBox())!;
    const modes = await box(page.getByRole('group', { name: 'What the map shows' }));
    const map = await box(mapOfStations(page));
    const legend = await box(page.locator('figure figcaption'));
    expect(map.width).toBeGreaterThan(300);
    expect(modes.y + modes.height).toBeLessThanOrEqual(map.y);
    expect(map.y + map.height).toBeLessThanOrEqual(legend.y);
  });
});
