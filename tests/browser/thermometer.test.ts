import { readFileSync } from 'node:fs';
import path from 'node:path';

import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';

import { readMeasuredText } from '../../analysis/spot/measured-text.ts';
import { PackDatabase } from '../../data-scripts/pack/database.ts';
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

/** An inland station of the demo, where calm nights are many. */
const STATION_SQL = `
  select station, count(*)::int from nights where kind = 'calm' and s0_c <= 2 group by 1 order by 2 desc limit 1`;
const NIGHTS_SQL = `
  select date::varchar as day, s0_c::double as minimum from nights
  where station = $station and kind = 'calm' and s0_c <= 4 order by date desc limit 24`;
const OFFSET_C = 2;

/** One visit, with the database opened once. */
let browser: Browser;
let visit: Visit;
let page: Page;
let station = '';
/** The station's own calm nights, as its pack holds them, read without the page. */
let nights: { day: string; minimum: number }[] = [];
beforeAll(async () => {
  browser = await launchChromium();
  const packs = inject('packsFolder');
  const [pack] = JSON.parse(readFileSync(path.join(packs, 'index.json'), 'utf8')) as { path: string }[];
  const database = await PackDatabase.open(path.join(packs, pack!.path, 'records.duckdb'));
  station = (await database.rows<{ station: string }>(STATION_SQL))[0]!.station;
  nights = await database.rows(NIGHTS_SQL, { station });
  database.close();
  visit = await startVisit(browser);
  ({ page } = visit);
});
afterAll(() => browser.close());

/** What a thermometer 2 °C milder than the station would have read, give or take a tenth. */
function readings(heading: string, inUnit: (valueC: number) => number): string {
  const lines = nights.map(
    ({ day, minimum }, i) => `${day},${inUnit(minimum + OFFSET_C + ((i % 3) - 1) / 10).toFixed(1)}`,
  );
  return [heading, ...lines].join('\n');
}

async function openThermometer(): Promise<Locator> {
  await page.evaluate(() => document.querySelector('#spot')!.scrollIntoView({ behavior: 'instant' }));
  const spot = page.getByRole('region', { name: 'Spot', exact: true });
  await spot.getByRole('textbox', { name: /^Readings: a date/ }).waitFor({ timeout: 20_000 });
  return spot;
}

describe('the own thermometer', () => {
  it('says in one sentence what is wrong with readings, and keeps them', async () => {
    await page.goto(siteAddress(`?station=${station}&unit=F`));
    await untilAnswered(page);
    const spot = await openThermometer();
    const box = spot.getByRole('textbox', { name: /^Readings: a date/ });
    for (const [text, sentence] of [
      ['cold\nvery cold', /The text: no line has a date \(line 2: “very cold”\)/],
      ['2024-01-05,28\n2024-01-06,30', /2 nights were read, up to line 2/],
    ] as const) {
      await box.fill(text);
      await spot.getByText(sentence).waitFor();
      expect(await box.inputValue()).toBe(text);
    }
    await box.fill('2031-01-05,28\n2031-01-06,30\n2031-01-07,29');
    await spot.getByRole('button', { name: 'Compare with the nights on record' }).click();
    await spot
      .getByText(/^The pack’s record ends on .* and your readings begin on 5 January 2031/)
      .waitFor({ timeout: 40_000 });
    await spot.getByText('Load a station file').waitFor();
  });

  it('finds the offset that readings were made with, mends a wrong unit when told to, and moves the answer', async () => {
    await turnTo(page, `?station=${station}&unit=C`);
    const spot = await openThermometer();
    const before = await rankingRow(page, 'Satsuma').first().getAttribute('aria-label');
    const box = spot.getByRole('textbox', { name: /^Readings: a date/ });
    const wrong = readings('Date,Minimum (°C)', (valueC) => valueC * 1.8 + 32);
    await box.fill(wrong);
    const compare = spot.getByRole('button', { name: 'Compare with the nights on record' });
    const takeAsF = spot.getByRole('button', { name: 'Take them as °F' });
    // The nights may be open since the test before; then it compares at once.
    await compare.or(takeAsF).first().waitFor({ timeout: 40_000 });
    if (await compare.isVisible()) await compare.click();
    await takeAsF.click({ timeout: 40_000 });
    await spot
      .getByText(/^On calm nights this spot is 2\.0\s°C milder than the station \(24 nights/)
      .waitFor();
    await spot.getByRole('button', { name: 'Use this for the spot' }).click();
    await expectCalm(page);
    const text = new URL(page.url()).searchParams.get('measured')!;
    const { calm, windy } = readMeasuredText(text);
    expect(calm!.spread.centreC).toBeCloseTo(OFFSET_C, 1);
    expect([calm!.nights, windy]).toEqual([24, null]);
    await expect
      .poll(() => rankingRow(page, 'Satsuma').first().getAttribute('aria-label'), { timeout: 20_000 })
      .not.toBe(before);

    await page.reload();
    await untilAnswered(page);
    const again = await openThermometer();
    expect(await again.getByRole('textbox', { name: /^Readings: a date/ }).inputValue()).toBe(wrong);
    await again.getByText(/^Measured at the spot and in use: \+2\.0\s°C on calm nights/).waitFor();
    expect(visit.requested.filter((address) => address.includes(nights[0]!.day))).toEqual([]);
    expect(visit.complaints).toEqual([]);
  });
});
