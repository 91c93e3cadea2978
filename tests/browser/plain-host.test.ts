import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import { startPlainHost, type PlainHost } from './plain-host.ts';
import { PATIENCE_MS, mapOfStations, openPart, untilAnswered } from './visit.ts';

let browser: Browser;
let host: PlainHost;
beforeAll(async () => {
  [browser, host] = await Promise.all([
    launchChromium(),
    startPlainHost(inject('pageFolder'), inject('packsFolder')),
  ]);
});
afterAll(async () => {
  await browser.close();
  await host.close();
});

it('the page works in a folder of any static host, and says so where that serves no parts of files', async () => {
  const context = await browser.newContext({ locale: 'en-US', reducedMotion: 'reduce' });
  // A kept pack would be read instead of the host's.
  await context.addInitScript(() => localStorage.setItem('citrus-winters-offline', 'page'));
  const complaints: string[] = [];
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  page.on('pageerror', ({ message }) => complaints.push(message));
  host.hasRanges = false;
  await page.goto(host.url);
  await untilAnswered(page);
  await mapOfStations(page).waitFor();

  const records = await openPart(page, 'Records', (part) =>
    part.getByRole('button', { name: 'Open the database' }),
  );
  await records.getByRole('button', { name: 'Open the database' }).click();
  const alert = records.getByRole('alert').filter({ hasText: 'does not serve parts of a file' });
  await alert.waitFor({ timeout: 40_000 });
  host.hasRanges = true;
  await alert.getByRole('button', { name: 'Try again' }).click();
  await records.getByRole('textbox', { name: 'Ask in SQL' }).waitFor({ timeout: 40_000 });

  await page.locator('.masthead').getByText('Ready to work without network').waitFor();
  expect(await page.evaluate(async () => (await navigator.serviceWorker.ready).scope)).toBe(host.url);
  const inspector = await context.newCDPSession(page);
  const manifest = await inspector.send('Page.getAppManifest');
  expect([manifest.url, manifest.errors]).toEqual([`${host.url}manifest.webmanifest`, []]);

  await page.getByRole('button', { name: 'Español' }).click();
  await page.locator('html[lang="es"]').waitFor();
  await page.getByRole('heading', { name: 'Clasificación' }).waitFor();
  expect(complaints).toEqual([]);
  expect(host.elsewhere).toEqual([]);
  await context.close();
});
