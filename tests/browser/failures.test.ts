import type { Browser, BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import { openPart, rankingRows, siteAddress, startVisit, untilAnswered } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

type Damage = 'cut' | 'missing' | 'rubbish';

/** Spoils every request for addresses that fit until `mend` is called. */
function spoil(fits: RegExp, damage: Damage) {
  let whole = false;
  let spoiled = 0;
  return {
    before: async (context: BrowserContext): Promise<void> => {
      await context.route(fits, (route) => {
        if (whole) return route.continue();
        spoiled++;
        if (damage === 'cut') return route.abort('connectionreset');
        if (damage === 'missing')
          return route.fulfill({ status: 404, body: 'There is nothing at this address.' });
        return route.fulfill({ status: 200, body: 'not what it should be' });
      });
    },
    mend: (): void => void (whole = true),
    count: (): number => spoiled,
  };
}

describe('a download that fails', () => {
  for (const [what, fits, damage, sentence] of [
    ['the list of packs', /packs\/index\.json/, 'cut', /index\.json could not be reached/],
    ['the manifest', /pack\.json/, 'missing', /pack\.json could not be loaded: the server answered 404/],
    ['the list of stations', /stations\.json/, 'rubbish', /stations\.json arrived damaged/],
  ] as const) {
    it(`says so and tries again: ${what}, ${damage}`, async () => {
      const fault = spoil(fits, damage);
      const visit = await startVisit(browser, {}, fault.before);
      const { page } = visit;
      await page.goto(siteAddress());
      const alert = page.getByRole('alert').filter({ hasText: sentence });
      await alert.waitFor();
      expect(await rankingRows(page).count()).toBe(0);
      expect(fault.count()).toBeGreaterThan(0);
      fault.mend();
      await alert.getByRole('button', { name: 'Try again' }).click();
      await untilAnswered(page);
      expect(await page.getByRole('alert').count()).toBe(0);
      await visit.close();
    });
  }

  for (const [damage, sentence] of [
    ['cut', /n30w04[\d-]+\.arrow could not be reached/],
    ['missing', /n30w04[\d-]+\.arrow could not be loaded: the server answered 404/],
    ['rubbish', /n30w04[\d-]+\.arrow/],
  ] as const) {
    it(`says so and tries again: the winters, ${damage}; map and stations stay`, async () => {
      const fault = spoil(/\/winters\/.*\.arrow/, damage);
      const visit = await startVisit(browser, {}, fault.before);
      const { page } = visit;
      await page.goto(siteAddress());
      const alert = page.getByRole('alert').filter({ hasText: sentence });
      await alert.waitFor();
      await page.getByRole('application', { name: /^Map of / }).waitFor();
      expect(await rankingRows(page).count()).toBe(0);
      fault.mend();
      await alert.getByRole('button', { name: 'Try again' }).click();
      await untilAnswered(page);
      expect(await page.getByRole('alert').count()).toBe(0);
      await visit.close();
    });
  }

  it('says so and tries again: the database engine; the ranking is not touched', async () => {
    const fault = spoil(/duckdb.*\.wasm/, 'cut');
    const visit = await startVisit(browser, {}, fault.before);
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    const rows = await rankingRows(page).count();
    const records = await openPart(page, 'Records', (part) =>
      part.getByRole('button', { name: 'Open the database' }),
    );
    await records.getByRole('button', { name: 'Open the database' }).click();
    const alert = records.getByRole('alert').filter({ hasText: /database engine/ });
    await alert.waitFor();
    expect(await rankingRows(page).count()).toBe(rows);
    fault.mend();
    await alert.getByRole('button', { name: 'Try again' }).click();
    await records.getByRole('textbox', { name: 'Ask in SQL' }).waitFor({ timeout: 40_000 });
    await visit.close();
  });

  it('says so and tries again: the map’s code; the list of stations does its work', async () => {
    const fault = spoil(/assets\/Map-.*\.js/, 'cut');
    const visit = await startVisit(browser, {}, fault.before);
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    await page.getByText('The map could not be loaded.').waitFor();
    await page.getByText(/^All \d+ stations as a list$/).click();
    await page.getByRole('button', { name: 'Ewerbridge', exact: false }).first().waitFor();
    fault.mend();
    await page
      .getByRole('region', { name: 'Map of stations' })
      .getByRole('button', { name: 'Try again' })
      .click();
    await page.getByRole('application', { name: /^Map of / }).waitFor();
    await visit.close();
  });

  it('says so and offers the page anew: a part that an update took from the server', async () => {
    const fault = spoil(/assets\/MethodView-.*\.js/, 'missing');
    const visit = await startVisit(browser, {}, fault.before);
    const { page } = visit;
    await page.goto(siteAddress('?type=meyer_lemon'));
    await untilAnswered(page);
    await page.getByRole('navigation').getByRole('link', { name: 'Method' }).click();
    const part = page.getByRole('region', { name: 'Method', exact: true });
    await part.getByText('This part of the page could not be loaded.').waitFor();
    fault.mend();
    await part.getByRole('button', { name: 'Open the page anew' }).click();
    await untilAnswered(page);
    await openPart(page, 'Method', (anew) => anew.getByRole('heading', { level: 3 }));
    expect(new URL(page.url()).searchParams.get('type')).toBe('meyer_lemon');
    await visit.close();
  });
});
