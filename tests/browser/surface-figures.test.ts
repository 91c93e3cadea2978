import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';

import { CELL_TOLD } from '../../analysis/answer/place-cells.ts';
import { seededRandom } from '../../analysis/math/seeded-random.ts';
import { cellCentre } from '../../analysis/records/grid.ts';
import { launchChromium } from './chromium.ts';
import { commandAnswer } from './command-answer.ts';
import { SURFACE_PATIENCE_MS } from './surface-part.ts';
import { siteAddress, startVisit, untilAnswered } from './visit.ts';

const POINTS = 10;
/** Commands at the same time, as many as the machine has cores for. */
const AT_ONCE = 2;
const TYPE = 'satsuma_owari';
const LEVEL = 'leaf';

/** A surface as the worker sent it, arrays as plain numbers. */
interface Sent {
  readonly columns: number;
  readonly rows: number;
  readonly west: number;
  readonly south: number;
  readonly stepLonDeg: number;
  readonly stepLatDeg: number;
  readonly periods: number[];
  readonly states: number[];
}
declare global {
  interface Window {
    sent: Sent[];
  }
}

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** Keeps every surface that a worker sends to the page. */
function keepSurfaces(): void {
  window.sent = [];
  const heard = new WeakSet<Worker>();
  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (this: Worker, message: unknown, ...rest: never[]) {
    if (!heard.has(this)) {
      heard.add(this);
      this.addEventListener('message', ({ data }: MessageEvent<{ answer?: { periods?: Float32Array } }>) => {
        if (!data.answer?.periods) return;
        const answer = data.answer as unknown as Omit<Sent, 'periods' | 'states'> & {
          periods: Float32Array;
          states: Uint8Array;
        };
        window.sent.push({ ...answer, periods: [...answer.periods], states: [...answer.states] });
      });
    }
    return post.call(this, message, ...rest);
  };
}

/** What the command says of a point: the fitted period at the type's level. */
async function assessAt(lat: number, lon: number): Promise<number | null> {
  const { types } = await commandAnswer(`--at=${lat},${lon}`, '--types', TYPE, '--level', LEVEL);
  return types[0].levels[0].fitted?.period ?? null;
}

it('is the same surface as assess --at tells at ten random points', { timeout: 180_000 }, async () => {
  const visit = await startVisit(browser);
  await visit.page.addInitScript(keepSurfaces);
  await visit.page.goto(siteAddress(`?type=${TYPE}&level=${LEVEL}`));
  await untilAnswered(visit.page);
  await visit.page.waitForFunction(() => window.sent.length > 0, null, { timeout: SURFACE_PATIENCE_MS });
  const surface = (await visit.page.evaluate(() => window.sent[0]))!;
  const told = surface.states.flatMap((state, cell) => (state === CELL_TOLD ? [cell] : []));
  expect(told.length).toBeGreaterThan(8000);
  const random = seededRandom(20);
  const cells = Array.from({ length: POINTS }, () => told[random.index(told.length)]);
  const compare = async (): Promise<void> => {
    const cell = cells.pop();
    if (cell === undefined) return;
    const { lat, lon } = cellCentre(surface, cell);
    const period = await assessAt(lat, lon);
    expect(period, `${lat}, ${lon}`).not.toBeNull();
    expect(surface.periods[cell] / period!, `${lat}, ${lon}`).toBeCloseTo(1, 6);
    compared++;
    return compare();
  };
  let compared = 0;
  await Promise.all(Array.from({ length: AT_ONCE }, compare));
  expect(compared).toBe(POINTS);
});
