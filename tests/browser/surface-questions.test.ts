import { execFile } from 'node:child_process';
import { promisify } from 'node:util';

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';

import type { Assessment } from '../../analysis/answer/assessment.ts';
import { audit } from './axe.ts';
import { launchChromium } from './chromium.ts';
import { said, shareOf, TEST_MS, untilSurface, visitMap } from './surface-part.ts';
import { mapOfStations, untilAnswered } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** Serious and critical violations in the part of the page that holds the map. */
async function graveFaults(page: Page): Promise<readonly string[]> {
  const { grave, passed } = await audit(page, ':has(> figure)');
  expect(passed).toBeGreaterThan(5);
  return grave;
}

describe('the map’s other questions', () => {
  it('two kinds: turned round, the other side of the scale is shown', { timeout: TEST_MS }, async () => {
    const visit = await visitMap(browser, '?map=types&type=meyer_lemon&against=satsuma_owari&level=wood');
    const { page } = visit;
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
    await visit.close();
  });

  it('where to grow: less land, the longer a tree must live', { timeout: TEST_MS }, async () => {
    const visit = await visitMap(browser, '?map=where&type=meyer_lemon', { bypassCSP: true });
    const { page } = visit;
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
    expect(await graveFaults(page)).toEqual([]);
    await visit.close();
  });
});

describe('reading the map', () => {
  it(
    'the cross-hair tells the cell, Enter chooses it, and the command says the same',
    { timeout: TEST_MS },
    async () => {
      const visit = await visitMap(browser, '?type=meyer_lemon&level=wood&unit=C&at=31.1,-42.3');
      const { page } = visit;
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
      const pack = `${inject('packsFolder')}/sallowmere`;
      const types = ['--types', 'meyer_lemon', '--level', 'wood', '--json'];
      const command = ['data-scripts/entry/run.mjs', 'assess', '--pack', pack, `--at=${at}`, ...types];
      const { stdout } = await promisify(execFile)(process.execPath, command, { maxBuffer: 64e6 });
      const { headline } = (JSON.parse(stdout) as Assessment).types[0].levels[0];
      const told = Number(/1 winter in ([\d.]+), range/.exec(own)![1]);
      expect(Math.abs(told / headline.period! - 1)).toBeLessThan(0.02);
      await page.keyboard.press('Escape');
      await visit.close();
    },
  );
});

describe('on a phone', () => {
  it('map, modes and legend stand one under the other within the width', { timeout: TEST_MS }, async () => {
    const viewport = { width: 360, height: 740 };
    const visit = await visitMap(browser, '?map=types', {
      viewport,
      hasTouch: true,
      isMobile: true,
      bypassCSP: true,
    });
    const { page } = visit;
    expect(await graveFaults(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    const box = async (part: ReturnType<Page['locator']>) => (await part.boundingBox())!;
    const modes = await box(page.getByRole('group', { name: 'What the map shows' }));
    const map = await box(mapOfStations(page));
    const legend = await box(page.locator('figure figcaption'));
    expect(map.width).toBeGreaterThan(300);
    expect(modes.y + modes.height).toBeLessThanOrEqual(map.y);
    expect(map.y + map.height).toBeLessThanOrEqual(legend.y);
    await visit.close();
  });
});
