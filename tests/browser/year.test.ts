import { readFile } from 'node:fs/promises';

import ICAL from 'ical.js';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';

import type { YearAnswer } from '../../analysis/answer/year.ts';
import { formatMonthDay } from '../../web/format/month-day.ts';
import { expectFitsPhone, expectNothingFound } from './axe.ts';
import { launchChromium } from './chromium.ts';
import { commandAnswer } from './command-answer.ts';
import { PATIENCE_MS, TEST_MS } from './patience.ts';
import { plain, siteAddress, startVisit, untilAnswered, type Visit } from './visit.ts';

/** A cold station of the demo pack, where every level but the last has its dates. */
const STATION = 'ZZC00000206';
const TYPE = 'satsuma_owari';

/** One visit with the year answered. */
let browser: Browser;
let visit: Visit;
let page: Page;
let part: Locator;
beforeAll(async () => {
  browser = await launchChromium();
  visit = await startVisit(browser, { bypassCSP: true, acceptDownloads: true });
  ({ page } = visit);
  await page.goto(siteAddress(`?station=${STATION}&type=${TYPE}`));
  await untilAnswered(page);
  part = await openYear();
}, TEST_MS);
afterAll(() => browser.close());

/** The year of the type by the command. */
async function assessedYear(): Promise<YearAnswer> {
  const options = ['--station', STATION, '--types', TYPE, '--year'];
  return (await commandAnswer<{ year: YearAnswer }>(...options)).year;
}

/** Goes to the part and has it answered. */
async function openYear(): Promise<Locator> {
  const part = page.getByRole('region', { name: 'Year', exact: true });
  const show = part.getByRole('button', { name: 'Show the year' });
  // The parts above open on the way down and push this one on, so one jump may end short of it.
  await vi.waitUntil(
    async () => {
      await page.getByRole('navigation').getByRole('link', { name: 'Year', exact: true }).click();
      return show.isVisible();
    },
    { timeout: 30_000, interval: 250 },
  );
  await show.click();
  await part.getByRole('heading', { name: 'What to do when' }).waitFor({ timeout: PATIENCE_MS });
  return part;
}

/** Cells of a table's rows, the date first where small print follows it. */
async function rowsOf(table: Locator): Promise<string[][]> {
  const rows = await table.locator('tbody tr').all();
  return Promise.all(rows.map(async (row) => (await row.locator('td').allTextContents()).map(plain)));
}

describe('the year', () => {
  it(
    'tells the dates that the command tells, by eye and by table, in both colour schemes',
    async () => {
      const year = await assessedYear();

      const all = [...year.freezes, ...year.types[0].levels.map(({ dates }) => dates)];
      for (const which of ['first', 'last'] as const) {
        const table = part.getByRole('table', { name: which === 'first' ? /^First night/ : /^Last night/ });
        const rows = await rowsOf(table);
        expect(rows).toHaveLength(all.length);
        all.forEach((dates, r) => {
          const told = dates[which].flatMap(({ date }) =>
            date === null ? [] : [plain(formatMonthDay(date))],
          );
          told.forEach((date, c) => expect(rows[r][c].startsWith(date), `${rows[r][c]}: ${date}`).toBe(true));
        });
        // The record must have told something for this to be a test.
        expect(all.some((dates) => dates[which][0].date !== null)).toBe(true);
      }
      const strip = part.getByRole('img', { name: /^The year of a Satsuma/ });
      const shown = plain(await strip.textContent());
      const [freeze] = year.freezes;
      expect(shown).toContain(plain(formatMonthDay(freeze.first[0].date)));
      await part.getByText('The same as a table').first().click();
      const twin = part.getByRole('table', { name: /^The year of a Satsuma/ });
      expect(await twin.locator('tbody tr').count()).toBe(all.length + 1 + workOf(year));

      expect(visit.complaints).toEqual([]);
    },
    TEST_MS,
  );

  it(
    'gives a calendar file that a strict parser opens, an entry for each task, fetched only when asked for',
    async () => {
      const year = await assessedYear();
      const fetched = (): boolean => visit.requested.some((url) => url.includes('calendar-file'));
      expect(fetched()).toBe(false);
      const button = part.getByRole('button', { name: 'Save as .ics calendar' });
      await button.focus();
      const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
      expect(fetched()).toBe(true);
      expect(download.suggestedFilename()).toBe('citrus-year-satsuma-owari.ics');

      expect(ICAL.design.strict).toBe(true);
      const calendar = new ICAL.Component(ICAL.parse(await readFile((await download.path())!, 'utf8')));
      const events = calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
      const { tasks } = year.types[0];
      expect(events.map(({ startDate }) => startDate.toString().slice(5))).toEqual(
        tasks.map(({ from }) => from),
      );
      for (const { description } of events) {
        expect(description).toContain('Sallowmere Coast is an invented region');
        expect(description).toContain('a forecast or warning in force goes first');
      }
      expect(visit.complaints).toEqual([]);
    },
    TEST_MS,
  );

  it('has no fault that axe-core finds, light or dark, and fits a phone', { timeout: TEST_MS }, async () => {
    await expectFitsPhone(page);
    await expectNothingFound(page, 'the year', '#year');
  });
});

/** Tasks with a row of their own; picking has one row for its months and its last day. */
function workOf({ types: [{ tasks }] }: YearAnswer): number {
  return tasks.filter(({ id }) => id !== 'harvest' && id !== 'pick-by').length;
}
