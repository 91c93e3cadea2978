import { readFile } from 'node:fs/promises';

import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { formatIsoDay } from '../../analysis/units/calendar.ts';
import { launchChromium } from './chromium.ts';
import { assessed, expectTold, nightsInNode, openCover, PATIENCE_MS, plain, TEST_MS } from './cover-part.ts';
import { expectCalm, mapOfStations, rankingRow, siteAddress, startVisit, untilAnswered } from './visit.ts';

const COVER = ['cloth-heavy', 'tied'];

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const choices = (page: Page): Locator => page.getByRole('region', { name: 'Spot and cover' });
const coverOf = (page: Page): string | null => new URL(page.url()).searchParams.get('cover');
const headline = async (page: Page): Promise<string> =>
  plain(await page.getByRole('heading', { level: 1 }).textContent());

describe('a cover', () => {
  it(
    'chosen beside the tree changes headline, ranking and map as the command has it',
    async () => {
      const [bare, covered] = await Promise.all([
        assessed('wood'),
        assessed('wood', '--cover', COVER.join(',')),
      ]);
      const visit = await startVisit(browser);
      const { page } = visit;
      await page.goto(siteAddress());
      await untilAnswered(page);
      expectTold(await headline(page), bare.headline.period!);
      const shows = page.getByRole('group', { name: 'What the map shows' });
      await mapOfStations(page).waitFor({ timeout: PATIENCE_MS });
      expect(await shows.getByRole('radio', { name: 'Cover' }).count()).toBe(0);

      await choices(page).getByRole('button', { name: 'Choose a spot or a cover' }).click();
      await choices(page)
        .getByRole('checkbox', { name: /^Heavy frost cloth/ })
        .check();
      expect(await choices(page).getByText('+7.0 / 0', { exact: true }).count()).toBe(1);
      await choices(page)
        .getByRole('checkbox', { name: /^Tied to the ground/ })
        .check();
      expect(coverOf(page)).toBe(COVER.join(','));
      await expect.poll(() => choices(page).getByText('+7.0 / +2.5').count()).toBe(1);
      await expectCalm(page);
      expectTold(await headline(page), covered.headline.period!);
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
      await expect
        .poll(() => page.getByText('Working out the map').count(), { timeout: PATIENCE_MS })
        .toBe(0);
      const areas = page.getByRole('list', { name: 'Areas, estimated between stations' });
      expect(await areas.getByRole('listitem').count()).toBeGreaterThan(1);

      await page.goBack();
      await page.goBack();
      await page.goBack();
      await expect.poll(() => coverOf(page)).toBeNull();
      await expectCalm(page);
      expectTold(await headline(page), bare.headline.period!);
      expect(visit.complaints).toEqual([]);
      await visit.close();
    },
    TEST_MS,
  );

  it(
    'is told with and without, over what its gain may be, and measure by measure',
    async () => {
      const [bare, covered, light] = await Promise.all([
        assessed('leaf'),
        assessed('leaf', '--cover', COVER.join(',')),
        assessed('leaf', '--cover', 'cloth-light,tied'),
      ]);
      const visit = await startVisit(browser);
      const { page } = visit;
      await page.goto(siteAddress(`?level=leaf&cover=${COVER.join(',')}`));
      await untilAnswered(page);
      const part = await openCover(page);
      await part.getByText('without a cover,').waitFor({ timeout: 20_000 });
      const sentence = plain(await part.getByText('without a cover,').textContent());
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
      await expect.poll(() => coverOf(page)).toBe('cloth-light,cloth-heavy,tied');
      await part.getByText('Of several covers over one another only the largest counts.').first().waitFor();
      await visit.close();
    },
    TEST_MS,
  );

  it(
    'says on how many nights it would go on, as counted directly from the records',
    async () => {
      const wanted = await nightsInNode('leaf', COVER);
      expect(wanted.toCover.total).toBeGreaterThan(0);
      const visit = await startVisit(browser, { acceptDownloads: true });
      const { page } = visit;
      await page.goto(siteAddress(`?level=leaf&cover=${COVER.join(',')}`));
      await untilAnswered(page);
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
      await visit.close();
    },
    TEST_MS,
  );

  it(
    'is refused with its reason: lights until confirmed, lights under a sheet, plastic on leaves',
    async () => {
      const lit = await assessed('wood', '--cover', 'lights,lights-confirmed');
      const bare = await assessed('wood');
      const visit = await startVisit(browser);
      const { page } = visit;
      await page.goto(siteAddress('?cover=lights'));
      await untilAnswered(page);
      const column = choices(page);
      await column.getByText(/^Lights count only once confirmed/).waitFor();
      expectTold(await headline(page), bare.headline.period!);
      await column.getByRole('checkbox', { name: /lights are safe/ }).check();
      await expectCalm(page);
      expect(await column.getByText(/^Lights count only once confirmed/).count()).toBe(0);
      expectTold(await headline(page), lit.headline.period!);

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
      expect(coverOf(page)).toBe('sheet,lights,lights-confirmed,plastic-on-leaves');
      expect(await part.getByRole('alert').filter({ hasText: 'it burns' }).count()).toBe(1);
      await column.getByRole('button', { name: 'Take out what should not be done' }).click();
      expect(coverOf(page)).toBe('sheet,lights,lights-confirmed');
      await visit.close();
    },
    TEST_MS,
  );

  it(
    'can be looked for: the least that makes a loss rarer than wished',
    async () => {
      const wish = Math.ceil((await assessed('leaf')).headline.period! * 1.5);
      const visit = await startVisit(browser);
      const { page } = visit;
      await page.goto(siteAddress(`?level=leaf&at-least=${wish}`));
      await untilAnswered(page);
      const part = await openCover(page);
      const use = part.getByRole('button', { name: 'Use it' });
      await use.waitFor({ timeout: 20_000 });
      const told = plain(await part.getByText(/Work at one tree:/).textContent());
      await use.click();
      const ids = coverOf(page)!;
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
      await visit.close();
    },
    TEST_MS,
  );
});
