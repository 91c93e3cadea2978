import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import type { Assessment } from '../../analysis/answer/assessment.ts';
import { launchChromium } from './chromium.ts';
import { commandAnswer } from './command-answer.ts';
import { expectRankingFigures } from './ranking-figures.ts';
import { expectCalm, rankingRows, siteAddress, startVisit, untilAnswered } from './visit.ts';

const POSTCODE = 'SC 123';

let browser: Browser;
let answer: Assessment;
beforeAll(async () => {
  browser = await launchChromium();
  answer = await commandAnswer('--postcode', POSTCODE);
});
afterAll(() => browser.close());

describe('from a postcode to the ranking', () => {
  it('gives the numbers of the command for the same postcode, at every level', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    const box = page.getByRole('combobox', { name: 'Postcode, town or station' });
    await box.focus();
    await page.keyboard.type(POSTCODE);
    await page.getByRole('option', { name: new RegExp(`^${POSTCODE} `) }).waitFor();
    const began = performance.now();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: new RegExp(`At ${POSTCODE} `) }).waitFor();
    await expectCalm(page);
    console.log(`Enter to the full ranking: ${Math.round(performance.now() - began)} ms (polled).`);
    expect(new URL(page.url()).searchParams.get('postcode')).toBe(POSTCODE);

    const edible = answer.types.filter(({ use }) => use !== 'rootstock');
    expect(answer.types).toHaveLength(37);
    expect(edible.length).toBeLessThan(37);
    expect(await rankingRows(page).count()).toBe(edible.length);

    await page.getByLabel('Show rootstocks too').check();
    expect(await rankingRows(page).count()).toBe(37);
    await page.getByRole('region', { name: 'Ranking', exact: true }).getByText('The same as a table').click();

    let compared = 0;
    for (const level of ['fruit', 'leaf', 'wood', 'kill'] as const)
      compared += await expectRankingFigures(page, level, answer, 'estimated winters');
    expect(compared).toBeGreaterThan(40);
    await visit.close();
  });

  it('answers the mouse on the map as well: a point gets an answer of its own, in the address too', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    const before = await page.getByRole('heading', { level: 1 }).textContent();
    const map = page.getByRole('application', { name: /^Map of / });
    const area = (await map.boundingBox())!;
    await page.mouse.click(area.x + area.width * 0.4, area.y + area.height * 0.4);
    await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).not.toBe(before);
    expect(page.url()).toMatch(/[?&](at|station)=/);
    await visit.close();
  });

  it('says plainly when nothing is called so', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    await page.getByRole('combobox', { name: 'Postcode, town or station' }).fill('XQ 999');
    await page.keyboard.press('Enter');
    await page.getByText('Nothing here is called “XQ 999”.').waitFor();
    await visit.close();
  });
});
