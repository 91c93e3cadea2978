import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import type { LifeAnswer, TypeLife } from '../../analysis/answer/life.ts';
import type { Reading } from '../../analysis/tree/winter-margins.ts';
import { launchChromium } from './chromium.ts';
import { assessedLife, expectShare, plantingsInGrid, plantingsInTable, winterTold } from './life-part.ts';
import { PATIENCE_MS, TEST_MS } from './patience.ts';
import { plain, siteAddress, startVisit, turnTo, untilAnswered, type Visit } from './visit.ts';

/** A cold station of the demo pack: trees that are killed, trees that live, and winters that are not complete. */
const STATION = 'ZZC00000206';
const POSTCODE = 'SC 105';
const TYPE = 'satsuma_owari';
/** The readings in the order shown, the colder first, as columns name them. */
const READING_TITLES: Readonly<Record<Reading, string>> = {
  night_by_night: 'night by night',
  hardened: 'hardened trees',
};
/** Width between the margins of a printed page, CSS px. */
const PAPER_PX = 720;
/** Tab presses from the part's button to its grid: more than the controls that stand between. */
const TABS = 30;

/** One visit with its nights opened once; what stands on paper is looked at last. */
let browser: Browser;
let visit: Visit;
let page: Page;
beforeAll(async () => {
  browser = await launchChromium();
  visit = await startVisit(browser);
  ({ page } = visit);
  await page.goto(siteAddress(`?station=${STATION}&type=${TYPE}`));
  await untilAnswered(page);
});
afterAll(() => browser.close());

const lifeOf = (page: Page): Locator => page.getByRole('region', { name: 'Life', exact: true });
const wishesOf = (): Locator => page.getByRole('region', { name: 'Which to plant', exact: true });
const grid = (part: Locator): Locator => part.getByRole('grid', { name: /^Plantings of every winter/ });
const choiceOf = (page: Page): string | null => new URL(page.url()).searchParams.get('life');
/** The name of what has the focus, where that is a cell of the grid. */
const cellInFocus = (page: Page): Promise<string | null> =>
  page.evaluate(() => {
    const focused = document.activeElement;
    return focused?.getAttribute('role') === 'gridcell' ? focused.getAttribute('aria-label') : null;
  });

/** Goes to the part by its link and has the nights opened, all by keyboard. */
async function openByKeyboard(page: Page): Promise<Locator> {
  await page.getByRole('navigation').getByRole('link', { name: 'Life', exact: true }).focus();
  await page.keyboard.press('Enter');
  const part = lifeOf(page);
  await part.getByRole('button', { name: 'Follow the trees' }).waitFor({ timeout: PATIENCE_MS });
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await grid(part).waitFor({ timeout: PATIENCE_MS });
  return part;
}

/** Presses Tab until a cell of the grid has the focus. */
async function tabToGrid(page: Page): Promise<void> {
  for (let i = 0; i < TABS && (await cellInFocus(page)) === null; i++) await page.keyboard.press('Tab');
  expect(await cellInFocus(page)).not.toBeNull();
}

/** The table of plantings is the command's, and so is what the grid says of each winter of each. */
async function expectPlantings(part: Locator, { type }: { type: TypeLife }): Promise<void> {
  const { plantings } = type.night_by_night;
  await expect.poll(() => plantingsInTable(part), { timeout: PATIENCE_MS }).toEqual(plantings);
  const told = await plantingsInGrid(part);
  expect(told.map((row) => row.length)).toEqual(plantings.map(({ course }) => course.length));
  told.forEach((row, r) =>
    row.forEach((cell, step) => expect(cell).toMatch(new RegExp(winterTold(plantings[r], step)))),
  );
}

/** The shares by age, with their ranges, and those of the three ages told first. */
async function expectShares(part: Locator, { type }: { type: TypeLife }): Promise<void> {
  await part.getByText(/^In brackets the 90/).waitFor({ timeout: PATIENCE_MS });
  const table = part.getByRole('table', { name: /^Share of trees living by age/ });
  const [head, ...rows] = await table
    .locator('tr')
    .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent ?? '')));
  const column = (title: string): string[] => {
    expect(head.map(plain)).toContain(title);
    return rows.map((cells) => plain(cells[head.map(plain).indexOf(title)]));
  };
  for (const [reading, title] of Object.entries(READING_TITLES)) {
    const { living } = type[reading as Reading];
    expect(column('Winters old')).toEqual(living.map(({ age }) => String(age)));
    expect(column(`Lived, ${title}`)).toEqual(living.map(({ alive }) => String(alive)));
    column(`Share, ${title}`).forEach((told, i) => expectShare(told, living[i]));
  }
  expect(column('Followed so far')).toEqual(
    type.night_by_night.living.map(({ followed }) => String(followed)),
  );
  for (const [name, key] of [
    ['First crop', 'first_crop'],
    ['Ten years', 'ten_years'],
    ['Twenty years', 'twenty_years'],
  ] as const) {
    const items = part.getByRole('group', { name, exact: true }).getByRole('listitem');
    for (const [which, reading] of (Object.keys(READING_TITLES) as Reading[]).entries())
      expectShare(plain(await items.nth(which).locator('b').textContent()), type[reading][key]);
  }
}

describe('the life of a tree', () => {
  it(
    'is reached, gone through and read by keyboard, as the command tells it; another planting, another place',
    async () => {
      const at = ['--station', STATION];
      const [usual, older, elsewhere] = await Promise.all([
        assessedLife(TYPE, ...at),
        assessedLife(TYPE, ...at, '--start-age', '3', '--picking', 'early'),
        assessedLife(TYPE, '--postcode', POSTCODE),
      ]);
      const letters = new Set(usual.type.night_by_night.plantings.flatMap(({ course }) => [...course]));
      const fates = new Set(usual.type.night_by_night.plantings.map(({ fate }) => fate));
      // The record must tell of all this for the comparison to be one.
      expect([letters.size, fates.size]).toEqual([9, 3]);
      const part = await openByKeyboard(page);

      await tabToGrid(page);
      await expectKeysLead(page, part, usual);
      await expectPlantings(part, usual);
      await part.getByText('The same as a table').first().click();
      await expectShares(part, usual);

      await part
        .getByRole('group', { name: /^Age it counts as/ })
        .getByText('3', { exact: true })
        .click();
      await part
        .getByRole('group', { name: 'Ripe fruit' })
        .getByText(/days of ripening/)
        .click();
      expect(choiceOf(page)).toBe('3,early,gulf');
      expect(older.type.night_by_night.plantings).not.toEqual(usual.type.night_by_night.plantings);
      await expectPlantings(part, older);
      await page.goBack();
      await page.goBack();
      expect(choiceOf(page)).toBeNull();
      await expectPlantings(part, usual);

      await page.getByRole('combobox', { name: 'Postcode, town or station' }).fill(POSTCODE);
      await page.keyboard.press('Enter');
      await expectPlantings(part, elsewhere);
      await expectShares(part, elsewhere);
      expect(await part.getByText(/The level of these winters is good to about/).count()).toBe(1);
      expect(visit.complaints).toEqual([]);
    },
    TEST_MS,
  );
});

/** Goes to the parts that need the nights, as they stand on a wide screen, and turns the page to paper. */
async function printed(): Promise<void> {
  await turnTo(page, `?station=${STATION}`);
  const link = (name: string): Locator =>
    page.getByRole('navigation').getByRole('link', { name, exact: true });
  // A part comes when a reader comes near it.
  await link('Which to plant').click();
  await wishesOf().getByText('5 nights', { exact: true }).waitFor({ timeout: PATIENCE_MS });
  await link('Life').click();
  const life = lifeOf(page);
  const follow = life.getByRole('button', { name: 'Follow the trees' });
  const ranges = life.getByText(/^In brackets the 90% range/);
  // They are followed already where the test before came so far.
  await follow.or(ranges).first().waitFor({ timeout: PATIENCE_MS });
  if (await follow.isVisible()) await follow.click();
  await ranges.waitFor({ timeout: PATIENCE_MS });
  await life
    .locator('details.twin')
    .evaluateAll((twins) => twins.forEach((twin) => twin.removeAttribute('open')));
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: PAPER_PX, height: 960 });
}

describe('life and choice on paper', { timeout: TEST_MS }, () => {
  it('say what was wished and chosen, draw the grid whole, and show no controls', async () => {
    await printed();
    const life = lifeOf(page);
    expect(await life.getByText('Invented', { exact: true }).isVisible()).toBe(true);
    expect(await life.getByText(/^In brackets the 90% range/).isVisible()).toBe(true);

    const { x, width } = (await grid(life).boundingBox())!;
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x + width).toBeLessThanOrEqual(PAPER_PX);
    const cut = await grid(life).evaluate((svg) => getComputedStyle(svg.closest('.scroll')!).overflowX);
    expect(cut).toBe('visible');

    // Of the ages it can be planted at, the one that counts.
    expect(await life.getByText('1 year', { exact: true }).isVisible()).toBe(true);
    expect(await life.getByText('5', { exact: true }).first().isVisible()).toBe(false);
    expect(await life.getByText('The same as a table').first().isVisible()).toBe(false);

    const wishes = wishesOf();
    expect(await wishes.getByText('5 nights', { exact: true }).isVisible()).toBe(true);
    const sliders = await wishes.locator('input[type="range"]').all();
    expect(sliders.length).toBe(4);
    for (const slider of sliders) expect(await slider.isVisible()).toBe(false);
  });
});

/** One tab stop; arrows, Home and End lead through it, and the readout tells the winter in focus. */
async function expectKeysLead(
  page: Page,
  part: Locator,
  { type }: LifeAnswer & { type: TypeLife },
): Promise<void> {
  const { plantings } = type.night_by_night;
  const last = plantings.length - 1;
  const lastStep = (row: number): number => plantings[row].course.length - 1;
  /** The winter of a planting that stands in the column of another's, or the nearest it has. */
  const beside = (row: number, winter: number): number =>
    Math.min(lastStep(row), Math.max(0, winter - plantings[row].winter));
  const path: readonly (readonly [key: string, row: number, step: number])[] = [
    ['Control+Home', 0, 0],
    ['ArrowRight', 0, 1],
    ['ArrowDown', 1, beside(1, plantings[0].winter + 1)],
    ['End', 1, lastStep(1)],
    ['ArrowLeft', 1, lastStep(1) - 1],
    ['Home', 1, 0],
    ['ArrowUp', 0, beside(0, plantings[1].winter)],
    ['Control+End', last, lastStep(last)],
  ];
  const readout = part.getByText(/^Planted autumn \d{4}, .* winter /);
  for (const [key, row, step] of path) {
    await page.keyboard.press(key);
    const told = new RegExp(winterTold(plantings[row], step));
    await expect.poll(() => cellInFocus(page), { message: key }).toMatch(told);
    expect(plain(await readout.textContent()), key).toMatch(told);
    expect(await grid(part).locator('[tabindex="0"]').count()).toBe(1);
  }
  await page.keyboard.press('Tab');
  expect(await cellInFocus(page)).toBeNull();
  // What follows the grid is its table.
  await page.keyboard.press('Enter');
  await part.getByRole('table', { name: /^What became of each planting/ }).waitFor();
  await page.keyboard.press('Shift+Tab');
  expect(await cellInFocus(page)).toMatch(new RegExp(winterTold(plantings[last], lastStep(last))));
}
