import { readFileSync } from 'node:fs';
import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';

import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { findMeasure } from '../../analysis/cover/measures.ts';
import { READY_YARDS } from '../../analysis/spot/ready-yards.ts';
import { readYardFile, yardFileText } from '../../analysis/spot/yard-file.ts';
import type { Building, PlanPoint, Yard } from '../../analysis/spot/yard.ts';
import { expectFitsPhone, expectNothingFound } from './axe.ts';
import { launchChromium } from './chromium.ts';
import { commandAnswer } from './command-answer.ts';
import {
  expectCalm,
  rankingRow,
  siteAddress,
  startVisit,
  turnTo,
  untilAnswered,
  type Visit,
} from './visit.ts';
import {
  drag,
  HOUSE_YARD,
  loadYard,
  onScreen,
  openSpot,
  PLACE,
  planOf,
  showSpot,
  wallsIn,
  yardIn,
} from './yard-steps.ts';

/** One visit; each test brings its own yard. */
let browser: Browser;
let visit: Visit;
let page: Page;
let part: Locator;
beforeAll(async () => {
  browser = await launchChromium();
  visit = await startVisit(browser, { bypassCSP: true, acceptDownloads: true });
  ({ page } = visit);
  part = await openSpot(page);
});
afterAll(() => browser.close());

describe('drawing a yard', () => {
  it('with the mouse, by keyboard, and back with undo; the address keeps it over a reload', async () => {
    // Between the steps of the field.
    await part.getByLabel('South to north of the new plot').fill('18.3');
    await part.getByRole('button', { name: 'Draw on this plot' }).click();
    const plan = planOf(part);
    await plan.scrollIntoViewIfNeeded();
    await expect.poll(() => yardIn(page)?.widthM).toBe(24);
    expect(yardIn(page)?.depthM).toBe(18.3);
    const plot = yardIn(page)!;

    await part.getByRole('radio', { name: 'Masonry wall', exact: true }).check({ force: true });
    await drag(page, await onScreen(plan, plot, [4.1, 5.2]), await onScreen(plan, plot, [12, 5.3]));
    await expect.poll(() => wallsIn(page).length).toBe(1);
    expect(wallsIn(page)[0]).toMatchObject({ line: [[4, 5], [12, 5]], masonry: true }); // prettier-ignore

    await part.getByRole('combobox', { name: /^Add to the middle/ }).selectOption({ label: 'Fence' });
    await part.getByRole('button', { name: 'Add', exact: true }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => wallsIn(page).length).toBe(2);
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('SUMMARY');
    const before = wallsIn(page)[1].line;
    for (const key of ['ArrowUp', 'ArrowUp', 'ArrowRight']) await page.keyboard.press(key);
    await expect
      .poll(() => wallsIn(page)[1].line)
      .toEqual(before.map(([east, north]) => [east + 0.5, north + 1]));
    const height = part.getByRole('spinbutton', { name: 'Height of Fence 2' });
    await height.fill('3');
    await height.press('Tab');
    await expect.poll(() => wallsIn(page)[1].heightM).toBe(3);

    // The height, then the arrow keys all together, then the fence.
    await plan.focus();
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await expect.poll(() => wallsIn(page)[1]?.line).toEqual(before);
    await page.keyboard.press('Control+z');
    await expect.poll(() => wallsIn(page).length).toBe(1);
    await page.keyboard.press('Control+Shift+Z');
    await expect.poll(() => wallsIn(page).length).toBe(2);
    await part.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => wallsIn(page).length).toBe(1);

    await page.reload();
    await untilAnswered(page);
    await showSpot(page);
    await part.getByRole('heading', { name: 'Things on the plan (1)' }).waitFor();
    expect(wallsIn(page)[0].line).toEqual([[4, 5], [12, 5]]); // prettier-ignore
    expect(visit.complaints).toEqual([]);
  });

  it('an outline that crosses itself gets its sentence, keeps the last offsets, and undo repairs it', async () => {
    await turnTo(page, PLACE);
    await loadYard(part, yardFileText(HOUSE_YARD));
    const plan = planOf(part);
    await plan.scrollIntoViewIfNeeded();
    await part.getByText('Building 1').or(part.getByText('Heated building 1')).first().waitFor();
    await page.mouse.click(...(await onScreen(plan, HOUSE_YARD, [15, 15])));
    await part.getByRole('spinbutton', { name: /^Height of Heated building 1/ }).waitFor();
    const inAddress = (): string | null => new URL(page.url()).searchParams.get('yard');
    // It gets there when the drawing rests.
    await expect.poll(() => yardIn(page)?.name).toBe(HOUSE_YARD.name);
    const good = inAddress();
    await drag(page, await onScreen(plan, HOUSE_YARD, [10, 12]), await onScreen(plan, HOUSE_YARD, [24, 15]));
    const alert = part.getByRole('alert').filter({ hasText: /crosses itself/ });
    await alert.first().waitFor();
    await page.waitForTimeout(700);
    expect(inAddress()).toBe(good);
    expect(await part.getByRole('button', { name: 'Save as a file' }).isDisabled()).toBe(true);
    await plan.focus();
    await page.keyboard.press('Control+z');
    await expect.poll(() => alert.count()).toBe(0);
    expect(await part.getByRole('button', { name: 'Save as a file' }).isDisabled()).toBe(false);
  });
});

describe('a yard as a file', () => {
  it('saved and loaded again is the same yard; a bad file says why and leaves the yard alone', async () => {
    const ready = READY_YARDS[0];
    await turnTo(page, PLACE);
    await part.getByRole('button', { name: ready.name, exact: true }).click();
    await planOf(part).waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      part.getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    const text = readFileSync(await download.path(), 'utf8');
    expect(readYardFile(text, 'saved')).toEqual(ready.yard);

    await part.getByRole('button', { name: 'Put the yard away' }).click();
    await part.getByRole('button', { name: 'Bring the yard back' }).waitFor();
    await loadYard(part, text);
    await part.getByRole('heading', { name: `Things on the plan (${ready.yard.things.length})` }).waitFor();

    await loadYard(part, '{"schema": 1, "name": "Broken"', 'broken.json');
    await part.getByRole('alert').filter({ hasText: 'broken.json' }).waitFor();
    expect(
      await part.getByRole('heading', { name: `Things on the plan (${ready.yard.things.length})` }).count(),
    ).toBe(1);
    await loadYard(part, text.replace(/"widthM": [\d.]+/, '"widthM": 10000'), 'county.json');
    await part
      .getByRole('alert')
      .filter({ hasText: /county\.json.*10000 m.*200 m/ })
      .waitFor();
  });
});

describe('a picture underneath', () => {
  it('is scaled by two points, and leaves neither the page nor a trace in the address', async () => {
    await turnTo(page, PLACE);
    await loadYard(part, yardFileText(HOUSE_YARD));
    const plan = planOf(part);
    await part.getByText('A photo or sketch of your own underneath').click();
    await expect.poll(() => yardIn(page)?.name).toBe(HOUSE_YARD.name);
    const [address, asked] = [page.url(), visit.requested.length];
    const file = { name: 'sketch.png', mimeType: 'image/png', buffer: await page.screenshot() };
    const choose = part.locator('input[type=file][accept*=image]');
    await choose.setInputFiles(file);
    const width = part.getByRole('spinbutton', { name: 'Width of the picture' });
    await expect.poll(() => width.inputValue()).toBe('30');
    await part.getByRole('button', { name: 'Scale it by two points' }).click();
    await plan.scrollIntoViewIfNeeded();
    for (const at of [[5, 5], [15, 5]] as const) await page.mouse.click(...(await onScreen(plan, HOUSE_YARD, at))); // prettier-ignore
    await part.getByRole('spinbutton', { name: 'They lie apart' }).fill('20');
    await part.getByRole('button', { name: 'Set the scale' }).click();
    await expect.poll(async () => Math.round(Number(await width.inputValue()))).toBe(60);
    const straight = await plan.screenshot();
    const turn = part.getByRole('spinbutton', { name: 'Turned to the right of the picture' });
    await turn.fill('210');
    await turn.press('Tab');
    await part.getByText('It is turned about its middle').waitFor();
    expect(await turn.inputValue()).toBe('-150');
    await expect.poll(async () => (await plan.screenshot()).equals(straight)).toBe(false);
    await choose.setInputFiles({ ...file, buffer: Buffer.from('no picture') });
    await part.getByRole('alert').filter({ hasText: 'sketch.png could not be opened' }).waitFor();
    expect(page.url()).toBe(address);
    const since = visit.requested.slice(asked).filter((url) => !url.startsWith('blob:'));
    expect(since.filter((url) => /sketch|upload/.test(url) || !url.startsWith(siteAddress()))).toEqual([]);
  });
});

/** Hits of a row of the ranking, by the words of its button. */
async function hitsTold(row: Locator): Promise<number> {
  const words = (await row.getAttribute('aria-label')) ?? (await row.textContent()) ?? '';
  return Number(/counted in (\d+) of/.exec(words)?.[1]);
}

/** Hits of Meyer lemon's wood as the command counts them, at a spot of a saved yard. */
async function hitsByCommand(yard: Yard, at: PlanPoint, cover: string[]): Promise<number> {
  const file = `${await mkdtemp(`${tmpdir()}/yard-`)}/house.yard.json`;
  await writeFile(file, yardFileText({ ...yard, spots: [{ id: 'spot-1', name: 'Warm corner', at }] }));
  const place = ['--postcode', 'SC 123', '--types', 'meyer_lemon'];
  const covers = cover.length > 0 ? ['--cover', cover.join(',')] : [];
  const { types } = await commandAnswer(...place, '--yard', file, '--spot', 'Warm corner', ...covers);
  return types[0].levels.find(({ level }) => level === 'wood')!.counted.hits;
}

describe('accessibility', () => {
  it('of the section with a yard drawn has no fault, light or dark, and fits a phone', async () => {
    await turnTo(page, PLACE);
    await part.getByRole('button', { name: READY_YARDS[1].name, exact: true }).click();
    await part.getByRole('button', { name: /best spot 1/ }).waitFor({ timeout: 30_000 });
    await planOf(part).click({ position: { x: 200, y: 200 } });
    await part.locator('details').evaluateAll((all) => all.forEach((fold) => fold.setAttribute('open', '')));
    await expectNothingFound(page, 'a yard', '#spot');
    await expectFitsPhone(page);
    await page.setViewportSize({ width: 1280, height: 900 });
  });
});

describe('the warm corner', () => {
  it('lies by the wall that faces the midday sun; it and a cloth change the ranking as they change the command', async () => {
    await turnTo(page, PLACE);
    await loadYard(part, yardFileText(HOUSE_YARD));
    const best = part.getByRole('button', { name: /best spot 1/ });
    await best.waitFor({ timeout: 30_000 });
    const row = rankingRow(page, 'Meyer lemon');
    const inTheOpen = await hitsTold(row);
    await best.click();
    await expect.poll(() => new URL(page.url()).searchParams.get('spot')).toMatch(/^yard:/);
    const [east, north] = new URL(page.url()).searchParams.get('spot')!.slice(5).split(',').map(Number);
    const house = HOUSE_YARD.things[0] as Building;
    const [west, south] = house.outline[0];
    // North of the equator the sun-warmed wall is the south one: the spot lies before it, within a few steps.
    expect(north).toBeLessThan(south);
    expect(south - north).toBeLessThan(3);
    expect(east).toBeGreaterThan(west - 2);
    expect(east).toBeLessThan(house.outline[1][0] + 2);
    await expect
      .poll(() => part.getByRole('status').first().textContent(), { timeout: 30_000 })
      .toMatch(/There a .* In the open: /s);
    await expectCalm(page);
    const atTheWall = await hitsTold(row);
    expect(atTheWall).toBeLessThan(inTheOpen);
    expect(atTheWall).toBe(await hitsByCommand(HOUSE_YARD, [east, north], []));

    const cloth = findMeasure('cloth-medium')!;
    await page.evaluate(() => document.querySelector('#cover')!.scrollIntoView());
    const box = page
      .getByRole('region', { name: 'Cover', exact: true })
      .getByRole('checkbox', { name: cloth.name, exact: true });
    await box.check({ timeout: 30_000 });
    await expect.poll(() => new URL(page.url()).searchParams.get('cover')).toBe('cloth-medium');
    await expectCalm(page);
    const covered = await hitsByCommand(HOUSE_YARD, [east, north], ['cloth-medium']);
    await expect.poll(() => hitsTold(row), { timeout: 30_000 }).toBe(covered);
    expect(covered).toBeLessThan(atTheWall);
  }, 150_000);
});
