import { readFile } from 'node:fs/promises';

import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { formatIsoDay } from '../../analysis/units/calendar.ts';
import { expectFitsPhone, expectNothingFound } from './axe.ts';
import { launchChromium } from './chromium.ts';
import { assessed, expectTold, nightsInNode, openCover } from './cover-part.ts';
import { PATIENCE_MS, TEST_MS } from './patience.ts';
import {
  expectCalm,
  mapOfStations,
  plain,
  rankingRow,
  siteAddress,
  startVisit,
  turnTo,
  untilAnswered,
  type Visit,
} from './visit.ts';

const COVER = ['cloth-heavy', 'tied'];

/** One visit; each test turns to an address of its own. */
let browser: Browser;
let visit: Visit;
let page: Page;
beforeAll(async () => {
  browser = await launchChromium();
  visit = await startVisit(browser, { bypassCSP: true, acceptDownloads: true });
  ({ page } = visit);
  await page.goto(siteAddress());
  await untilAnswered(page);
});
afterAll(() => browser.close());

const choices = (): Locator => page.getByRole('region', { name: 'Spot and cover' });
const coverNow = (): string | null => new URL(page.url()).searchParams.get('cover');
const headline = async (): Promise<string> =>
  plain(await page.getByRole('heading', { level: 1 }).textContent());

describe('a cover', { timeout: TEST_MS }, () => {
  it('chosen beside the tree changes headline, ranking and map as the command has it', async () => {
    const [bare, covered] = await Promise.all([
      assessed('wood'),
      assessed('wood', '--cover', COVER.join(',')),
    ]);
    expectTold(await headline(), bare.headline.period!);
    const shows = page.getByRole('group', { name: 'What the map shows' });
    await mapOfStations(page).waitFor({ timeout: PATIENCE_MS });
    expect(await shows.getByRole('radio', { name: 'Cover' }).count()).toBe(0);

    await choices().getByRole('button', { name: 'Choose a spot or a cover' }).click();
    await choices()
      .getByRole('checkbox', { name: /^Heavy frost cloth/ })
      .check();
    expect(await choices().getByText('+7.0 / 0', { exact: true }).count()).toBe(1);
    await choices()
      .getByRole('checkbox', { name: /^Tied to the ground/ })
      .check();
    expect(coverNow()).toBe(COVER.join(','));
    await expect.poll(() => choices().getByText('+7.0 / +2.5').count()).toBe(1);
    await expectCalm(page);
    expectTold(await headline(), covered.headline.period!);
    expectTold(
      plain(await rankingRow(page, 'Satsuma mandarin, Owari type').first().textContent()),
      covered.headline.period!,
    );
    expect(covered.headline.period!).toBeGreaterThan(bare.headline.period!);

    await shows.getByText('Cover', { exact: true }).click();
    await page
      .getByText(/with the cover against without/)
      .first()
      .waitFor({ timeout: PATIENCE_MS });
    await expect.poll(() => page.getByText('Working out the map').count(), { timeout: PATIENCE_MS }).toBe(0);
    const areas = page.getByRole('list', { name: 'Areas, estimated between stations' });
    expect(await areas.getByRole('listitem').count()).toBeGreaterThan(1);

    await page.goBack();
    await page.goBack();
    await page.goBack();
    await expect.poll(coverNow).toBeNull();
    await expectCalm(page);
    expectTold(await headline(), bare.headline.period!);
    expect(visit.complaints).toEqual([]);
  });

  it('is refused with its reason: lights until confirmed, lights under a sheet, plastic on leaves', async () => {
    const [lit, bare] = await Promise.all([
      assessed('wood', '--cover', 'lights,lights-confirmed'),
      assessed('wood'),
    ]);
    await turnTo(page, '?cover=lights');
    const column = choices();
    await column.getByText(/^Lights count only once confirmed/).waitFor();
    expectTold(await headline(), bare.headline.period!);
    await column.getByRole('checkbox', { name: /lights are safe/ }).check();
    await expectCalm(page);
    expect(await column.getByText(/^Lights count only once confirmed/).count()).toBe(0);
    expectTold(await headline(), lit.headline.period!);

    // A fold that the reader opened stays open while texts beside it change.
    const fold = column.locator('details').filter({ hasText: 'Trunk, water, glass house' });
    expect(await fold.getAttribute('open')).toBeNull();
    await fold.locator('summary').click();
    await column.getByRole('combobox', { name: 'The tree stands' }).selectOption({ index: 1 });
    await expectCalm(page);
    expect(await fold.getAttribute('open')).not.toBeNull();
    await page.goBack();
    await expectCalm(page);

    await column.getByRole('checkbox', { name: /^Sheet or blanket/ }).check();
    await column.getByText(/^No lights or other heat under a sheet/).waitFor();
    expect(await column.getByRole('checkbox', { name: /plastic laid/i }).count()).toBe(0);

    const part = await openCover(page);
    const wrong = part.getByRole('checkbox', { name: 'Plastic laid on the leaves' });
    await wrong.check();
    const reason = part
      .getByRole('row')
      .filter({ has: page.getByRole('checkbox', { name: 'Plastic laid on the leaves' }) })
      .getByText(/^No plastic on the leaves/);
    await reason.waitFor();
    expect(coverNow()).toBe('sheet,lights,lights-confirmed,plastic-on-leaves');
    expect(await part.getByRole('alert').filter({ hasText: 'it burns' }).count()).toBe(1);
    await column.getByRole('button', { name: 'Take out what should not be done' }).click();
    expect(coverNow()).toBe('sheet,lights,lights-confirmed');
  });

  it('can be looked for: the least that makes a loss rarer than wished', async () => {
    const wish = Math.ceil((await assessed('leaf')).headline.period! * 1.5);
    await turnTo(page, `?level=leaf&at-least=${wish}`);
    const part = await openCover(page);
    const use = part.getByRole('button', { name: 'Use it' });
    await use.waitFor({ timeout: 20_000 });
    const told = plain(await part.getByText(/Work at one tree:/).textContent());
    await use.click();
    const ids = coverNow()!;
    await expectCalm(page);
    const answer = await assessed('leaf', '--cover', ids);
    expect(told).not.toMatch(/^No cover/);
    expect(answer.headline.period!).toBeGreaterThan(wish);
    expectTold(told, answer.headline.period!);
    await part.getByLabel(/more rarely than once in/).fill('400');
    await page.keyboard.press('Enter');
    const limit = part.getByText('can be told from it');
    await limit.waitFor();
    expect(plain(await limit.textContent())).toContain(
      `nothing rarer than once in ${2 * answer.counted.winters} can be told`,
    );
  });

  it('is told with and without, over what its gain may be, and measure by measure', async () => {
    const [bare, covered, light] = await Promise.all([
      assessed('leaf'),
      assessed('leaf', '--cover', COVER.join(',')),
      assessed('leaf', '--cover', 'cloth-light,tied'),
    ]);
    await turnTo(page, `?level=leaf&cover=${COVER.join(',')}`);
    const part = await openCover(page);
    await part.getByText('without a cover,').waitFor({ timeout: 20_000 });
    const ofBoth = async (): Promise<string> => plain(await part.getByText('without a cover,').textContent());
    await expect
      .poll(ofBoth, { timeout: 20_000 })
      .toMatch(/: (1 in [\d.,]+) at its low end, (1 in [\d.,]+) at its high end/);
    const sentence = await ofBoth();
    const [without, under] = sentence.split('without a cover,');
    expectTold(without, bare.headline.period!);
    expectTold(under, covered.headline.period!);
    const ends = /: (1 in [\d.,]+) at its low end, (1 in [\d.,]+) at its high end/.exec(sentence)!;
    expect(Number(ends[1].slice(5))).toBeLessThanOrEqual(covered.headline.period! * 1.06);
    expect(Number(ends[2].slice(5))).toBeGreaterThanOrEqual(covered.headline.period! * 0.94);

    const row = part
      .getByRole('row')
      .filter({ has: page.getByRole('checkbox', { name: 'Light frost cloth' }) });
    expectTold(plain(await row.getByRole('cell').last().textContent()), light.headline.period!);
    expect(await row.getByRole('cell').allTextContents()).toHaveLength(3);

    await row.getByRole('checkbox', { name: 'Light frost cloth' }).focus();
    await page.keyboard.press('Space');
    await expect.poll(coverNow).toBe('cloth-light,cloth-heavy,tied');
    await part.getByText('Of several covers over one another only the largest counts.').first().waitFor();
  });
});

describe('tonight', { timeout: TEST_MS }, () => {
  it('orders the trees by need, gives the day, and keeps the trees on this device until they are forgotten', async () => {
    await turnTo(page, '?cover=cloth-heavy');
    let part = await openCover(page);
    for (const name of ['Add a tree', 'Add another tree']) await part.getByRole('button', { name }).click();
    await part.getByRole('combobox', { name: 'Type' }).nth(1).selectOption('mexican_lime');
    await part.getByRole('combobox', { name: 'Cover at hand' }).nth(0).selectOption('');
    await part.getByLabel(/^Lowest temperature/).fill('22');
    await part.getByText('The hours below 32 °F are missing.').waitFor();
    await part.getByLabel(/^Hours below/).fill('8');
    await part.getByLabel(/^Wind in/).fill('3');
    const trees = part.getByRole('list', { name: 'Trees in order of need' }).getByRole('heading');
    await expect.poll(() => trees.count()).toBe(2);
    const names = (await trees.allTextContents()).map(plain);
    expect(names[0]).toMatch(/lime/i);
    expect(names[1]).toMatch(/^Satsuma/);
    const day = part.getByRole('term');
    expect((await day.allTextContents()).map(plain)).toContain('Late, just before sunset');
    expect(await part.getByText('A forecast or warning in force goes before this.').count()).toBe(1);

    await part.getByLabel(/^Lowest temperature/).fill('45');
    await part.getByLabel(/^Hours below/).fill('0');
    await expect.poll(() => part.getByText('Needs nothing tonight.').count()).toBe(2);

    await page.reload();
    await untilAnswered(page);
    part = await openCover(page);
    expect(await part.getByRole('combobox', { name: 'Type' }).nth(1).inputValue()).toBe('mexican_lime');
    const keptHere = (): Promise<string> => page.evaluate(() => JSON.stringify({ ...localStorage }));
    expect(await keptHere()).toContain('mexican_lime');
    await part.getByRole('button', { name: 'Forget the trees' }).click();
    expect(await part.getByRole('combobox', { name: 'Type' }).count()).toBe(0);
    // A page opened anew would find nothing of them.
    expect(await keptHere()).not.toContain('mexican_lime');
    expect(page.url()).not.toContain('lime');
  });
});

describe('its nights', { timeout: TEST_MS }, () => {
  it('says on how many nights it would go on, as counted directly from the records', async () => {
    const wanted = await nightsInNode('leaf', COVER);
    expect(wanted.toCover.total).toBeGreaterThan(0);
    await turnTo(page, `?level=leaf&cover=${COVER.join(',')}`);
    const part = await openCover(page);
    await part.getByRole('button', { name: 'Count the nights' }).click();
    const told = part.getByText(/^Over \d+ estimated winters it would have gone on/);
    await told.waitFor({ timeout: PATIENCE_MS });
    const { toCover, saved, lost, completeWinters } = wanted;
    expect(plain(await told.textContent())).toMatch(
      new RegExp(
        `^Over ${completeWinters} estimated winters it would have gone on ${toCover.total} nights?: ${saved.total} of them it would have saved, ${lost.total} would`,
      ),
    );
    const table = part.getByRole('region', { name: 'Nights a winter' });
    const cells = await table.getByRole('row').nth(1).getByRole('cell').allTextContents();
    const mean = toCover.perWinter!;
    expect(cells[0]).toBe(mean >= 0.95 ? mean.toFixed(1) : mean.toFixed(2));
    expect(cells[1]).toContain(`${toCover.worst!.nights} in ${toCover.worst!.winter - 1}`);

    const download = page.waitForEvent('download');
    await part.getByRole('button', { name: 'Save the nights as CSV' }).click();
    const csv = await readFile(await (await download).path(), 'utf8');
    const rows = csv.split('\r\n').filter((line) => /^\d{4}-/.test(line));
    const outcomes = rows.map((line) => line.split(',')).map((row) => `${row[0]} ${row[2]} ${row[6]}`);
    expect(outcomes).toEqual(
      wanted.nights.map(({ day, kind, outcome }) => `${formatIsoDay(day)} ${kind} ${outcome}`),
    );
    expect(csv).toContain('invented');
  });
});

describe('accessibility', { timeout: TEST_MS }, () => {
  it('of the part and of the choices has no fault, light or dark, and a phone needs no scrolling sideways', async () => {
    await turnTo(page, '?level=leaf&cover=cloth-heavy,lights,led-lights');
    const part = await openCover(page);
    await part.getByRole('button', { name: 'Add a tree' }).click();
    await part.getByLabel(/^Lowest temperature/).fill('20');
    await part.getByLabel(/^Hours below/).fill('9');
    await part.getByLabel(/^Wind in/).fill('3');
    const count = part.getByRole('button', { name: 'Count the nights' });
    // They may be open since the test before.
    if (await count.isVisible()) await count.click();
    await part.getByText(/it would have gone on|never have had to/).waitFor({ timeout: PATIENCE_MS });
    await page.evaluate(() =>
      document
        .querySelectorAll('#cover details')
        .forEach((details) => ((details as HTMLDetailsElement).open = true)),
    );
    await expectFitsPhone(page);
    await expectNothingFound(page, 'cover, and spot and cover beside the tree', '#cover', '.choices');
  });
});
