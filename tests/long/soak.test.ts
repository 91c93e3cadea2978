import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';

import { launchChromium } from '../browser/chromium.ts';
import { siteAddress, startVisit, untilAnswered } from '../browser/visit.ts';
import { ERRANDS, PATIENCE_MS } from './errands.ts';
import { medianOf, MemoryMeter, type MemorySample } from './memory.ts';

/** How long the errands go on; `SOAK_MINUTES` shortens it while something is looked for. */
const MINUTES = Number(process.env.SOAK_MINUTES ?? 30);
/** The beginning, in which everything is loaded once, as a share of the whole: 5 of 30 minutes. */
const BEGINNING = MINUTES / 6;
/** Most that memory may grow after the beginning. */
const MOST_GROWTH = 1.2;

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium('--js-flags=--expose-gc');
});
afterAll(() => browser?.close());

/**
 * Errands over and over on one page that is never reloaded. All of them are done within the beginning; then memory after a
 * collection, as the median over a sixth of the time, may grow by a fifth at most.
 */
it(
  `goes through ${MINUTES} minutes of errands without growing`,
  async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    page.setDefaultTimeout(PATIENCE_MS);
    await page.goto(siteAddress());
    await untilAnswered(page);
    const meter = await MemoryMeter.of(browser, page);
    const samples: MemorySample[] = [];
    const began = performance.now();
    const minute = (): number => (performance.now() - began) / 60_000;
    let [done, turn] = [0, 0];
    for (; minute() < MINUTES; turn++) {
      for (const { name, run } of ERRANDS) {
        if (minute() >= MINUTES) break;
        await run(page, turn).catch((error: unknown) => {
          throw new Error(`${name}, turn ${turn}, minute ${minute().toFixed(1)}: ${String(error)}`);
        });
        done++;
      }
      samples.push(await meter.sample(minute()));
      console.log(line(samples.at(-1)!));
    }
    expect(visit.complaints).toEqual([]);
    const early = [BEGINNING * 0.8, BEGINNING * 2] as const;
    const late = [MINUTES - BEGINNING * 1.2, Infinity] as const;
    for (const quantity of ['heap', 'resident'] as const) {
      const [before, after] = [early, late].map((span) => medianOf(samples, span, quantity));
      console.log(
        `${quantity}: ${megabytes(before)} MB after the beginning, ${megabytes(after)} MB at the end (${(after / before).toFixed(3)} times), ${done} errands in ${turn} turns`,
      );
      expect(after / before, quantity).toBeLessThan(MOST_GROWTH);
    }
    await visit.close();
  },
  (MINUTES + 10) * 60_000,
);

function line({ minute, heap, resident, nodes, listeners }: MemorySample): string {
  return `minute ${minute.toFixed(1)}: heap ${megabytes(heap)} MB, processes ${megabytes(resident)} MB, ${nodes} nodes, ${listeners} listeners`;
}

function megabytes(bytes: number): string {
  return (bytes / 1e6).toFixed(1);
}
