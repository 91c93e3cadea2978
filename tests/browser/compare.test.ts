import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { expectFitsPhone, expectNothingFound } from './axe.ts';
import { launchChromium } from './chromium.ts';
import { commandAnswer } from './command-answer.ts';
import { openCompare } from './compare-part.ts';
import { TEST_MS } from './patience.ts';
import { SURFACE_PATIENCE_MS } from './surface-part.ts';
import { expectCalm, openPart, siteAddress, startVisit, turnTo, untilAnswered, type Visit } from './visit.ts';

const PINS = ['SC 123', 'SC 101'];
const PINNED = `?pin=postcode:${PINS[0]}&pin=postcode:${PINS[1]}&unit=C`;
const TYPE = 'satsuma_owari';

/** One visit; each test turns to an address of its own. */
let browser: Browser;
let visit: Visit;
let page: Page;
beforeAll(async () => {
  browser = await launchChromium();
  visit = await startVisit(browser, { bypassCSP: true });
  ({ page } = visit);
  await page.goto(siteAddress(PINNED));
  await untilAnswered(page);
});
afterAll(() => browser.close());

async function choosePlace(code: string): Promise<void> {
  await page.getByRole('combobox', { name: 'Postcode, town or station' }).fill(code);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: new RegExp(`At ${code}`) }).waitFor();
  await expectCalm(page);
}

const pins = (): string[] => new URL(page.url()).searchParams.getAll('pin');

/** Cells of a row of the table of places, by its heading. */
async function cells(part: Locator, heading: string): Promise<string[]> {
  const row = part.getByRole('row').filter({ has: part.page().getByRole('rowheader', { name: heading }) });
  const texts = await row.getByRole('cell').allTextContents();
  return texts.map((text) => text.replaceAll('\u00a0', ' ').trim());
}

describe('pinned places', () => {
  it('are told by the figures of the command for each, with the ground between them', async () => {
    const answers = await Promise.all(PINS.map((code) => commandAnswer('--postcode', code)));
    await turnTo(page, PINNED);
    const part = await openCompare(page);
    const table = part.getByRole('region', { name: 'Places compared' });
    await table.waitFor({ timeout: 20_000 });
    const wood = answers.map(({ types }) =>
      types.find(({ id }) => id === TYPE)!.levels.find(({ level }) => level === 'wood')!,
    );
    expect(await cells(table, 'Winters hit')).toEqual(
      wood.map(({ counted }) => `${counted.hits} of ${counted.winters} estimated winters`),
    );
    expect(await cells(table, 'Height')).toEqual(
      answers.map(({ place }) => `${Math.round(place.elevation_m!)} m`),
    );
    expect(await cells(table, 'Level good to about')).toEqual(
      answers.map(({ place }) => `± ${place.error_c!.toFixed(1)} °C`),
    );
    const marks = part
      .getByRole('group', { name: /^Satsuma mandarin, Owari/ })
      .getByRole('img', { name: /winter/ });
    expect(await marks.count()).toBe(2);
    for (const [i, { headline }] of wood.entries()) {
      if (headline.basis !== 'fitted') continue;
      const spoken = (await marks.nth(i).getAttribute('aria-label')) ?? '';
      const told = Number(/about 1 winter in ([\d.]+)/.exec(spoken)![1]);
      expect(Math.abs(told / headline.period! - 1)).toBeLessThan(0.06);
    }

    // A box that scrolls is reached by Tab, and the table in it is one for a screen reader.
    await table.focus();
    expect(await table.evaluate((node) => node === document.activeElement)).toBe(true);
    expect(await table.getByRole('columnheader').allTextContents()).toEqual([
      expect.stringMatching(/^SC 123 .*\(1\)$/),
      expect.stringMatching(/^SC 101 .*\(2\)$/),
    ]);
    expect(visit.complaints).toEqual([]);
  });

  it('go into the address, come back from it, and leave it again by keyboard', async () => {
    await turnTo(page, '?unit=C');
    const place = page.getByRole('region', { name: 'Place', exact: true });
    for (const code of ['SC 123', 'SC 101', 'SC 130', 'SC 110']) {
      await choosePlace(code);
      await place.getByRole('button', { name: 'Pin this place' }).click();
    }
    const expected = ['SC 123', 'SC 101', 'SC 130', 'SC 110'].map((code) => `postcode:${code}`);
    expect(pins()).toEqual(expected);
    await choosePlace('SC 115');
    expect(await place.getByRole('button', { name: 'Pin this place' }).isDisabled()).toBe(true);

    await page.reload();
    await untilAnswered(page);
    const part = await openCompare(page);
    await part.getByRole('button', { name: /^Take off SC 110/ }).waitFor();
    expect(await part.getByRole('listitem').filter({ hasText: 'Take off' }).count()).toBe(4);

    const second = part.getByRole('button', { name: /^Take off SC 101/ });
    await second.focus();
    await page.keyboard.press('Enter');
    await expect.poll(pins).toEqual(expected.filter((pin) => !pin.endsWith('SC 101')));
    const focused = await page.evaluate(() => document.activeElement?.textContent ?? '');
    expect(focused).toMatch(/^Show|^Take off/);
    await page.goBack();
    await expect.poll(pins).toEqual(expected);
    await second.waitFor();
  });
});

describe('an estimated place', () => {
  it('says what it is estimated from, takes the reader’s own height, and keeps it in the address', async () => {
    const [own, raised] = await Promise.all([
      commandAnswer('--postcode', 'SC 123'),
      // The command takes a height with a point: the one of the postcode.
      commandAnswer('--postcode', 'SC 123').then(({ place }) =>
        commandAnswer('--at', `${place.lat},${place.lon},400`),
      ),
    ]);
    expect(own.place.basis).toBe('history');
    await turnTo(page, '?postcode=SC 123&unit=C');
    const place = page.getByRole('region', { name: 'Place', exact: true });
    await place.getByText(/\d+ stations around, most from/).waitFor();
    await place.getByText(/hits are estimated/).waitFor();
    const text = async (): Promise<string> => (await place.innerText()).replaceAll('\u00a0', ' ');
    await expect.poll(text).toContain(`± ${own.place.error_c!.toFixed(1)} °C`);
    expect(await text()).toContain(`${Math.round(own.place.elevation_m!)} m, by the pack’s grid of heights`);

    await place.getByText('I know the height better').click();
    await place.getByRole('textbox', { name: 'Height of the ground, metres' }).fill('high up');
    await page.keyboard.press('Enter');
    await place.getByText(/A height is a number from/).waitFor();
    await place.getByRole('textbox', { name: 'Height of the ground, metres' }).fill('400');
    await page.keyboard.press('Enter');
    await place.getByText(/400\sm, as you say/).waitFor();
    await expectCalm(page);
    expect(new URL(page.url()).searchParams.get('postcode')).toBe('SC 123,400');
    const level = raised.types.find(({ id }) => id === TYPE)!.levels.find((entry) => entry.level === 'wood')!;
    await page
      .getByText(new RegExp(`hits in ${level.counted.hits} of ${level.counted.winters} estimated winters`))
      .waitFor();
  });

  it('is read three ways, and the map’s winters are chosen there', async () => {
    const answer = await commandAnswer('--postcode', 'SC 123');
    const level = answer.types.find(({ id }) => id === TYPE)!.levels.find((entry) => entry.level === 'wood')!;
    await turnTo(page, '?postcode=SC 123');
    const part = await openPart(page, 'Winters', (found) =>
      found.getByRole('radio', { name: /^Whole record/ }),
    );
    const whole = part.getByRole('radio', { name: /^Whole record/ });
    expect(await whole.isChecked()).toBe(true);
    await part
      .getByText(`hit in ${level.counted.hits} of ${level.counted.winters} estimated winters`, {
        exact: false,
      })
      .first()
      .waitFor();
    await part
      .getByText(/Mann-Kendall p/)
      .first()
      .waitFor();
    await whole.focus();
    await page.keyboard.press('ArrowDown');
    expect(new URL(page.url()).searchParams.get('map-winters')).toBe('last30');
    expect(await part.getByRole('radio', { name: /^Last 30 winters/ }).isChecked()).toBe(true);
  });
});

describe('accessibility and small screens', { timeout: TEST_MS }, () => {
  it('finds no fault in what compares, light or dark, and nothing wider than a phone', async () => {
    await turnTo(page, `${PINNED}&postcode=SC 123&area=31.05,-42.55_0,87s_5k0,0_0,-87s`);
    const part = await openCompare(page);
    await part.getByRole('region', { name: 'Places compared' }).waitFor({ timeout: 20_000 });
    await part.getByText('Coldest tenth', { exact: true }).waitFor({ timeout: SURFACE_PATIENCE_MS });
    await expectFitsPhone(page);
    await expectNothingFound(page, 'compare and place', '#compare', '.choices');
  });
});
