import { readFile } from 'node:fs/promises';
import type { Browser, Download, Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';

import { BATCH_COLUMNS } from '../../analysis/answer/batch-table.ts';
import type { PackPlaces } from '../../analysis/records/pack.ts';
import { expectFitsPhone, expectNothingFound } from './axe.ts';
import { launchChromium } from './chromium.ts';
import { TEST_MS } from './patience.ts';
import { openPart, siteAddress, startVisit, untilAnswered } from './visit.ts';

/** Five rows that can't be answered among four that can; a number that looks like a formula. */
const CUSTOMERS = [
  'cliente;Código postal;lat;lon;altitud;etiqueta',
  '=1+1;SC 101;;;;Harbour first',
  '2;SC 999;;;;',
  '3;;91;-42;;',
  ';;;;;',
  '10;;31,2;-42,4;;Up the hill',
  '4;;31;-42;low;',
  '5;;10;-42;;Far away',
  '6;sc102;;;;"Last; but one"',
  '9;SC 101;;;;Harbour again',
].join('\r\n');

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const textOf = async (download: Download): Promise<string> => readFile(await download.path(), 'utf8');
const table = (csv: string): string[] =>
  csv.split('\r\n').filter((line) => line !== '' && !line.startsWith('#'));

describe('a batch on the page', { timeout: TEST_MS }, () => {
  it('answers good rows, lists bad ones, sorts, filters, counts, exports, and keeps what is done when stopped', async () => {
    const { page, requested, complaints, close } = await startVisit(browser, { bypassCSP: true });
    await page.goto(siteAddress());
    await untilAnswered(page);
    const desk = await openPart(page, 'Desk', (part) =>
      part.getByRole('heading', { name: 'Many places at once' }),
    );
    const press = (name: string | RegExp) => desk.getByRole('button', { name }).click();
    const saved = async (name: RegExp): Promise<string> => {
      const [download] = await Promise.all([page.waitForEvent('download'), press(name)]);
      return textOf(download);
    };
    const bring = (name: string, text: string) =>
      desk
        .getByLabel('Choose a file')
        .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
    const rows = desk.getByRole('region', { name: /^Rows / });
    const places = (): Promise<string[]> => rows.getByRole('rowheader').allTextContents();
    const column = (name: string): Locator => rows.getByRole('columnheader', { name });

    await bring('useless.csv', 'name,phone\na,1');
    await desk.getByRole('alert').filter({ hasText: 'useless.csv has no column to go by' }).waitFor();

    await bring('customers.csv', CUSTOMERS);
    await desk.getByText('customers.csv: 5 rows at 4 places.').waitFor();
    await desk.getByText(/^Types asked about:/).click();
    await press('None');
    await desk.getByRole('checkbox', { name: 'Satsuma mandarin, Owari type' }).check();
    await desk.getByRole('checkbox', { name: 'Meyer lemon' }).check();
    const asked = requested.length;
    await press('Answer 10 rows of place and type');
    await rows.waitFor();
    expect(requested.slice(asked).filter((url) => !url.startsWith(new URL(siteAddress()).origin))).toEqual(
      [],
    );

    const bad = desk.getByRole('region', { name: '5 rows can’t be answered' });
    expect(await bad.getByRole('rowheader').allTextContents()).toEqual(['3', '4', '5', '7', '8']);
    expect(await bad.getByRole('row').nth(5).textContent()).toMatch(/km from the nearest station.*Far away/);
    expect(await saved(/^Save these rows as CSV/)).toContain('4,latitude 91 is beyond 90 degrees,"3;;91');

    expect(await places()).toHaveLength(8);
    expect(await column('Line').getAttribute('aria-sort')).toBe('ascending');
    await column('Customer').getByRole('button').press('Enter');
    await column('Customer').getByRole('button').press('Enter');
    expect(await column('Customer').getAttribute('aria-sort')).toBe('descending');
    expect(new Set((await places()).slice(0, 2))).toEqual(new Set(['Up the hill']));
    await desk.getByRole('textbox', { name: 'Place or customer' }).fill('harbour');
    await desk.getByRole('combobox', { name: 'Type', exact: true }).selectOption({ label: 'Meyer lemon' });
    expect(await places()).toEqual(['SC 101 Harbour again', 'SC 101 Harbour first']);
    const shown = table(await saved(/^Save these 2 rows/));
    expect(shown[0]).toBe(BATCH_COLUMNS.join(','));
    expect(shown.slice(1).map((line) => line.split(',').slice(0, 3))).toEqual([
      ['10', '9', 'Harbour again'],
      ['2', "'=1+1", 'Harbour first'],
    ]);
    expect(table(await saved(/^Save all 8 rows/))).toHaveLength(9);

    const level = desk.getByRole('group', { name: 'Loss' });
    await level.getByText('Fruit').click();
    await desk.getByRole('spinbutton', { name: 'Rarer than 1 winter in' }).fill('100');
    await desk.getByRole('spinbutton', { name: 'Rarer than 1 winter in' }).press('Enter');
    await desk
      .getByText(/of 4 rows with an answer, 0 \(0%\) would lose the fruit more rarely than 1 winter in 100/)
      .waitFor();

    await expectFitsPhone(page);
    await expectNothingFound(page, 'a batch answered', '#desk');

    // All postcodes of the pack, stopped on the way.
    const { postcodes } = JSON.parse(
      await readFile(`${inject('packsFolder')}/sallowmere/places.json`, 'utf8'),
    ) as PackPlaces;
    await press(`All ${postcodes.length} postcodes of this pack`);
    await press(/^Answer \d+ rows/);
    await press('Cancel, keep what is done');
    const stopped = await desk.getByText(/^Stopped after \d+ of \d+ places/).textContent();
    expect(Number(/after (\d+)/.exec(stopped!)![1])).toBeLessThan(postcodes.length);
    expect(complaints).toEqual([]);
    await close();
  });
});
