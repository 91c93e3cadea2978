import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { READY_YARDS } from '../../analysis/spot/ready-yards.ts';
import { yardFileText } from '../../analysis/spot/yard-file.ts';
import type { Yard } from '../../analysis/spot/yard.ts';
import { launchChromium } from './chromium.ts';
import { startVisit } from './visit.ts';
import { loadYard, onScreen, openSpot, planOf } from './yard-steps.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

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
