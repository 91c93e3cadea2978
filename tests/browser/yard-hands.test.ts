import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import type { PlanPoint } from '../../analysis/spot/yard.ts';
import { launchChromium } from './chromium.ts';
import { startVisit } from './visit.ts';
import { onScreen, openSpot, planOf, wallsIn, yardIn } from './yard-steps.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

describe('with a finger', () => {
  it('draws a wall, drags it once it is selected, and scrolls the page elsewhere', async () => {
    const visit = await startVisit(browser, {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    const { page, context } = visit;
    const part = await openSpot(page);
    await part.getByRole('button', { name: 'Draw on this plot' }).click();
    const plan = planOf(part);
    await expect.poll(() => yardIn(page)?.widthM).toBe(24);
    const plot = yardIn(page)!;
    await part.getByRole('radio', { name: 'Masonry wall', exact: true }).check({ force: true });
    await plan.evaluate((node) => node.scrollIntoView({ block: 'center', behavior: 'instant' }));
    const device = await context.newCDPSession(page);
    const swipe = async (from: PlanPoint, to: PlanPoint): Promise<void> => {
      const [[x0, y0], [x1, y1]] = [await onScreen(plan, plot, from), await onScreen(plan, plot, to)];
      const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', share: number): Promise<unknown> =>
        device.send('Input.dispatchTouchEvent', {
          type,
          touchPoints: type === 'touchEnd' ? [] : [{ x: x0 + (x1 - x0) * share, y: y0 + (y1 - y0) * share }],
        });
      await touch('touchStart', 0);
      for (let step = 1; step <= 6; step++) await touch('touchMove', step / 6);
      await touch('touchEnd', 1);
    };
    const scrolled = (): Promise<number> => page.evaluate(() => scrollY);
    await swipe([5, 12], [15, 12]);
    await expect.poll(() => wallsIn(page)[0]?.line).toEqual([[5, 12], [15, 12]]); // prettier-ignore
    const before = await scrolled();
    await swipe([8, 12], [8, 8]);
    await expect.poll(() => wallsIn(page)[0]?.line).toEqual([[5, 8], [15, 8]]); // prettier-ignore
    expect(await scrolled()).toBe(before);
    await swipe([20, 4], [20, 14]);
    await expect.poll(scrolled).toBeGreaterThan(before);
    expect(wallsIn(page)[0].line).toEqual([[5, 8], [15, 8]]); // prettier-ignore
    await visit.close();
  });
});
