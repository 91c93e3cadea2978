import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import {
  expectCalm,
  rankingRow,
  siteAddress,
  startVisit,
  turnTo,
  untilAnswered,
  type Visit,
} from './visit.ts';

/** A reader, and another with a profile and a locale of their own. */
let browser: Browser;
let visit: Visit;
let other: Visit;
beforeAll(async () => {
  browser = await launchChromium();
  visit = await startVisit(browser);
  other = await startVisit(browser, { locale: 'de-DE' });
});
afterAll(() => browser.close());

describe('the address', () => {
  it('holds everything chosen: the same after a reload, and for another reader', async () => {
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    const first = await page.getByRole('heading', { level: 1 }).innerText();

    const box = page.getByRole('combobox', { name: 'Postcode, town or station' });
    await box.fill('SC 130');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /At SC 130 / }).waitFor();
    await rankingRow(page, 'Meyer lemon').click();
    await page.getByRole('radio', { name: 'Leaf', exact: true }).check({ force: true });
    const age = page.getByRole('slider', { name: /^Years since planting/ });
    await age.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowRight');
    await page.getByRole('radio', { name: 'Weak' }).check({ force: true });
    await page.getByLabel('Carrying its fruit').check();
    await page.getByRole('radio', { name: '°C' }).check({ force: true });
    await expectCalm(page);

    const chosen = Object.fromEntries(new URL(page.url()).searchParams);
    expect(chosen).toEqual({
      postcode: 'SC 130',
      type: 'meyer_lemon',
      level: 'leaf',
      age: '2',
      condition: 'weak',
      'fruit-load': 'yes',
      unit: 'C',
    });
    const told = await page.getByRole('heading', { level: 1 }).innerText();
    expect(told).not.toBe(first);
    expect(told).toContain('2-year-old');
    expect(told).toContain('carrying fruit');
    const detail = page.getByRole('region', { name: /^Meyer lemon.*: the four levels$/ });
    const figures = await detail.innerText();

    await page.reload();
    await untilAnswered(page);
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe(told);
    expect(await detail.innerText()).toBe(figures);
    expect(await page.getByRole('radio', { name: 'Leaf', exact: true }).isChecked()).toBe(true);
    expect(await page.getByRole('radio', { name: '°C' }).isChecked()).toBe(true);
    expect(await age.inputValue()).toBe('2');

    await other.page.goto(page.url());
    await untilAnswered(other.page);
    expect(await other.page.getByRole('heading', { level: 1 }).innerText()).toBe(told);
  });

  it('lets Back and Forward undo and redo a choice', async () => {
    const { page } = other;
    await turnTo(page, '');
    const row = rankingRow(page, 'Meyer lemon');
    await row.click();
    expect(await row.getAttribute('aria-expanded')).toBe('true');
    await page.getByRole('radio', { name: 'Fruit', exact: true }).check({ force: true });
    expect(page.url()).toContain('level=fruit');

    await page.goBack();
    await expect.poll(() => page.getByRole('radio', { name: 'Wood', exact: true }).isChecked()).toBe(true);
    expect(await row.getAttribute('aria-expanded')).toBe('true');
    await page.goBack();
    await expect.poll(() => row.getAttribute('aria-expanded')).toBe('false');
    await page.goForward();
    await expect.poll(() => row.getAttribute('aria-expanded')).toBe('true');
  });

  it('with nonsense gets a plain note for each part, and the page still answers', async () => {
    const { page } = visit;
    await page.goto(siteAddress('?level=bark&age=-3&unit=K&at=95,12&years=1e9&type=<b>x'));
    await untilAnswered(page);
    for (const value of ['level “bark”', 'age “-3”', 'unit “K”', 'at “95,12”', 'years “1e9”', 'type “<b>x”'])
      await page.getByText(`The link asked for ${value}`).waitFor();
    await page
      .getByRole('heading', { level: 1, name: /1 winter in|not once|less often|every winter/ })
      .waitFor();
    expect(visit.complaints).toEqual([]);
  });

  it('with an unknown postcode, station or type says so and stays with an answer', async () => {
    const { page } = visit;
    // The first as the page is loaded with it, the others in the open page.
    await page.goto(siteAddress('?postcode=ZZ 999'));
    await untilAnswered(page);
    await page
      .getByRole('alert')
      .filter({ hasText: '“ZZ 999” is not among the postcodes and towns' })
      .waitFor();
    await turnTo(page, '?station=NOSUCH');
    await page.getByRole('alert').filter({ hasText: 'There is no station “NOSUCH”' }).waitFor();
    await untilAnswered(page);
    await turnTo(page, '?type=nosuch_fruit');
    await page
      .getByText(/nosuch_fruit/)
      .first()
      .waitFor({ timeout: 3000 });
    await untilAnswered(page);
  });
});
