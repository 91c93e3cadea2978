import { gzipSync } from 'node:zlib';

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import { mapOfStations, siteAddress, startVisit, untilAnswered, winterSlider, openPart } from './visit.ts';

/** Design section 8. Of time the test asserts only a generous bound, since the machine is shared; it prints the rest. */
const FIRST_SCREEN_GZIP_BYTES = 600_000;
const FIRST_MAP_PATIENCE_MS = 10_000;

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** Bytes of a file as a host that compresses would send it: what is compressed already gains nothing. */
async function gzipBytes(url: string): Promise<number> {
  const body = Buffer.from(await (await fetch(url)).arrayBuffer());
  return Math.min(body.length, gzipSync(body).length);
}

describe('the first screen', () => {
  it('shows map, stations and search without the database, within its bytes', async () => {
    const refused: string[] = [];
    const visit = await startVisit(browser, {}, async (context) => {
      await context.route(/duckdb|\.wasm/, (route) => {
        refused.push(route.request().url());
        return route.abort();
      });
    });
    const { page } = visit;
    const began = performance.now();
    await page.goto(siteAddress());
    await mapOfStations(page).locator('canvas').waitFor({ timeout: FIRST_MAP_PATIENCE_MS });
    await page.getByText('Drawing the map').waitFor({ state: 'hidden' });
    const map = performance.now() - began;
    const beforeMap = [...visit.requested];
    await untilAnswered(page);
    const ranking = performance.now() - began;

    expect(map).toBeLessThan(FIRST_MAP_PATIENCE_MS);
    await page.getByRole('combobox', { name: 'Postcode, town or station' }).waitFor();
    const list = page.getByText(/^All \d+ stations as a list$/);
    await list.click();
    const stations = Number(/\d+/.exec((await list.textContent()) ?? '')![0]);
    expect(stations).toBeGreaterThan(30);
    const names = page.getByRole('table', { name: /^Stations: / }).getByRole('rowheader');
    expect(await names.count()).toBe(stations);

    await page.waitForLoadState('networkidle');
    expect(refused).toEqual([]);
    expect(visit.requested.filter((url) => /duckdb|\.wasm|parquet/.test(url))).toEqual([]);

    const sizes = new Map<string, number>();
    for (const url of new Set(visit.requested.filter((asked) => asked.startsWith('http'))))
      sizes.set(url, await gzipBytes(url));
    const sum = (urls: Iterable<string>): number =>
      [...new Set(urls)].reduce((total, url) => total + (sizes.get(url) ?? 0), 0);
    // The worker's own files are part of what must arrive; a page that fetched them unseen would make this test blind.
    expect([...sizes.keys()].some((url) => url.includes('/winters/'))).toBe(true);
    expect([...sizes.keys()].some((url) => url.includes('maplibre-gl-worker'))).toBe(true);
    // What only the ranking needs comes beside it: winters and heights, the worker that counts them, the view, its sources,
    // the evidence of the place; and what begins when both are done: working without network.
    const withoutRanking = [...sizes.keys()].filter(
      (url) =>
        !/\/winters\/|grid\.bin|assess[.-]work|RankingView|PlaceEvidence|place-words|record-words|PeriodRow|TableTwin|sources-|\/(begin|kept-packs|offline-state)[.-]/.test(
          url,
        ),
    );
    console.log(
      `First map after ${Math.round(map)} ms, ranking after ${Math.round(ranking)} ms; gzip bytes: map and stations ` +
        `${sum(withoutRanking)}, with the ranking ${sum(sizes.keys())} (asked before the map stood: ${sum(beforeMap)}).`,
    );
    for (const [url, bytes] of [...sizes].sort((a, b) => b[1] - a[1]).slice(0, 10))
      console.log(`  ${bytes}  ${new URL(url).pathname}`);
    expect(sum(withoutRanking)).toBeLessThanOrEqual(FIRST_SCREEN_GZIP_BYTES);
    await visit.close();
  });

  it('draws land, water and stations with nothing from outside, and complains of nothing in a usual visit', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    const canvas = mapOfStations(page).locator('canvas');
    // Marks get their colours when the answers of all stations are in.
    await expect
      .poll(async () => (await coloursOf(canvas)).distinct, { timeout: 20_000 })
      .toBeGreaterThan(12);
    const { largestShare } = await coloursOf(canvas);
    // Neither one plain sheet nor noise: sea and land take most of it, and neither takes all.
    expect(largestShare).toBeLessThan(0.9);
    expect(
      visit.requested.filter((url) => /^(https?|wss?):/.test(url) && !url.startsWith(siteAddress())),
    ).toEqual([]);

    // A usual visit goes on, and the console hears no complaint.
    await page.getByRole('button', { name: /^Meyer lemon.*: / }).click();
    await openPart(page, 'Winters', () => winterSlider(page));
    const records = await openPart(page, 'Records', (part) =>
      part.getByRole('button', { name: 'Open the database' }),
    );
    await records.getByRole('button', { name: 'Open the database' }).click();
    await records.getByRole('textbox', { name: 'Ask in SQL' }).waitFor({ timeout: 40_000 });
    await openPart(page, 'Method', (part) => part.getByRole('table'));
    await page.getByRole('button', { name: 'Dark page' }).click();
    expect(visit.complaints).toEqual([]);
    await visit.close();
  });
});

/** How many colours a canvas shows, in steps of 8 per channel, and the share of the commonest, read from a screenshot. */
async function coloursOf(
  canvas: ReturnType<ReturnType<typeof mapOfStations>['locator']>,
): Promise<{ distinct: number; largestShare: number }> {
  const picture = (await canvas.screenshot()).toString('base64');
  return canvas.page().evaluate(async (png) => {
    const image = new Image();
    image.src = `data:image/png;base64,${png}`;
    await image.decode();
    const sheet = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
    sheet.drawImage(image, 0, 0);
    const { data } = sheet.getImageData(0, 0, image.width, image.height);
    const counts = new Map<number, number>();
    for (let i = 0; i < data.length; i += 4) {
      const colour = ((data[i] >> 3) << 10) | ((data[i + 1] >> 3) << 5) | (data[i + 2] >> 3);
      counts.set(colour, (counts.get(colour) ?? 0) + 1);
    }
    const pixels = data.length / 4;
    // A colour counts from 20 pixels on, so that the soft edges of letters don't.
    const shown = [...counts.values()].filter((count) => count >= 20);
    return { distinct: shown.length, largestShare: Math.max(...shown) / pixels };
  }, picture);
}
