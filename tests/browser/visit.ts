import type { Browser, BrowserContext, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { inject } from 'vitest';

/** How long a single step on the page may take, ms; the machine may be busy with other things. */
export const PATIENCE_MS = 15_000;

/** One reader with a fresh browser profile: the page, and everything it asked for or complained about. */
export interface Visit {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Addresses of all requests so far, those of workers included. */
  readonly requested: readonly string[];
  /** Errors and warnings of the console, and errors nobody caught. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

/** Address of the built page with a query: `siteAddress('?unit=C')`. */
export function siteAddress(query = ''): string {
  return inject('siteUrl') + query;
}

/** Text with single spaces. */
export const plain = (text: string | null): string => (text ?? '').replace(/\s+/g, ' ').trim();

/** Opens a profile that refuses every address but the site's own; `before` may add routes. */
export async function startVisit(
  browser: Browser,
  options: BrowserContextOptions = {},
  before: (context: BrowserContext) => Promise<void> = async () => {},
): Promise<Visit> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    locale: 'en-US',
    reducedMotion: 'reduce',
    // What a worker answers from its cache is no request any more; tests of the page without network let it in.
    serviceWorkers: 'block',
    ...options,
  });
  const site = new URL(inject('siteUrl')).origin;
  await context.route(
    (url) => url.protocol.startsWith('http') && url.origin !== site,
    (route) => route.abort(),
  );
  await before(context);
  const requested: string[] = [];
  const complaints: string[] = [];
  context.on('request', (request) => requested.push(request.url()));
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  page.on('console', (message) => {
    // The software renderer tells of its own speed; that is nothing of the page's.
    if (message.text().includes('GL Driver Message')) return;
    if (message.text() === 'Service Worker registration blocked by Playwright') return;
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  return { context, page, requested, complaints, close: () => context.close() };
}

/** The rows of the ranking; each button's name tells its type and answer. */
export function rankingRows(page: Page): Locator {
  return page
    .getByRole('region', { name: 'Ranking', exact: true })
    .getByRole('button', { name: /: .+ counted in / });
}

/** The row of one type. */
export function rankingRow(page: Page, typeName: string): Locator {
  return page
    .getByRole('region', { name: 'Ranking', exact: true })
    .getByRole('button', { name: new RegExp(`^${typeName}.*: `) });
}

/** The map, once it may be used. */
export function mapOfStations(page: Page): Locator {
  return page.getByRole('application', { name: /^Map of \d+ stations/ });
}

/** Waits until the answer of the place stands and the ranking is filled. */
export async function untilAnswered(page: Page): Promise<void> {
  await rankingRows(page).first().waitFor({ timeout: 20_000 });
  await expectCalm(page);
}

/**
 * Goes on to another address within the open page, as Back and Forward do: a visit opened anew costs seconds. What is in
 * the page beside its address stays.
 */
export async function turnTo(page: Page, query: string): Promise<void> {
  await page.evaluate((to) => {
    history.pushState(null, '', to);
    dispatchEvent(new PopStateEvent('popstate'));
  }, siteAddress(query));
  await expectCalm(page);
}

/** Waits until no answer is being worked out. */
export async function expectCalm(page: Page): Promise<void> {
  const working = page.getByRole('status').filter({ hasText: 'Working out the answer.' });
  await working.first().waitFor({ state: 'detached', timeout: 20_000 });
}

/** Later parts of the page, by their names. */
type LaterPart =
  | 'Which to plant'
  | 'Winters'
  | 'Spot'
  | 'Cover'
  | 'Life'
  | 'Year'
  | 'Sheet'
  | 'Desk'
  | 'Compare'
  | 'Records'
  | 'Method';

/** Scrolls to one of the later parts and waits for its view; `ready` is something only the view has. */
export async function openPart(
  page: Page,
  name: LaterPart,
  ready: (part: Locator) => Locator,
): Promise<Locator> {
  await page.getByRole('navigation').getByRole('link', { name }).click();
  const part = page.getByRole('region', { name, exact: true });
  await ready(part).first().waitFor({ timeout: 20_000 });
  return part;
}

/** Looks at the page in its light colours, then in its dark ones. */
export async function inBothSchemes(
  page: Page,
  look: (scheme: 'light' | 'dark') => Promise<void>,
): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await look(colorScheme);
  }
}

/** The winters' chart, a slider over the winters. */
export function winterSlider(page: Page): Locator {
  return page.getByRole('slider', { name: /: coldest of each winter$/ });
}
