import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { BROWSER_ARGUMENTS, launchProfile } from '../browser/chromium.ts';
import { readNetLog, type Transfer } from './net-log.ts';

const PATIENCE_MS = 120_000;
/** The surface of 500 stations takes seconds, on a busy machine a minute; that of 5,000 is not waited for longer than this. */
const SURFACE_PATIENCE_MS = 90_000;
/** What still comes by itself after an errand is counted with it, ms. */
const REST_MS = 2500;

/** What an errand fetched. */
export interface Errand {
  readonly name: string;
  readonly transfers: readonly Transfer[];
}

/** Somewhere on the way of a visit; what is fetched from here on belongs to the errand named. */
type Begin = (name: string) => void;

/** A browser with a profile of its own that does errands one after another; its log tells what each fetched. */
async function visit(
  url: string,
  keeps: boolean,
  errands: (page: Page, begin: Begin, context: BrowserContext) => Promise<void>,
): Promise<Errand[]> {
  const folder = await mkdtemp(path.join(tmpdir(), 'visitor-'));
  const log = path.join(folder, 'net-log.json');
  const begins: { name: string; at: number }[] = [];
  try {
    const context = await launchProfile(path.join(folder, 'profile'), {
      args: [...BROWSER_ARGUMENTS, `--log-net-log=${log}`],
      serviceWorkers: keeps ? 'allow' : 'block',
    });
    try {
      const [page] = context.pages();
      page.setDefaultTimeout(PATIENCE_MS);
      await errands(page, (name) => void begins.push({ name, at: Date.now() }), context);
      await page.waitForTimeout(REST_MS);
    } finally {
      await context.close();
    }
    const { transfers } = await readNetLog(log, new URL(url).origin);
    return begins.map(({ name, at }, i) => ({
      name,
      transfers: transfers.filter((one) => one.at >= at && one.at < (begins[i + 1]?.at ?? Infinity)),
    }));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** A visitor who looks, asks about other places, opens the nights, and comes again on another day; nothing is kept for offline. */
export function lookAround(url: string, codes: readonly [string, string]): Promise<Errand[]> {
  return visit(url, false, async (page, begin) => {
    begin('page, map and ranking of the first place');
    await page.goto(url);
    await untilRanked(page);
    await page.getByRole('application', { name: /^Map of / }).waitFor();
    begin('the map’s surface');
    const surface = page.getByText(/^Areas are estimated between stations/);
    const isThere = await surface.waitFor({ timeout: SURFACE_PATIENCE_MS }).then(
      () => true,
      () => false,
    );
    if (!isThere) begin(`(the surface was not done in ${SURFACE_PATIENCE_MS / 1000} s)`);
    await page.waitForTimeout(REST_MS);
    begin('another place, far away');
    await search(page, codes[0]);
    begin('nights opened: the database engine, and the life of a tree there');
    await page.getByRole('navigation').getByRole('link', { name: 'Life' }).click();
    const life = page.getByRole('region', { name: 'Life', exact: true });
    await life.getByRole('button', { name: 'Follow the trees' }).click();
    await life.getByRole('grid').first().waitFor();
    await page.waitForTimeout(REST_MS);
    begin('nights and life of one more place');
    await search(page, codes[1]);
    await page.waitForTimeout(REST_MS);
    begin('the same page on another day');
    await page.goto(url);
    await untilRanked(page);
    await page.waitForTimeout(REST_MS);
  });
}

/** A visitor whose browser keeps the page, and a pack that is small enough; a larger one is asked for. */
export function keepOffline(url: string, title: string, asks: boolean): Promise<Errand[]> {
  return visit(url, true, async (page, begin) => {
    begin('first visit with all that is kept unasked');
    await page.goto(url);
    await untilRanked(page);
    await page.locator('.masthead').getByText('Ready to work without network').waitFor();
    await page.waitForTimeout(REST_MS);
    if (!asks) return;
    begin('Keep for offline');
    await page.getByRole('navigation').getByRole('link', { name: 'Records' }).click();
    const row = page
      .getByRole('region', { name: 'Records', exact: true })
      .getByRole('row', { name: new RegExp(title) });
    await row.getByRole('button', { name: /^Keep for offline/ }).click();
    await row.getByText('today').waitFor();
  });
}

async function untilRanked(page: Page): Promise<void> {
  const ranking = page.getByRole('region', { name: 'Ranking', exact: true });
  await ranking
    .getByRole('button', { name: /: .+ in / })
    .first()
    .waitFor();
}

async function search(page: Page, code: string): Promise<void> {
  const box = page.getByRole('combobox', { name: 'Postcode, town or station' });
  await box.fill(code);
  await box.press('Enter');
  await page.waitForURL((address) => address.href.includes(code.split(' ').at(-1)!));
  await page.waitForTimeout(REST_MS);
  await untilRanked(page);
}
