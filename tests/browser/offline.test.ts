import { cp, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import type { BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';

import { serveSite, type Site } from '../../data-scripts/serve/site-server.ts';
import { launchProfile } from './chromium.ts';
import { makeLaterBuild } from './later-build.ts';
import { PATIENCE_MS, openPart, rankingRow, rankingRows, untilAnswered } from './visit.ts';

/** One profile and one server of its own, that can be stopped; the steps follow each other as a day at a counter would. */
let folder: string;
let context: BrowserContext;
let site: Site;
let page: Page;
let other: Page;
const packs = (): string => join(folder, 'packs');

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'offline-'));
  await cp(inject('packsFolder'), packs(), { recursive: true });
  [site, context] = await Promise.all([
    serveSite({ page: inject('pageFolder'), packs: packs() }),
    launchProfile(join(folder, 'profile')),
    makeLaterBuild(inject('pageFolder'), join(folder, 'later')),
  ]);
  page = context.pages()[0];
  page.setDefaultTimeout(PATIENCE_MS);
});
afterAll(async () => {
  await context?.close();
  await site?.close();
  await rm(folder, { recursive: true, force: true });
});

/** The line under the masthead. */
function line(of: Page, text: RegExp): Locator {
  return of.locator('.masthead').getByText(text);
}

/** Serves another folder, or the same again, at the same address. */
async function serveAgain(folderOfPage: string): Promise<void> {
  await site.close();
  site = await serveSite({ page: folderOfPage, packs: packs(), port: Number(new URL(site.url).port) });
}

/** Bytes of all files that a pack's folder holds beside its manifest. */
async function bytesIn(inside: string): Promise<number> {
  const names = (await readdir(inside, { recursive: true })).filter((name) => name !== 'pack.json');
  const sizes = await Promise.all(names.map((name) => stat(join(inside, name))));
  return sizes.reduce((sum, one) => sum + (one.isFile() ? one.size : 0), 0);
}

async function storedPart(of: Page): Promise<Locator> {
  const records = await openPart(of, 'Records', (part) =>
    part.getByRole('heading', { name: 'Kept on this device' }),
  );
  return records.locator('.part', { hasText: 'Kept on this device' });
}

describe('the page on a counter with poor reception', () => {
  it('is ready to work without network after one visit, and can be installed', async () => {
    const requested: string[] = [];
    context.on('request', (request) => requested.push(request.url()));
    await page.goto(site.url);
    await untilAnswered(page);
    await line(page, /^Ready to work without network: \d+ MB on this device\.$/).waitFor();
    // Nothing of this comes before what the answer needs, and the engine comes last.
    const first = (fits: RegExp): number => requested.findIndex((url) => fits.test(url));
    const order = [
      first(/\/winters\//),
      first(/\/sw\.js/),
      first(/duckdb-eh-.*\.wasm/),
      first(/records\.duckdb/),
    ];
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order[0]).toBeGreaterThanOrEqual(0);
    expect(requested.filter((url) => !url.startsWith(site.url) && url.startsWith('http'))).toEqual([]);

    const inspector = await context.newCDPSession(page);
    const manifest = await inspector.send('Page.getAppManifest');
    expect(manifest.errors).toEqual([]);
    expect(JSON.parse(manifest.data ?? '')).toMatchObject({ start_url: './', display: 'standalone' });
    expect(await inspector.send('Page.getInstallabilityErrors')).toEqual({ installabilityErrors: [] });
  });

  it('says what a pack needs and what room there is when the browser is full, and keeps nothing of it', async () => {
    const part = await storedPart(page);
    const row = part.getByRole('row', { name: /Sallowmere/ });
    await row.getByRole('button', { name: /^Remove: / }).click();
    await row.getByRole('button', { name: 'Remove', exact: true }).click();
    await row.getByText('not kept').waitFor();
    const inspector = await context.newCDPSession(page);
    const origin = new URL(site.url).origin;
    // Room for less than the pack beside what is kept of the page.
    const used = await page.evaluate(async () => (await navigator.storage.estimate()).usage!);
    await inspector.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: used + 2_000_000 });
    await row.getByRole('button', { name: /^Keep for offline/ }).click();
    const needs = ((await bytesIn(join(packs(), 'sallowmere'))) / 1e6).toFixed(1);
    await part
      .getByText(
        new RegExp(
          `has no room for “Sallowmere .*”: it needs ${needs} MB, and after .+B the browser took no more`,
        ),
      )
      .waitFor();
    expect(await row.getByText('not kept').count()).toBe(1);
    await inspector.send('Storage.overrideQuotaForOrigin', { origin });
    await row.getByRole('button', { name: /^Keep for offline/ }).click();
    await row.getByText('today').waitFor();
  });

  it('goes on with what it is made of when a newer version comes, until its reader takes that; likewise with newer records', async () => {
    other = await context.newPage();
    other.setDefaultTimeout(PATIENCE_MS);
    await other.goto(`${site.url}?unit=C`);
    await untilAnswered(other);
    await rankingRow(page, 'Meyer lemon').click();
    for (const one of [page, other]) await one.evaluate(() => void Object.assign(window, { before: true }));

    await serveAgain(join(folder, 'later'));
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())!.update());
    await line(page, /^A newer version of this page is here\.$/).waitFor();
    await line(other, /^A newer version of this page is here\.$/).waitFor();
    // The server has no longer what this page is made of.
    await openPart(page, 'Method', (part) => part.getByRole('table'));

    const address = page.url();
    await page.getByRole('button', { name: 'Use it' }).click();
    await page.locator('meta[name="build"]').waitFor({ state: 'attached' });
    await untilAnswered(page);
    expect(page.url()).toBe(address);
    expect(await page.evaluate(() => 'before' in window)).toBe(false);

    // The other tab was left alone, and still finds every part of itself.
    expect(await other.evaluate(() => 'before' in window)).toBe(true);
    expect(await other.locator('meta[name="build"]').count()).toBe(0);
    await openPart(other, 'Year', (part) => part.getByRole('button'));
    const versions = (): Promise<number> => page.evaluate(async () => (await caches.keys()).length);
    expect(await versions()).toBe(2);
    await other.close();

    // The site's records have changed meanwhile.
    const manifest = join(packs(), 'sallowmere/pack.json');
    const text = JSON.parse(await readFile(manifest, 'utf8')) as { notes: string[] };
    text.notes.push('A note that the kept pack has not.');
    await writeFile(manifest, JSON.stringify(text));
    await page.reload();
    await untilAnswered(page);
    await expect.poll(versions).toBe(1);
    await line(page, /^The site has newer records than this device\.$/).waitFor();
    await page.getByRole('button', { name: 'Fetch them' }).click();
    await line(page, /^The newer records are on this device\.$/).waitFor();
    await page.getByRole('button', { name: 'Show them' }).waitFor();
  });

  it('answers, ranks and asks the database with the server gone and the network off', async () => {
    await site.close();
    await context.setOffline(true);
    await page.reload();
    await untilAnswered(page);
    await line(
      page,
      /^Without network\. The records on this device were kept today; their last winter is 20\d\d–\d\d\.$/,
    ).waitFor();
    const search = page.getByRole('combobox', { name: 'Postcode, town or station' });
    await search.fill('SC 129');
    await search.press('Enter');
    await expect.poll(() => page.url()).toMatch(/SC/);
    await untilAnswered(page);
    expect(await rankingRows(page).count()).toBeGreaterThan(20);
    const records = await openPart(page, 'Records', (part) =>
      part.getByRole('button', { name: 'Open the database' }),
    );
    await records.getByText(/notes from building the pack/).click();
    await records.getByText('A note that the kept pack has not.').waitFor();
    await records.getByRole('button', { name: 'Open the database' }).click();
    const sql = records.getByRole('textbox', { name: 'Ask in SQL' });
    await sql.waitFor({ timeout: 40_000 });
    await sql.fill('select count(*) as nights from nights');
    await records.getByRole('button', { name: 'Run' }).click();
    await expect
      .poll(async () =>
        Number((await records.getByRole('cell').allTextContents()).join(' ').match(/\d{5,}/)?.[0]),
      )
      .toBeGreaterThan(10_000);
  });
});
