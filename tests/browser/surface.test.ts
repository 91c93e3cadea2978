import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { launchChromium } from './chromium.ts';
import { areas, shareOf, TEST_MS, untilSurface } from './surface-part.ts';
import { mapOfStations, siteAddress, startVisit, turnTo, untilAnswered, type Visit } from './visit.ts';

/** Design section 8: 150 ms. The test asserts a generous bound, since the machine is shared, and prints what it took. */
const REPAINT_PATIENCE_MS = 1500;

/** One map, asked one thing after another. */
let browser: Browser;
let visit: Visit;
let page: Page;
beforeAll(async () => {
  browser = await launchChromium();
  visit = await startVisit(browser);
  ({ page } = visit);
});
afterAll(() => browser.close());

/** Colour of one pixel of the map, at shares of its width and height. */
async function pixel(page: Page, right: number, down: number): Promise<string> {
  return mapOfStations(page)
    .locator('canvas')
    .evaluate(
      (canvas, [x, y]) => {
        const copy = document.createElement('canvas');
        copy.width = copy.height = 1;
        const source = canvas as HTMLCanvasElement;
        const pen = copy.getContext('2d')!;
        pen.drawImage(source, -Math.round(source.width * x), -Math.round(source.height * y));
        return [...pen.getImageData(0, 0, 1, 1).data].join();
      },
      [right, down],
    );
}

/** Open sea in the south-east of the demo region, and a plain of its land. */
const SEA = [0.72, 0.93] as const;
const PLAIN = [0.22, 0.66] as const;

describe('the surface', { timeout: TEST_MS }, () => {
  it('colours the land as its legend says and leaves the sea as it was', async () => {
    await page.goto(siteAddress('?type=meyer_lemon&level=wood&unit=F'));
    await untilAnswered(page);
    await page.getByText('The land between them is being worked out').waitFor({ timeout: 20_000 });
    const before = { sea: await pixel(page, ...SEA), land: await pixel(page, ...PLAIN) };
    await untilSurface(page);
    const after = { sea: await pixel(page, ...SEA), land: await pixel(page, ...PLAIN) };
    expect(after.sea).toBe(before.sea);
    expect(after.land).not.toBe(before.land);
    expect(await shareOf(page, '1 in 2 to 1 in 5')).toBeGreaterThan(0.1);
    expect(await shareOf(page, '1 in 5 to 1 in 10')).toBeGreaterThan(0.02);
    expect(visit.complaints).toEqual([]);
  });

  it('the pointer reads a cell with its nearest station, a click chooses the point itself', async () => {
    const box = (await mapOfStations(page).locator('canvas').boundingBox())!;
    const [x, y] = [box.x + box.width * PLAIN[0], box.y + box.height * PLAIN[1]];
    await page.mouse.move(x, y);
    const source = page.getByText(/^estimated; nearest station .+, [\d.]+\u00a0mi$/);
    await source.waitFor();
    await page.mouse.move(box.x + box.width * SEA[0], box.y + box.height * SEA[1]);
    await source.waitFor({ state: 'detached' });
    await page.mouse.click(x, y);
    await page.getByRole('heading', { level: 1, name: /At \d+\.\d\d° N, \d+\.\d\d° W/ }).waitFor();
    expect(new URL(page.url()).searchParams.get('at')).toMatch(/^3\d\.\d+,-4\d\.\d+$/);
  });

  it('says in the legend what is asked, of which cold and winters, in the unit of the page', async () => {
    const legend = page.locator('figure figcaption');
    expect(await legend.innerText()).toMatch(
      /Meyer lemon, wood: about one winter in how many, winters \d{4}–\d\d to \d{4}–\d\d \(cold of 22\s°F for 4 h\)/,
    );
    expect(await areas(page).getByRole('listitem').count()).toBeGreaterThanOrEqual(6);
    await page.getByRole('radio', { name: '°C' }).check({ force: true });
    // 22 °F is -5.56 °C.
    await expect.poll(() => legend.innerText()).toMatch(/cold of −5\.6\s°C for 4 h/);
    await page.getByLabel('from which winters').selectOption('last30');
    await untilSurface(page);
    await expect.poll(() => legend.innerText()).toMatch(/about one winter in how many, the last 30 winters/);
    expect(new URL(page.url()).searchParams.get('map-winters')).toBe('last30');
  });

  it('print takes the map along in light colours, with the legend', async () => {
    await untilSurface(page);
    await page.emulateMedia({ colorScheme: 'dark' });
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    const colours = await page.locator('figure img').evaluate(async (img: HTMLImageElement) => {
      await img.decode();
      const copy = document.createElement('canvas');
      [copy.width, copy.height] = [img.naturalWidth, img.naturalHeight];
      const pen = copy.getContext('2d')!;
      pen.drawImage(img, 0, 0);
      const { data } = pen.getImageData(0, 0, copy.width, copy.height);
      const counts = new Map<string, number>();
      for (let i = 0; i < data.length; i += 4) {
        const key = `${data[i]},${data[i + 1]},${data[i + 2]}`;
        counts.set(key, (counts.get(key) ?? 0) + 1);
      }
      return Object.fromEntries([...counts].map(([key, count]) => [key, count / (data.length / 4)]));
    });
    // Step 5 of the cold ramp in light colours, #2f6a86: one winter in 2 to 5.
    expect(colours['47,106,134']).toBeGreaterThan(0.1);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByText(/^Areas are estimated between stations/).isVisible()).toBe(true);
    expect(await page.getByRole('group', { name: 'What the map shows' }).isVisible()).toBe(false);
  });

  it('is repainted as the slider of the tree’s age moves', async () => {
    // On screen again after the test before.
    await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
    await turnTo(page, '?type=satsuma_owari&level=wood');
    await untilSurface(page);
    const mature = await shareOf(page, '1 in 2 to 1 in 5');
    const slider = page.getByRole('slider', { name: 'Years since planting' });
    // One look a frame at a few hundred pixels of the land: the frame in which they differ is the repaint.
    const repaint = (value: number): Promise<number> =>
      slider.evaluate(
        (input: HTMLInputElement, [wanted, patience]) =>
          new Promise<number>((resolve) => {
            const canvas = document.querySelector<HTMLCanvasElement>('[role="application"] canvas')!;
            const copy = document.createElement('canvas');
            copy.width = copy.height = 24;
            const pen = copy.getContext('2d', { willReadFrequently: true })!;
            const look = (): string => {
              pen.drawImage(canvas, 0, 0, canvas.width * 0.5, canvas.height * 0.6, 0, 0, 24, 24);
              return pen.getImageData(0, 0, 24, 24).data.join();
            };
            const before = look();
            const began = performance.now();
            input.value = String(wanted);
            input.dispatchEvent(new Event('input', { bubbles: true }));
            const wait = (): void => {
              const ms = performance.now() - began;
              if (look() !== before || ms > patience) resolve(ms);
              else requestAnimationFrame(wait);
            };
            requestAnimationFrame(wait);
          }),
        [value, REPAINT_PATIENCE_MS] as const,
      );
    const times: number[] = [];
    for (const age of [1, 6, 2, 5, 1, 4, 2]) {
      times.push(await repaint(age));
      await page.waitForTimeout(700);
    }
    times.sort((a, b) => a - b);
    console.log(
      `Slider to repainted surface: median ${Math.round(times[3])} ms, ${Math.round(times[0])} to ` +
        `${Math.round(times.at(-1)!)} ms (at most 150 ms by design).`,
    );
    expect(times[3]).toBeLessThan(REPAINT_PATIENCE_MS);
    await untilSurface(page);
    // A tree two years old is hit at warmer temperatures than the mature one: its cold classes spread.
    expect(await shareOf(page, '1 in 2 to 1 in 5')).toBeGreaterThan(mature + 0.05);
  });
});
