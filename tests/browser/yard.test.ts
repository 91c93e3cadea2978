import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { mkdtemp, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { promisify } from 'node:util';

import type { AxeResults } from 'axe-core';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';

import type { Assessment } from '../../analysis/answer/assessment.ts';
import { findMeasure } from '../../analysis/cover/measures.ts';
import { READY_YARDS } from '../../analysis/spot/ready-yards.ts';
import { readYardFile, yardFileText } from '../../analysis/spot/yard-file.ts';
import { readYardText } from '../../analysis/spot/yard-text.ts';
import type { Building, PlanPoint, Wall, Yard } from '../../analysis/spot/yard.ts';
import { MARGIN_PX } from '../../web/yard/plan-scale.ts';
import { launchChromium } from './chromium.ts';
import { expectCalm, rankingRow, siteAddress, startVisit, untilAnswered } from './visit.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const PLACE = '?postcode=SC 123&unit=C';

/** A house on an open plot: nothing but its own walls makes a corner mild. */
const HOUSE_YARD: Yard = {
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

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

async function openSpot(page: Page, query = PLACE): Promise<Locator> {
  await page.goto(siteAddress(query));
  await untilAnswered(page);
  await page.evaluate(() => document.querySelector('#spot')!.scrollIntoView());
  const part = page.getByRole('region', { name: 'Spot', exact: true });
  await part.getByRole('heading', { name: /^The yard/ }).waitFor();
  return part;
}

/** Loads a yard by the file chooser, as a reader does. */
async function loadYard(part: Locator, text: string, name = 'test.yard.json'): Promise<void> {
  const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
  await part.locator('input[type=file][accept*=json]').setInputFiles(file);
}

const planOf = (part: Locator): Locator => part.getByRole('application', { name: /^Plan of the yard/ });

/** Where a point of the plot lies on the screen; the plot's layout reckoned here anew. */
async function onScreen(
  plan: Locator,
  yard: Pick<Yard, 'widthM' | 'depthM'>,
  at: PlanPoint,
): Promise<[number, number]> {
  const box = (await plan.boundingBox())!;
  const pxPerM = (box.height - 2 * MARGIN_PX) / yard.depthM;
  const left = box.x + (box.width - yard.widthM * pxPerM) / 2;
  return [left + at[0] * pxPerM, box.y + box.height - MARGIN_PX - at[1] * pxPerM];
}

async function drag(page: Page, from: [number, number], to: [number, number], steps = 6): Promise<void> {
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move(...to, { steps });
  await page.mouse.up();
}

const yardIn = (page: Page): Yard | null => {
  const text = new URL(page.url()).searchParams.get('yard');
  return text === null ? null : readYardText(text);
};
const wallsIn = (page: Page): readonly Wall[] =>
  (yardIn(page)?.things ?? []).filter((thing): thing is Wall => thing.kind === 'wall');

describe('drawing a yard', () => {
  it('with the mouse, by keyboard, and back with undo; the address keeps it over a reload', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    const part = await openSpot(page);
    await part.getByRole('button', { name: 'Draw on this plot' }).click();
    const plan = planOf(part);
    await plan.scrollIntoViewIfNeeded();
    await expect.poll(() => yardIn(page)?.widthM).toBe(24);
    const plot = yardIn(page)!;

    await part.getByRole('radio', { name: 'Masonry wall', exact: true }).check({ force: true });
    await drag(page, await onScreen(plan, plot, [4.1, 5.2]), await onScreen(plan, plot, [12, 5.3]));
    await expect.poll(() => wallsIn(page).length).toBe(1);
    expect(wallsIn(page)[0]).toMatchObject({ line: [[4, 5], [12, 5]], masonry: true }); // prettier-ignore

    await part.getByRole('combobox', { name: /^Add to the middle/ }).selectOption({ label: 'Fence' });
    await part.getByRole('button', { name: 'Add', exact: true }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => wallsIn(page).length).toBe(2);
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('SUMMARY');
    const before = wallsIn(page)[1].line;
    for (const key of ['ArrowUp', 'ArrowUp', 'ArrowRight']) await page.keyboard.press(key);
    await expect
      .poll(() => wallsIn(page)[1].line)
      .toEqual(before.map(([east, north]) => [east + 0.5, north + 1]));
    const height = part.getByRole('spinbutton', { name: 'Height of Fence 2' });
    await height.fill('3');
    await height.press('Tab');
    await expect.poll(() => wallsIn(page)[1].heightM).toBe(3);

    // The height, then the arrow keys all together, then the fence.
    await plan.focus();
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await expect.poll(() => wallsIn(page)[1]?.line).toEqual(before);
    await page.keyboard.press('Control+z');
    await expect.poll(() => wallsIn(page).length).toBe(1);
    await page.keyboard.press('Control+Shift+Z');
    await expect.poll(() => wallsIn(page).length).toBe(2);
    await part.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => wallsIn(page).length).toBe(1);

    await page.reload();
    await untilAnswered(page);
    await page.evaluate(() => document.querySelector('#spot')!.scrollIntoView());
    await part.getByRole('heading', { name: 'Things on the plan (1)' }).waitFor();
    expect(wallsIn(page)[0].line).toEqual([[4, 5], [12, 5]]); // prettier-ignore
    expect(visit.complaints).toEqual([]);
    await visit.close();
  });

  it('an outline that crosses itself gets its sentence, keeps the last offsets, and undo repairs it', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    const part = await openSpot(page);
    await loadYard(part, yardFileText(HOUSE_YARD));
    const plan = planOf(part);
    await plan.scrollIntoViewIfNeeded();
    await part.getByText('Building 1').or(part.getByText('Heated building 1')).first().waitFor();
    await page.mouse.click(...(await onScreen(plan, HOUSE_YARD, [15, 15])));
    await part.getByRole('spinbutton', { name: /^Height of Heated building 1/ }).waitFor();
    const good = new URL(page.url()).searchParams.get('yard');
    await drag(page, await onScreen(plan, HOUSE_YARD, [10, 12]), await onScreen(plan, HOUSE_YARD, [24, 15]));
    const alert = part.getByRole('alert').filter({ hasText: /crosses itself/ });
    await alert.first().waitFor();
    await page.waitForTimeout(700);
    expect(new URL(page.url()).searchParams.get('yard')).toBe(good);
    expect(await part.getByRole('button', { name: 'Save as a file' }).isDisabled()).toBe(true);
    await plan.focus();
    await page.keyboard.press('Control+z');
    await expect.poll(() => alert.count()).toBe(0);
    expect(await part.getByRole('button', { name: 'Save as a file' }).isDisabled()).toBe(false);
    await visit.close();
  });
});

describe('a yard as a file', () => {
  it('saved and loaded again is the same yard; a bad file says why and leaves the yard alone', async () => {
    const visit = await startVisit(browser, { acceptDownloads: true });
    const { page } = visit;
    const part = await openSpot(page);
    const ready = READY_YARDS[0];
    await part.getByRole('button', { name: ready.name, exact: true }).click();
    await planOf(part).waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      part.getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    const text = readFileSync(await download.path(), 'utf8');
    expect(readYardFile(text, 'saved')).toEqual(ready.yard);

    await part.getByRole('button', { name: 'Put the yard away' }).click();
    await part.getByRole('button', { name: 'Bring the yard back' }).waitFor();
    await loadYard(part, text);
    await part.getByRole('heading', { name: `Things on the plan (${ready.yard.things.length})` }).waitFor();

    await loadYard(part, '{"schema": 1, "name": "Broken"', 'broken.json');
    await part.getByRole('alert').filter({ hasText: 'broken.json' }).waitFor();
    expect(
      await part.getByRole('heading', { name: `Things on the plan (${ready.yard.things.length})` }).count(),
    ).toBe(1);
    await loadYard(part, text.replace(/"widthM": [\d.]+/, '"widthM": 10000'), 'county.json');
    await part
      .getByRole('alert')
      .filter({ hasText: /county\.json.*10000 m.*200 m/ })
      .waitFor();
    await visit.close();
  });
});

/** Hits of a row of the ranking, by the words of its button. */
async function hitsTold(row: Locator): Promise<number> {
  const words = (await row.getAttribute('aria-label')) ?? (await row.textContent()) ?? '';
  return Number(/counted in (\d+) of/.exec(words)?.[1]);
}

/** Hits of Meyer lemon's wood as the command counts them, at a spot of a saved yard. */
async function hitsByCommand(yard: Yard, at: PlanPoint, cover: string[]): Promise<number> {
  const file = `${await mkdtemp(`${tmpdir()}/yard-`)}/house.yard.json`;
  await writeFile(file, yardFileText({ ...yard, spots: [{ id: 'spot-1', name: 'Warm corner', at }] }));
  const pack = `${inject('packsFolder')}/sallowmere`;
  const place = ['--pack', pack, '--postcode', 'SC 123', '--types', 'meyer_lemon', '--json'];
  const spot = [
    '--yard',
    file,
    '--spot',
    'Warm corner',
    ...(cover.length > 0 ? ['--cover', cover.join(',')] : []),
  ];
  const command = ['data-scripts/entry/run.mjs', 'assess', ...place, ...spot];
  const { stdout } = await promisify(execFile)(process.execPath, command, { maxBuffer: 64e6 });
  const { types } = JSON.parse(stdout) as Assessment;
  return types[0].levels.find(({ level }) => level === 'wood')!.counted.hits;
}

describe('the warm corner', () => {
  it('lies by the wall that faces the midday sun; it and a cloth change the ranking as they change the command', async () => {
    const visit = await startVisit(browser);
    const { page } = visit;
    const part = await openSpot(page);
    await loadYard(part, yardFileText(HOUSE_YARD));
    const best = part.getByRole('button', { name: /best spot 1/ });
    await best.waitFor({ timeout: 30_000 });
    const row = rankingRow(page, 'Meyer lemon');
    const inTheOpen = await hitsTold(row);
    await best.click();
    await expect.poll(() => new URL(page.url()).searchParams.get('spot')).toMatch(/^yard:/);
    const [east, north] = new URL(page.url()).searchParams.get('spot')!.slice(5).split(',').map(Number);
    const house = HOUSE_YARD.things[0] as Building;
    const [west, south] = house.outline[0];
    // North of the equator the sun-warmed wall is the south one: the spot lies before it, within a few steps.
    expect(north).toBeLessThan(south);
    expect(south - north).toBeLessThan(3);
    expect(east).toBeGreaterThan(west - 2);
    expect(east).toBeLessThan(house.outline[1][0] + 2);
    await expect
      .poll(() => part.getByRole('status').first().textContent(), { timeout: 30_000 })
      .toMatch(/There a .* In the open: /s);
    await expectCalm(page);
    const atTheWall = await hitsTold(row);
    expect(atTheWall).toBeLessThan(inTheOpen);
    expect(atTheWall).toBe(await hitsByCommand(HOUSE_YARD, [east, north], []));

    const cloth = findMeasure('cloth-medium')!;
    await page.evaluate(() => document.querySelector('#cover')!.scrollIntoView());
    const box = page
      .getByRole('region', { name: 'Cover', exact: true })
      .getByRole('checkbox', { name: cloth.name, exact: true });
    await box.check({ timeout: 30_000 });
    await expect.poll(() => new URL(page.url()).searchParams.get('cover')).toBe('cloth-medium');
    await expectCalm(page);
    const covered = await hitsByCommand(HOUSE_YARD, [east, north], ['cloth-medium']);
    await expect.poll(() => hitsTold(row), { timeout: 30_000 }).toBe(covered);
    expect(covered).toBeLessThan(atTheWall);
    await visit.close();
  }, 150_000);
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

describe('accessibility', () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    it(`of the section with a yard drawn, ${colorScheme}`, async () => {
      const visit = await startVisit(browser, { colorScheme, bypassCSP: true });
      const { page } = visit;
      const part = await openSpot(page);
      await part.getByRole('button', { name: READY_YARDS[1].name, exact: true }).click();
      await part.getByRole('button', { name: /best spot 1/ }).waitFor();
      await planOf(part).click({ position: { x: 200, y: 200 } });
      await page.evaluate(() =>
        document
          .querySelectorAll('#spot details')
          .forEach((details) => ((details as HTMLDetailsElement).open = true)),
      );
      await page.evaluate(AXE);
      const results = (await page.evaluate('axe.run(document.querySelector("#spot"))')) as AxeResults;
      expect(results.passes.length).toBeGreaterThan(15);
      expect(
        results.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`),
      ).toEqual([]);
      await visit.close();
    });
  }
});
