import type { Locator, Page } from 'playwright-core';
import { vi } from 'vitest';

import { readYardText } from '../../analysis/spot/yard-text.ts';
import type { PlanPoint, Wall, Yard } from '../../analysis/spot/yard.ts';
import { MARGIN_PX } from '../../web/yard/plan-scale.ts';
import { siteAddress, untilAnswered } from './visit.ts';

const BETWEEN_LOOKS_MS = 150;
const LOOKS_AT_MOST = 40;

/** Where the yards lie. */
export const PLACE = '?postcode=SC 123&unit=C';

/** A house on an open plot: nothing but its own walls makes a corner mild. */
export const HOUSE_YARD: Yard = {
  name: 'House alone',
  widthM: 30,
  depthM: 24,
  things: [
    {
      id: 'building-1',
      kind: 'building',
      outline: [
        [10, 12],
        [20, 12],
        [20, 18],
        [10, 18],
      ],
      heightM: 5,
      heated: true,
      masonry: true,
    },
  ],
  spots: [],
  slope: null,
  bigWater: null,
  coldWindFromDeg: 0,
  own: {},
};

export async function openSpot(page: Page, query = PLACE): Promise<Locator> {
  await page.goto(siteAddress(query));
  await untilAnswered(page);
  return showSpot(page);
}

/** Scrolls to the section and waits for its view. */
export async function showSpot(page: Page): Promise<Locator> {
  const part = page.getByRole('region', { name: 'Spot', exact: true });
  const heading = part.getByRole('heading', { name: /^The yard/ });
  // What stands above may still grow and push the section out of reach.
  const isNear = async (): Promise<boolean> => {
    await page.evaluate(() => document.querySelector('#spot')!.scrollIntoView({ behavior: 'instant' }));
    return heading.isVisible();
  };
  await vi.waitUntil(isNear, { timeout: 30_000, interval: 100 });
  return part;
}

/** Loads a yard by the file chooser, as a reader does. */
export async function loadYard(part: Locator, text: string, name = 'test.yard.json'): Promise<void> {
  const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
  await part.locator('input[type=file][accept*=json]').setInputFiles(file);
}

export const planOf = (part: Locator): Locator =>
  part.getByRole('application', { name: /^Plan of the yard/ });

/** The plan's box once it rests: what stands above may still grow. */
async function restingBox(plan: Locator): Promise<{ x: number; y: number; width: number; height: number }> {
  for (let last = '', looks = 0; ; looks++) {
    await plan.scrollIntoViewIfNeeded();
    const box = (await plan.boundingBox())!;
    if (JSON.stringify(box) === last || looks === LOOKS_AT_MOST) return box;
    last = JSON.stringify(box);
    await plan.page().waitForTimeout(BETWEEN_LOOKS_MS);
  }
}

/** Where a point of the plot lies on the screen; the plot's layout reckoned here anew. */
export async function onScreen(
  plan: Locator,
  yard: Pick<Yard, 'widthM' | 'depthM'>,
  at: PlanPoint,
): Promise<[number, number]> {
  const box = await restingBox(plan);
  const pxPerM = (box.height - 2 * MARGIN_PX) / yard.depthM;
  const left = box.x + (box.width - yard.widthM * pxPerM) / 2;
  return [left + at[0] * pxPerM, box.y + box.height - MARGIN_PX - at[1] * pxPerM];
}

export async function drag(
  page: Page,
  from: [number, number],
  to: [number, number],
  steps = 6,
): Promise<void> {
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move(...to, { steps });
  await page.mouse.up();
}

export const yardIn = (page: Page): Yard | null => {
  const text = new URL(page.url()).searchParams.get('yard');
  return text === null ? null : readYardText(text);
};
export const wallsIn = (page: Page): readonly Wall[] =>
  (yardIn(page)?.things ?? []).filter((thing): thing is Wall => thing.kind === 'wall');
