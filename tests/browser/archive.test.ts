import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';

import { serveSite, type Site } from '../../data-scripts/serve/site-server.ts';
import { LoopbackArchive, recordOf } from '../data-scripts/fetch/loopback-archive.ts';
import { mirroredStations } from './archive-mirror.ts';
import { launchChromium } from './chromium.ts';
import { openPart, PATIENCE_MS, untilAnswered } from './visit.ts';

const STATIONS = mirroredStations(5);
const [FIRST, SECOND] = STATIONS.map(({ id }) => id) as [string, string];

let browser: Browser;
let mirror: LoopbackArchive;
let site: Site;
beforeAll(async () => {
  browser = await launchChromium();
  mirror = new LoopbackArchive(STATIONS);
  site = await serveSite({
    page: inject('pageFolder'),
    packs: inject('packsFolder'),
    archives: [await mirror.open()],
  });
});
afterAll(async () => {
  await browser.close();
  await site.close();
  await mirror.close();
});

async function openArchive(page: Page): Promise<Locator> {
  const records = await openPart(page, 'Records', (part) => part.getByText('Straight from the archive'));
  await records.getByRole('button', { name: 'Look for stations around a place' }).click();
  const point = records.getByRole('textbox', { name: 'Degrees north, degrees east' });
  await point.fill('31.0, -42.1');
  await records.getByRole('button', { name: 'Take this point' }).click();
  return records;
}

describe('straight from the archive', () => {
  // Without routes of the test's own: what the mirror allows a page is up to the browser and the site's policy alone.
  it('reads the index, ticks a good choice, goes on after a break and opens the pack it makes', async () => {
    const context = await browser.newContext({ locale: 'en-US', reducedMotion: 'reduce' });
    const requested: string[] = [];
    context.on('request', (request) => requested.push(new URL(request.url()).host));
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENCE_MS);
    await page.goto(`${site.url}?unit=C`);
    await untilAnswered(page);
    let records = await openArchive(page);
    expect(mirror.seen).toEqual([]);

    // A base address that the site doesn't allow.
    await records.getByText('Address of the archive').click();
    const base = records.getByLabel(/^Base address/);
    const proposed = await base.inputValue();
    await base.fill('http://127.0.0.1:9/');
    await records.getByRole('button', { name: 'Use this address' }).click();
    await records.getByText(/^This site doesn’t allow http:\/\/127\.0\.0\.1:9\/: whoever runs it/).waitFor();
    await base.fill(proposed);
    await records.getByRole('button', { name: 'Use this address' }).click();

    // A mirror that sends no CORS header looks like no mirror at all.
    await records.getByRole('button', { name: 'Read the lists of stations' }).click();
    await records.getByText(/^No answer came from 127.*it sends no CORS header/).waitFor();
    mirror.allowOrigin = new URL(site.url).origin;
    await records.getByRole('button', { name: 'Read the lists of stations' }).click();
    await records.getByText(/^The index has 5 stations with 20 or more years of minima/).waitFor();

    const table = records.getByRole('region', { name: 'Stations around the place' });
    await table.getByText(/^5 of 5 stations ticked, about \d+(\.\d)? MB to fetch \(estimated/).waitFor();
    expect(await table.getByText('not known yet').count()).toBe(5);
    await table.getByRole('checkbox').last().uncheck();
    await table.getByText(/^4 of 5 stations ticked/).waitFor();
    await table.getByRole('checkbox').last().check();

    // The map, by keyboard.
    await records.getByRole('button', { name: 'Choose on a map' }).click();
    const map = records.getByRole('application', { name: /^Map to choose a place/ });
    await map.focus();
    for (const key of ['ArrowUp', 'ArrowLeft', 'Enter']) await page.keyboard.press(key);
    const around = /^Stations are looked for around ([\d.]+)° N, ([\d.]+)° W\.$/;
    const moved = async (): Promise<[north: boolean, west: boolean]> => {
      const [, lat, lon] = around.exec(await records.getByText(around).innerText())!;
      return [Number(lat) > 31, Number(lon) > 42.1];
    };
    await expect.poll(moved).toEqual([true, true]);

    // Stopped in the middle of the first record, which stays over a reload.
    mirror.break(recordOf(FIRST), { kind: 'stall', afterBytes: 300_000 });
    mirror.files.delete(recordOf(SECOND));
    await records.getByRole('button', { name: 'Fetch 5 stations and make a pack' }).click();
    await table
      .getByText(/^300 kB of/)
      .first()
      .waitFor();
    await records.getByRole('button', { name: 'Stop', exact: true }).click();
    await records.getByText(/^Stopped\. What has come stays/).waitFor();
    await page.reload();
    await untilAnswered(page);
    records = await openArchive(page);
    const index = '/ghcnd-inventory.txt';
    expect(mirror.requestsOf(index)).toHaveLength(3);
    await records.getByRole('button', { name: 'Fetch 5 stations and make a pack' }).click();
    await records.getByText(/stands and is open; it is kept on this device/).waitFor({ timeout: 60_000 });
    await records.getByText(/1 station was left out: the table says why\.$/).waitFor();
    await records.getByText('the archive has no record of it; left out').waitFor();
    expect(mirror.requestsOf(recordOf(FIRST)).map(({ status, range }) => [status, range])).toEqual([
      [200, undefined],
      [206, 'bytes=300000-'],
    ]);
    expect(mirror.requestsOf(index)).toHaveLength(3);

    // The answer of the new pack stands.
    await untilAnswered(page);
    expect(new URL(page.url()).searchParams.get('pack')).toMatch(/^own-/);
    await records.getByText(/^Around 31\.00° N, 42\.10° W holds 4 stations with readings/).waitFor();
    await records.getByText('Menne, M. J.').waitFor();
    const hosts = new Set([new URL(site.url).host, new URL(proposed).host, '']);
    expect(requested.filter((host) => !hosts.has(host))).toEqual([]);
    await context.close();
  });
});
