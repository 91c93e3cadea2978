import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { readArea } from '../../../web/state/place-text.ts';
import { PackAnswers } from '../../../web/workers/pack-answers.ts';
import { WinterTiles } from '../../../web/workers/winter-tiles.ts';
import { launchChromium } from '../../browser/chromium.ts';
import { openCompare } from '../../browser/compare-part.ts';
import { SURFACE_PATIENCE_MS, TEST_MS } from '../../browser/surface-part.ts';
import {
  mapOfStations,
  siteAddress,
  startVisit,
  turnTo,
  untilAnswered,
  type Visit,
} from '../../browser/visit.ts';

const TYPE = 'satsuma_owari';

/** One visit; drawing on the map comes first, as nothing has moved the page yet. */
let browser: Browser;
let visit: Visit;
let page: Page;
beforeAll(async () => {
  browser = await launchChromium();
  visit = await startVisit(browser);
  ({ page } = visit);
  await page.goto(siteAddress('?postcode=SC 123'));
  await untilAnswered(page);
});
afterAll(() => browser.close());

/** Is a point inside, by crossings of a ray to the east; written here anew. */
function inside(corners: readonly { lat: number; lon: number }[], lat: number, lon: number): boolean {
  let crossings = 0;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length];
    if (a.lat > lat === b.lat > lat) return;
    if (lon < a.lon + ((lat - a.lat) / (b.lat - a.lat)) * (b.lon - a.lon)) crossings++;
  });
  return crossings % 2 === 1;
}

/** A period with two figures, written here anew: 1.4, 12, 130. */
function twoFigures(period: number): string {
  if (period >= 99.5) return String(Math.round(period / 10) * 10);
  return period < 9.95 ? String(Number(period.toFixed(1))) : String(Math.round(period));
}

async function spreadInNode(areaText: string): Promise<{ cells: number; tenths: string[] }> {
  const packUrl = siteAddress('packs/sallowmere/');
  const answers = new PackAnswers(await WinterTiles.open(packUrl, (url) => fetch(url)));
  const surface = (await answers.surface(
    { packUrl, protection: null, tree: MATURE_TREE, typeId: TYPE, level: 'wood', winters: 'all' },
    async () => false,
  ))!;
  const corners = readArea(areaText)!;
  const periods: number[] = [];
  surface.states.forEach((state, i) => {
    const lat = surface.south + Math.floor(i / surface.columns) * surface.stepLatDeg;
    const lon = surface.west + (i % surface.columns) * surface.stepLonDeg;
    if (state !== 1 || !inside(corners, lat, lon)) return;
    periods.push(Math.min(surface.periods[i], surface.longestClaims[i]));
  });
  periods.sort((a, b) => a - b);
  const quantile = (share: number): number => {
    const at = (periods.length - 1) * share;
    const low = Math.floor(at);
    return periods[low] + (at - low) * (periods[Math.min(low + 1, periods.length - 1)] - periods[low]);
  };
  return { cells: periods.length, tenths: [0.1, 0.5, 0.9].map((share) => twoFigures(quantile(share))) };
}

describe('an area', () => {
  const told = (part: Locator, term: string): Promise<string | null> =>
    part.getByRole('term').filter({ hasText: term }).locator('+ dd').textContent();

  it(
    'is drawn by clicks on the map, which choose no place meanwhile',
    async () => {
      await turnTo(page, '?postcode=SC 123');
      const map = mapOfStations(page);
      await map.waitFor();
      await page.getByRole('button', { name: 'Draw an area' }).click();
      const bar = page.getByRole('group', { name: 'Drawing an area' });
      await bar.waitFor();
      expect(await bar.getByRole('button', { name: 'Done' }).isDisabled()).toBe(true);
      const box = (await map.boundingBox())!;
      for (const [right, down] of [
        [0.25, 0.35],
        [0.6, 0.4],
        [0.45, 0.65],
        [0.3, 0.6],
      ]) {
        await page.mouse.click(box.x + box.width * right, box.y + box.height * down);
      }
      await bar.getByText('4 corners set.').waitFor();
      await bar.getByRole('button', { name: 'Undo' }).click();
      await bar.getByText('3 corners set.').waitFor();
      await bar.getByRole('button', { name: 'Done' }).click();
      const query = new URL(page.url()).searchParams;
      expect(readArea(query.get('area')!)).toHaveLength(3);
      expect(query.get('postcode')).toBe('SC 123');
      expect(await bar.count()).toBe(0);
      expect(visit.complaints).toEqual([]);
    },
    TEST_MS,
  );

  it(
    'from a square by keyboard to its spread, as Node has it from the same pack, and to a place',
    async () => {
      await turnTo(page, '?postcode=SC 123');
      const part = await openCompare(page);
      await part.getByRole('button', { name: /^A square around SC 123/ }).focus();
      await page.keyboard.press('Enter');
      await part.getByText('Coldest tenth', { exact: true }).waitFor({ timeout: SURFACE_PATIENCE_MS });
      await part.getByText('Its 4 corners as figures').focus();
      await page.keyboard.press('Enter');
      const corner = part.getByRole('spinbutton', { name: /north.*corner 3/ });
      const before = new URL(page.url()).searchParams.get('area')!;
      await corner.focus();
      for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowUp');
      await page.keyboard.press('Tab');
      const area = new URL(page.url()).searchParams.get('area')!;
      expect(readArea(area)![2].lat).toBeGreaterThan(readArea(before)![2].lat + 0.03);

      const expected = await spreadInNode(area);
      expect(expected.cells).toBeGreaterThan(5);
      await expect.poll(() => told(part, 'Told from')).toBe(`${expected.cells} cells of land, all answered`);
      const shown = ['Coldest tenth', 'Middle', 'Mildest tenth'].map((term) => told(part, term));
      expect((await Promise.all(shown)).map((text) => text?.replace(/^.*1 in /, ''))).toEqual(
        expected.tenths,
      );

      await part.getByRole('button', { name: 'Use this spot' }).click();
      const [lat, lon] = new URL(page.url()).searchParams.get('at')!.split(',').map(Number);
      expect(inside(readArea(area)!, lat, lon)).toBe(true);
      await page.reload();
      await untilAnswered(page);
      expect(new URL(page.url()).searchParams.get('area')).toBe(area);
    },
    TEST_MS,
  );
});
