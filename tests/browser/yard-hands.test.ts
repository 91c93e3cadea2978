import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { READY_YARDS } from '../../analysis/spot/ready-yards.ts';
import { yardFileText } from '../../analysis/spot/yard-file.ts';
import type { PlanPoint, Yard } from '../../analysis/spot/yard.ts';
import { launchChromium } from './chromium.ts';
import { siteAddress, startVisit } from './visit.ts';
import { HOUSE_YARD, loadYard, onScreen, openSpot, planOf, wallsIn, yardIn } from './yard-steps.ts';

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

describe('a picture underneath', () => {
  it('is scaled by two points, and leaves neither the page nor a trace in the address', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    const part = await openSpot(page);
    await loadYard(part, yardFileText(HOUSE_YARD));
    const plan = planOf(part);
    await part.getByText('A photo or sketch of your own underneath').click();
    await expect.poll(() => yardIn(page)?.name).toBe(HOUSE_YARD.name);
    const [address, asked] = [page.url(), visit.requested.length];
    const file = { name: 'sketch.png', mimeType: 'image/png', buffer: await page.screenshot() };
    const choose = part.locator('input[type=file][accept*=image]');
    await choose.setInputFiles(file);
    const width = part.getByRole('spinbutton', { name: 'Width of the picture' });
    await expect.poll(() => width.inputValue()).toBe('30');
    await part.getByRole('button', { name: 'Scale it by two points' }).click();
    await plan.scrollIntoViewIfNeeded();
    for (const at of [[5, 5], [15, 5]] as const) await page.mouse.click(...(await onScreen(plan, HOUSE_YARD, at))); // prettier-ignore
    await part.getByRole('spinbutton', { name: 'They lie apart' }).fill('20');
    await part.getByRole('button', { name: 'Set the scale' }).click();
    await expect.poll(async () => Math.round(Number(await width.inputValue()))).toBe(60);
    await choose.setInputFiles({ ...file, buffer: Buffer.from('no picture') });
    await part.getByRole('alert').filter({ hasText: 'sketch.png could not be opened' }).waitFor();
    expect(page.url()).toBe(address);
    const since = visit.requested.slice(asked).filter((url) => !url.startsWith('blob:'));
    expect(since.filter((url) => /sketch|upload/.test(url) || !url.startsWith(siteAddress()))).toEqual([]);
    await visit.close();
  });
});

describe('the field while a wall is dragged', () => {
  it('is painted anew at least 20 times a second', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    // A field is painted by one call of putImageData for its colours.
    await page.addInitScript(() => {
      const counts = { painted: 0 };
      Object.assign(window, { counts });
      const put = CanvasRenderingContext2D.prototype.putImageData;
      CanvasRenderingContext2D.prototype.putImageData = function (
        this: CanvasRenderingContext2D,
        ...args: unknown[]
      ) {
        const [image] = args as [ImageData];
        if (image.data[3] === 255 && image.data.at(-1) === 255 && image.width > 8) counts.painted++;
        return (put as (...all: unknown[]) => void).apply(this, args);
      } as typeof put;
    });
    const part = await openSpot(page);
    const yard: Yard = {
      ...READY_YARDS[0].yard,
      widthM: 40,
      depthM: 30,
      things: [
        ...READY_YARDS[0].yard.things,
        { id: 'wall-9', kind: 'wall', line: [[34, 4], [34, 12]], heightM: 2, masonry: true, open: false }, // prettier-ignore
      ],
    };
    await loadYard(part, yardFileText(yard));
    const plan = planOf(part);
    await part.getByRole('button', { name: /best spot 1/ }).waitFor();
    await plan.scrollIntoViewIfNeeded();
    const from = await onScreen(plan, yard, [34, 8]);
    await page.mouse.move(...from);
    await page.mouse.down();
    // The moves come from within the page: from outside each waits until the browser has shown the one before. The best
    // of three spans counts, since others may be at work on this machine.
    const rates = await page.evaluate(
      async ([x, y, spanMs]) => {
        const { counts } = window as unknown as { counts: { painted: number } };
        const plan = document.querySelector('#spot [role=application]')!;
        let turn = 0;
        const span = async (): Promise<number> => {
          const [before, start] = [counts.painted, performance.now()];
          for (; performance.now() - start < spanMs; turn += 1 / 8) {
            const at = { clientX: x - 60 + 60 * Math.cos(turn), clientY: y + 60 * Math.sin(turn) };
            plan.dispatchEvent(
              new PointerEvent('pointermove', { pointerId: 1, bubbles: true, buttons: 1, ...at }),
            );
            await new Promise((done) => setTimeout(done, 10));
          }
          return ((counts.painted - before) * 1000) / (performance.now() - start);
        };
        return [await span(), await span(), await span()];
      },
      [...from, 1500] as const,
    );
    await page.mouse.up();
    console.log(`fields painted a second while dragging: ${rates.map((rate) => rate.toFixed(0)).join(', ')}`);
    expect(Math.max(...rates)).toBeGreaterThanOrEqual(20);
    await visit.close();
  });
});
