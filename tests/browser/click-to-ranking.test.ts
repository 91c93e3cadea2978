import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import { mapOfStations, siteAddress, startVisit, untilAnswered } from './visit.ts';

/** Design section 8: 150 ms. The test asserts a generous bound, since the machine is shared, and prints what it took. */
const PATIENCE_MS = 1000;
/** Places on the map as shares of its width and height: a grid over the region. */
const SPOTS = [0.15, 0.4, 0.65, 0.9].flatMap((right) => [0.14, 0.36, 0.58, 0.8].map((down) => [right, down]));

/** A message to the worker, as far as this test looks into it. */
interface Asked {
  readonly kind: string;
  readonly question: { readonly place?: { readonly label?: string } };
}
declare global {
  interface Window {
    asked: Asked[];
    clickedAt: number;
    changedAt: number;
  }
}

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** Notes what the page asks of its worker, and when a click's button came up. */
function listen(): void {
  window.asked = [];
  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (this: Worker, message: Asked, ...rest: never[]) {
    if (message?.kind && message.question) window.asked.push(message);
    return post.call(this, message, ...rest);
  };
  window.addEventListener('pointerup', () => (window.clickedAt = performance.now()), true);
}

/** Clicks a place and waits until all has been still for a while: ms from the button to its last change. */
async function click(page: Page, x: number, y: number): Promise<{ ms: number; asked: Asked[] }> {
  await page.mouse.move(x, y);
  await page.waitForTimeout(300);
  await page.evaluate(() => {
    window.asked = [];
    window.changedAt = 0;
    const observer = new MutationObserver(() => (window.changedAt = performance.now()));
    const options = { subtree: true, childList: true, characterData: true, attributes: true };
    observer.observe(document.querySelector('#ranking')!, options);
  });
  await page.mouse.down();
  await page.mouse.up();
  await page.waitForTimeout(PATIENCE_MS);
  return page.evaluate(() => ({ ms: window.changedAt - window.clickedAt, asked: window.asked }));
}

describe('a click on the map', () => {
  it('changes the whole ranking at once, asks for that place alone and fetches nothing it has', async () => {
    const visit = await startVisit(browser, {}, async (context) => {
      await context.addInitScript(listen);
    });
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    await page.waitForLoadState('networkidle');
    await page.waitForTimeout(3000);
    const box = (await mapOfStations(page).locator('canvas').boundingBox())!;
    const before = visit.requested.length;
    const times: number[] = [];
    const places = new Set<string>();
    for (const [right, down] of SPOTS) {
      const { ms, asked } = await click(page, box.x + box.width * right, box.y + box.height * down);
      // A pointer at rest asks about its point too, in the map's own worker, and gives it no name.
      const questions = asked.filter(
        ({ kind, question }) => kind === 'assess' && question.place?.label !== '',
      );
      if (questions.length === 0) continue;
      expect(questions).toHaveLength(1);
      expect(asked.map(({ kind }) => kind)).not.toContain('stationPeriods');
      const place = JSON.stringify(questions[0].question);
      // Only places asked about for the first time: their fits are still to be made.
      if (!places.has(place)) times.push(ms);
      places.add(place);
    }
    expect(times.length).toBeGreaterThanOrEqual(10);
    // Parts further down may come as the ranking grows or shrinks; records of the pack may not.
    expect(visit.requested.slice(before).filter((url) => url.includes('/packs/'))).toEqual([]);
    times.sort((a, b) => a - b);
    const median = times[Math.floor(times.length / 2)];
    console.log(
      `Click to ranking at ${times.length} places: median ${Math.round(median)} ms, ` +
        `${Math.round(times[0])} to ${Math.round(times.at(-1)!)} ms (at most 150 ms by design).`,
    );
    expect(times[0]).toBeGreaterThan(0);
    expect(median).toBeLessThan(PATIENCE_MS);
    await visit.close();
  }, 120_000);
});
