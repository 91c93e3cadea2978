import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

import { mapOfStations, rankingRows, untilAnswered } from '../browser/visit.ts';

/** How long one step of an errand may take, ms: the first of some bring an engine of 35 MB. */
export const PATIENCE_MS = 60_000;

/** Something a person does on the page; `turn` counts how often it was done, so that no two are the same. */
export interface Errand {
  readonly name: string;
  readonly run: (page: Page, turn: number) => Promise<void>;
}

const CODES = ['SC 101', 'SC 105', 'SC 112', 'SC 120', 'SC 129', 'SC 133', 'SC 140'];
const of = <T>(list: readonly T[], turn: number): T => list[turn % list.length];

/** Goes to a part by its link until something of it is there: parts that open on the way push it on. */
async function go(page: Page, name: string, ready: (part: Locator) => Locator): Promise<Locator> {
  const part = page.getByRole('region', { name, exact: true });
  await expect
    .poll(
      async () => {
        await page.getByRole('navigation').getByRole('link', { name, exact: true }).click();
        return ready(part).count();
      },
      { timeout: PATIENCE_MS, interval: 1500 },
    )
    .toBeGreaterThan(0);
  return part;
}

async function choosePlace(page: Page, turn: number): Promise<void> {
  const box = page.getByRole('combobox', { name: 'Postcode, town or station' });
  await box.fill(of(CODES, turn));
  await box.press('Enter');
  await untilAnswered(page);
}

async function readRanking(page: Page, turn: number): Promise<void> {
  const rows = rankingRows(page);
  await rows.nth(turn % 12).click();
  await rows.nth((turn + 5) % 12).click();
  const age = page.getByRole('slider', { name: 'Years since planting' });
  await age.focus();
  for (let i = 0; i < 4; i++) await page.keyboard.press(turn % 2 === 0 ? 'ArrowLeft' : 'ArrowRight');
  await untilAnswered(page);
}

async function moveMap(page: Page, turn: number): Promise<void> {
  const map = mapOfStations(page);
  await map.scrollIntoViewIfNeeded();
  const box = (await map.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.wheel(0, turn % 2 === 0 ? -300 : 300);
  await page.mouse.down();
  await page.mouse.move(x + 60 - (turn % 3) * 60, y + 40, { steps: 6 });
  await page.mouse.up();
  await map.focus();
  for (const key of ['ArrowRight', 'ArrowDown', '+', '-']) await page.keyboard.press(key);
}

async function cover(page: Page, turn: number): Promise<void> {
  const part = await go(page, 'Cover', (inside) => inside.getByRole('region', { name: 'Measures' }));
  const boxes = part.getByRole('region', { name: 'Measures' }).getByRole('checkbox');
  const box = boxes.nth(turn % 3);
  await box.setChecked(true);
  await untilAnswered(page);
  await box.setChecked(false);
  await untilAnswered(page);
}

async function life(page: Page): Promise<void> {
  const part = await go(page, 'Life', (inside) =>
    inside.getByRole('button', { name: 'Follow the trees' }).or(inside.getByRole('grid')),
  );
  const follow = part.getByRole('button', { name: 'Follow the trees' });
  if ((await follow.count()) > 0) await follow.click();
  await part.getByRole('grid', { name: /^Plantings of every winter/ }).waitFor({ timeout: PATIENCE_MS });
}

async function year(page: Page): Promise<void> {
  const told = (inside: Locator): Locator => inside.getByRole('heading', { name: 'What to do when' });
  const part = await go(page, 'Year', (inside) =>
    inside.getByRole('button', { name: 'Show the year' }).or(told(inside)),
  );
  const show = part.getByRole('button', { name: 'Show the year' });
  if ((await show.count()) > 0) await show.click();
  await told(part).waitFor({ timeout: PATIENCE_MS });
}

async function counter(page: Page, turn: number): Promise<void> {
  const part = await go(page, 'Desk', (inside) => inside.getByRole('search').getByRole('textbox'));
  const box = part.getByRole('search').getByRole('textbox');
  for (const at of [turn, turn + 2]) {
    await box.fill(of(CODES, at));
    await box.press('Enter');
    await part
      .getByRole('heading', { name: new RegExp(`^${of(CODES, at)}`) })
      .waitFor({ timeout: PATIENCE_MS });
    await expect
      .poll(() => part.locator('[aria-busy="true"], ol.stale').count(), { timeout: PATIENCE_MS })
      .toBe(0);
  }
  // How many kinds are shown depends on the place and the tree of the turn.
  const kinds = part.getByRole('rowheader').getByRole('button');
  await kinds.nth(turn % (await kinds.count())).click();
}

async function batch(page: Page, turn: number): Promise<void> {
  const part = await go(page, 'Desk', (inside) =>
    inside.getByRole('heading', { name: 'Many places at once' }),
  );
  const rows = Array.from(
    { length: 12 },
    (_, at) => `${turn}-${at},${of(CODES, turn + at)},${at % 4 === 0 ? 'x' : ''}`,
  );
  await part.getByLabel('Choose a file').setInputFiles({
    name: `customers-${turn}.csv`,
    mimeType: 'text/csv',
    buffer: Buffer.from(`customer,postcode,elevation\n${rows.join('\n')}`),
  });
  await part.getByText(`customers-${turn}.csv: `).waitFor();
  await part.getByRole('button', { name: /^Answer [\d,]+ rows/ }).click();
  await part.getByRole('region', { name: /^Rows / }).waitFor({ timeout: PATIENCE_MS });
}

async function sheet(page: Page): Promise<void> {
  const part = await go(page, 'Sheet', (inside) => inside.getByRole('article'));
  await part.getByRole('img', { name: 'Code with the link' }).waitFor({ timeout: PATIENCE_MS });
}

async function records(page: Page, turn: number): Promise<void> {
  const box = (inside: Locator): Locator => inside.getByRole('textbox', { name: 'Ask in SQL' });
  const part = await go(page, 'Records', (inside) =>
    inside.getByRole('button', { name: 'Open the database' }).or(box(inside)),
  );
  const open = part.getByRole('button', { name: 'Open the database' });
  if ((await open.count()) > 0) await open.click();
  await box(part).waitFor({ timeout: PATIENCE_MS });
  await box(part).fill(
    `select station, date, tmin_c from nights where tmin_c < ${-(turn % 5)} order by tmin_c, date limit ${100 + turn}`,
  );
  await part.getByRole('button', { name: 'Run', exact: true }).click();
  await part.getByRole('table', { name: /^\d+ rows?/ }).waitFor({ timeout: PATIENCE_MS });
}

async function changeType(page: Page, turn: number): Promise<void> {
  await rankingRows(page)
    .nth((turn * 7) % 20)
    .click();
  await untilAnswered(page);
  expect(new URL(page.url()).searchParams.has('type')).toBe(true);
}

/** A morning at the counter, over and over. */
export const ERRANDS: readonly Errand[] = [
  { name: 'choose a place', run: choosePlace },
  { name: 'read the ranking', run: readRanking },
  { name: 'move the map', run: moveMap },
  { name: 'choose a type', run: changeType },
  { name: 'look at covers', run: cover },
  { name: 'follow a life', run: life },
  { name: 'show the year', run: year },
  { name: 'two customers at the counter', run: counter },
  { name: 'a small batch', run: batch },
  { name: 'the sheet', run: sheet },
  { name: 'ask the records', run: records },
];
