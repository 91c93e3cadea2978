import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import { openPart, rankingRows, siteAddress, startVisit, untilAnswered, type Visit } from './visit.ts';

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
        if (whole) return route.fallback();
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

/** What stands while a download is missing, so that all that come after it are missing too. */
type Stage = readonly [what: string, fits: RegExp, damage: Damage, sentence: RegExp];
const BEFORE_THE_MAP: readonly Stage[] = [
  ['the list of packs', /packs\/index\.json/, 'cut', /index\.json could not be reached/],
  ['the manifest', /pack\.json/, 'missing', /pack\.json could not be loaded: the server answered 404/],
  ['the list of stations', /stations\.json/, 'rubbish', /stations\.json arrived damaged/],
];
const TILES = /\/winters\/.*\.arrow/;
const WINTERS: readonly Stage[] = [
  ['the winters', TILES, 'cut', /n30w04[\d-]+\.arrow could not be reached/],
  ['the winters', TILES, 'missing', /n30w04[\d-]+\.arrow could not be loaded: the server answered 404/],
  ['the winters', TILES, 'rubbish', /n30w04[\d-]+\.arrow/],
];

describe('a download that fails', () => {
  // All are spoiled from the start and mended one after another: each is the next thing that fails.
  const faults = [...BEFORE_THE_MAP, ...WINTERS].map(([, fits, damage]) => spoil(fits, damage));
  const engine = spoil(/duckdb.*\.wasm/, 'cut');
  const method = spoil(/assets\/MethodView-.*\.js/, 'missing');
  let visit: Visit;
  let page: Page;
  beforeAll(async () => {
    visit = await startVisit(browser, {}, async (context) => {
      // Of routes that fit, the one added last goes first.
      for (const { before } of [...faults, engine, method].reverse()) await before(context);
    });
    ({ page } = visit);
    await page.goto(siteAddress('?type=meyer_lemon'));
  });
  afterAll(() => visit.close());

  /** Mends it whatever came before, so that the next one is met. */
  async function expectToldAndRetried(
    i: number,
    sentence: RegExp,
    meanwhile: () => Promise<void>,
  ): Promise<void> {
    const alert = page.getByRole('alert').filter({ hasText: sentence });
    try {
      await alert.waitFor();
      expect(await rankingRows(page).count()).toBe(0);
      expect(faults[i].count()).toBeGreaterThan(0);
      await meanwhile();
    } finally {
      faults[i].mend();
      await page.getByRole('alert').getByRole('button', { name: 'Try again' }).click();
    }
    await expect.poll(() => alert.count()).toBe(0);
  }

  BEFORE_THE_MAP.forEach(([what, , damage, sentence], i) =>
    it(`says so and tries again: ${what}, ${damage}`, () =>
      expectToldAndRetried(i, sentence, () => Promise.resolve())),
  );

  WINTERS.forEach(([what, , damage, sentence], i) =>
    it(`says so and tries again: ${what}, ${damage}; map and stations stay`, () =>
      expectToldAndRetried(BEFORE_THE_MAP.length + i, sentence, () =>
        page.getByRole('application', { name: /^Map of / }).waitFor(),
      )),
  );

  it('answers once everything has come', async () => {
    await untilAnswered(page);
    expect(await page.getByRole('alert').count()).toBe(0);
  });

  it('says so and tries again: the database engine; the ranking is not touched', async () => {
    const rows = await rankingRows(page).count();
    const records = await openPart(page, 'Records', (part) =>
      part.getByRole('button', { name: 'Open the database' }),
    );
    await records.getByRole('button', { name: 'Open the database' }).click();
    const alert = records.getByRole('alert').filter({ hasText: /database engine/ });
    await alert.waitFor();
    expect(await rankingRows(page).count()).toBe(rows);
    engine.mend();
    await alert.getByRole('button', { name: 'Try again' }).click();
    await records.getByRole('textbox', { name: 'Ask in SQL' }).waitFor({ timeout: 40_000 });
  });

  it('says so and offers the page anew: a part that an update took from the server', async () => {
    await page.getByRole('navigation').getByRole('link', { name: 'Method' }).click();
    const part = page.getByRole('region', { name: 'Method', exact: true });
    await part.getByText('This part of the page could not be loaded.').waitFor();
    method.mend();
    await part.getByRole('button', { name: 'Open the page anew' }).click();
    await untilAnswered(page);
    await openPart(page, 'Method', (anew) => anew.getByRole('heading', { level: 3 }));
    expect(new URL(page.url()).searchParams.get('type')).toBe('meyer_lemon');
  });

  it('says so and tries again: the map’s code; the list of stations does its work', async () => {
    const fault = spoil(/assets\/Map-.*\.js/, 'cut');
    const other = await startVisit(browser, {}, fault.before);
    await other.page.goto(siteAddress());
    await untilAnswered(other.page);
    await other.page.getByText('The map could not be loaded.').waitFor();
    await other.page.getByText(/^All \d+ stations as a list$/).click();
    await other.page.getByRole('button', { name: 'Ewerbridge', exact: false }).first().waitFor();
    fault.mend();
    await other.page
      .getByRole('region', { name: 'Map of stations' })
      .getByRole('button', { name: 'Try again' })
      .click();
    await other.page.getByRole('application', { name: /^Map of / }).waitFor();
    await other.close();
  });
});
