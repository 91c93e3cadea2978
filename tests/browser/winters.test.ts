import { DuckDBInstance } from '@duckdb/node-api';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import {
  openPart,
  rankingRow,
  siteAddress,
  startVisit,
  turnTo,
  untilAnswered,
  winterSlider,
  type Visit,
} from './visit.ts';

/** A station of the pack with a long record, a type with ordinary figures and one whose fruit is lost often. */
const STATION = 'Sallowmere Harbour';
const CASES = [
  { typeId: 'meyer_lemon', name: 'Meyer lemon', level: 'leaf' },
  { typeId: 'satsuma_owari', name: 'Satsuma mandarin, Owari', level: 'fruit' },
] as const;

/** One visit; each test turns to what it asks about. */
let browser: Browser;
let visit: Visit;
let page: Page;
beforeAll(async () => {
  browser = await launchChromium();
  visit = await startVisit(browser);
  ({ page } = visit);
  await page.goto(siteAddress());
  await untilAnswered(page);
});
afterAll(() => browser.close());

/** Rows of one statement on the database of the pack that the page shows. */
async function ask(sql: string): Promise<(string | number | boolean | null)[][]> {
  const database = await DuckDBInstance.create(`${inject('packsFolder')}/sallowmere/records.duckdb`, {
    access_mode: 'READ_ONLY',
  });
  const connection = await database.connect();
  try {
    return (await connection.runAndReadAll(sql)).getRowsJson() as (string | number | boolean | null)[][];
  } finally {
    connection.closeSync();
    database.closeSync();
  }
}

/** Threshold and hours as the opened row tells them: `24 °F, 4 h`. */
async function thresholdShown(
  page: Page,
  typeName: string,
  column: number,
): Promise<{ f: number; hours: number }> {
  const table = page.getByRole('region', { name: new RegExp(`^${typeName}.*: the four levels$`) });
  const cell = table
    .getByRole('row', { name: /^Threshold/ })
    .getByRole('cell')
    .nth(column);
  const text = ((await cell.textContent()) ?? '').replaceAll('\u00a0', ' ');
  const match = /^(−?\d+) °F, (\d+) h\b/.exec(text);
  expect(match, text).not.toBeNull();
  return { f: Number(match![1].replace('−', '-')), hours: Number(match![2]) };
}

describe('the winters of a type', () => {
  for (const { typeId, name, level } of CASES) {
    it(`are those that SQL finds in the database: ${name}, ${level}`, async () => {
      const [[station, complete]] = await ask(
        `select s.station, count(*) filter (w.complete)::int from stations s join winters w using (station)
         where s.name = '${STATION}' group by 1`,
      );
      await turnTo(page, `?station=${station}&type=${typeId}&level=${level}&unit=F`);
      expect(await rankingRow(page, name).first().getAttribute('aria-expanded')).toBe('true');
      const { f, hours } = await thresholdShown(page, name, ['fruit', 'leaf', 'wood', 'kill'].indexOf(level));

      // Own arithmetic: the level held without a break for so many hours reaches the threshold, at the grain of 0.01 °C.
      const hits = await ask(
        `select n.winter, min(n.s${hours}_c)::double, bool_or(w.complete)
         from nights n join winters w using (station, winter)
         where n.station = '${station}' and n.s${hours}_c <= round(((${f} - 32) / 1.8)::decimal(9, 6), 2)
         group by 1 order by 1`,
      );
      const counted = hits.filter(([, , whole]) => whole).map(([winter]) => Number(winter));
      expect(counted.length).toBeGreaterThan(2);
      expect(counted.length).toBeLessThan(Number(complete));

      const button = rankingRow(page, name).first();
      expect(await button.getAttribute('aria-label')).toContain(
        `counted in ${counted.length} of ${complete} complete winters`,
      );

      const part = await openPart(page, 'Winters', () => winterSlider(page));
      await expect
        .poll(() => winterSlider(page).getAttribute('aria-valuetext'))
        .toContain(`${counted.length} of ${complete} complete winters hit`);
      const twin = part.getByText('The same as a table').first();
      // Open since the test before.
      if (!(await part.getByRole('table', { name: /: coldest level of each winter/ }).isVisible()))
        await twin.click();
      const table = part.getByRole('table', { name: /: coldest level of each winter/ });
      const cells = await table
        .getByRole('row')
        .evaluateAll((rows) =>
          rows.slice(1).map((row) => [...row.children].map((cell) => cell.textContent ?? '')),
        );
      const winterOf = (text: string): number => Number(text.slice(0, 4)) + 1;
      const shown = cells.filter(([, , hit, , , whole]) => hit === 'hit' && whole === 'complete');
      expect(shown.map(([winter]) => winterOf(winter))).toEqual(counted);

      // The coldest of each winter, too: min over its nights, at the tenth of a degree that is shown.
      const coldest = new Map(hits.map(([winter, c]) => [Number(winter), Number(c) * 1.8 + 32]));
      for (const [winter, level1] of shown) {
        const told = Number(level1.replace('−', '-').replace(/[^\d.-]/g, ''));
        expect(Math.abs(told - coldest.get(winterOf(winter))!)).toBeLessThanOrEqual(0.06);
      }
    });
  }

  it('are answered by the database in the page as well', async () => {
    const [[station]] = await ask(`select station from stations where name = '${STATION}'`);
    await turnTo(page, `?station=${station}&type=satsuma_owari&level=fruit&unit=F`);
    const records = await openPart(page, 'Records', (part) =>
      part.getByRole('button', { name: 'Open the database' }),
    );
    await records.getByRole('button', { name: 'Open the database' }).click();
    const sql = records.getByRole('textbox', { name: 'Ask in SQL' });
    await sql.waitFor({ timeout: 40_000 });
    const question =
      `select winter, count(*)::int as nights from nights where station = '${station}' and s4_c <= -2.22 ` +
      'group by winter order by winter';
    const expected = (await ask(question)).map((row) => row.map(String));
    expect(expected.length).toBeGreaterThan(2);
    await sql.fill(question);
    await sql.press('Control+Enter');
    const table = records.getByRole('table', { name: new RegExp(`^${expected.length} rows$`) });
    await table.waitFor();
    const cells = await table
      .getByRole('row')
      .evaluateAll((rows) =>
        rows.slice(1).map((row) => [...row.children].map((cell) => (cell.textContent ?? '').trim())),
      );
    expect(cells).toEqual(expected);

    // A statement that would write is refused in a sentence, and the database goes on answering.
    await sql.fill('drop table nights');
    await sql.press('Control+Enter');
    await records.getByRole('alert').waitFor();
    await sql.fill('select 41 + 1 as sum');
    await sql.press('Control+Enter');
    await records
      .getByRole('table', { name: '1 row' })
      .getByRole('cell', { name: '42', exact: true })
      .waitFor();
  });
});
