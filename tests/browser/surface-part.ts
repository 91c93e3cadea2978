import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';

import { mapOfStations, siteAddress, startVisit, untilAnswered, type Visit } from './visit.ts';

/** The first surface takes seconds, more where the machine is busy. */
export const SURFACE_PATIENCE_MS = 90_000;
/** How long a test with several surfaces may take, ms. */
export const TEST_MS = 150_000;

/** Visits the page and waits for its answer and its surface. */
export async function visitMap(
  browser: Browser,
  query: string,
  options: BrowserContextOptions = {},
): Promise<Visit> {
  const visit = await startVisit(browser, options);
  await visit.page.goto(siteAddress(query));
  await untilAnswered(visit.page);
  await untilSurface(visit.page);
  return visit;
}

/** Waits for the surface, newest and with crisp bands. */
export async function untilSurface(page: Page): Promise<void> {
  await page.getByText(/^Areas are estimated between stations/).waitFor({ timeout: SURFACE_PATIENCE_MS });
  const working = page.getByText('Working out the map');
  await working.first().waitFor({ state: 'detached', timeout: SURFACE_PATIENCE_MS });
  await untilAtRest(page);
}

/** Longer than the map waits for a resting hand before its bands get crisp edges. */
const REST_MS = 300;

/** Waits until the map's picture has stayed the same, frame by frame, for a while. */
function untilAtRest(page: Page): Promise<void> {
  return mapOfStations(page)
    .locator('canvas')
    .evaluate(
      (canvas, restMs) =>
        new Promise<void>((done) => {
          const copy = document.createElement('canvas');
          copy.width = copy.height = 96;
          const pen = copy.getContext('2d', { willReadFrequently: true })!;
          let [seen, since] = ['', 0];
          const look = (now: number): void => {
            pen.drawImage(canvas as HTMLCanvasElement, 0, 0, copy.width, copy.height);
            const shown = pen.getImageData(0, 0, copy.width, copy.height).data.join();
            if (shown !== seen) [seen, since] = [shown, now];
            if (now - since >= restMs) done();
            else requestAnimationFrame(look);
          };
          requestAnimationFrame(look);
        }),
      REST_MS,
    );
}

/** The areas' entries in the legend. */
export const areas = (page: Page): Locator =>
  page.getByRole('list', { name: 'Areas, estimated between stations' });

/** Share of the map's pixels in the very colour that the legend gives a class. */
export async function shareOf(page: Page, label: string | RegExp): Promise<number> {
  const swatch = areas(page).getByRole('listitem').filter({ hasText: label }).locator('rect').first();
  const fill = await swatch.evaluate((rect) => getComputedStyle(rect).fill);
  return mapOfStations(page)
    .locator('canvas')
    .evaluate((canvas, colour) => {
      const [r, g, b] = colour.match(/[\d.]+/g)!.map(Number);
      const copy = document.createElement('canvas');
      [copy.width, copy.height] = [(canvas as HTMLCanvasElement).width, (canvas as HTMLCanvasElement).height];
      const pen = copy.getContext('2d')!;
      pen.drawImage(canvas as HTMLCanvasElement, 0, 0);
      const { data } = pen.getImageData(0, 0, copy.width, copy.height);
      let found = 0;
      for (let i = 0; i < data.length; i += 4) {
        const off = Math.abs(data[i] - r) + Math.abs(data[i + 1] - g) + Math.abs(data[i + 2] - b);
        if (off <= 4) found++;
      }
      return found / (data.length / 4);
    }, fill);
}

/** What the map says of the point that is read. */
export const said = (page: Page): Locator => page.locator('figure [role="status"]');
