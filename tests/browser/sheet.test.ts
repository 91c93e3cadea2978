import { readFile } from 'node:fs/promises';

import { decode, type DecodedPng } from 'fast-png';
import jsQR from 'jsqr';
import type { Browser, Locator, Page } from 'playwright-core';
import { extractText, getDocumentProxy } from 'unpdf';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import type { Level } from '../../analysis/tree/levels.ts';
import { levelWords, sentenceEnd } from '../../web/format/answer-words.ts';
import { LEVEL_WORDS } from '../../web/format/level-words.ts';
import { foldQuery } from '../../web/state/short-address.ts';
import { launchChromium } from './chromium.ts';
import { commandAnswer, firstTown } from './command-answer.ts';
import { PATIENCE_MS, TEST_MS } from './patience.ts';
import { plain, siteAddress, startVisit, untilAnswered } from './visit.ts';

const TYPES = ['satsuma_owari', 'meyer_lemon', 'kumquat_nagami', 'minneola_tangelo'];
const COVER = 'cloth-heavy,tied,watered-soil';
/** Spanish is about a quarter longer than English. */
const LONGER = 0.3;

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** The sheet as a PDF: its pages, and its text without any space, since lines break where they must. */
async function printed(page: Page, part: Locator): Promise<{ pages: number; text: string; size: number[] }> {
  await part.getByRole('button', { name: 'Print the sheet' }).press('Enter');
  await page.waitForFunction(() => document.documentElement.dataset.printing === 'sheet');
  const pdf = await getDocumentProxy(new Uint8Array(await page.pdf({ preferCSSPageSize: true })));
  const { totalPages, text } = await extractText(pdf, { mergePages: true });
  const [, , width, height] = (await pdf.getPage(1)).view;
  return { pages: totalPages, text: text.replace(/\s/g, ''), size: [Math.round(width), Math.round(height)] };
}

const bare = (text: string): string => text.replace(/\s/g, '');

/** Dark dots of a picture, 0-1. */
function inkOf({ data, channels }: { data: ArrayLike<number>; channels: number }): number {
  let dark = 0;
  for (let at = 0; at < data.length; at += channels) if (data[at] < 128) dark++;
  return dark / (data.length / channels);
}

/** What the code in the lower right of a picture says. */
function codeIn({ width, height, data, channels }: DecodedPng): string | undefined {
  const [left, top] = [Math.round(width * 0.6), Math.round(height * 0.7)];
  const [across, down] = [width - left, height - top];
  const rgba = new Uint8ClampedArray(across * down * 4).fill(255);
  for (let y = 0; y < down; y++)
    for (let x = 0; x < across; x++)
      for (let c = 0; c < 3; c++)
        rgba[(y * across + x) * 4 + c] = data[((top + y) * width + left + x) * channels + c];
  return jsQR(rgba, across, down)?.data;
}

describe('the sheet to take home', () => {
  it(
    'fits one page of either paper with four types, says what the command says, and leads back',
    async () => {
      const visit = await startVisit(
        browser,
        { colorScheme: 'dark', acceptDownloads: true },
        async (context) => {
          // Chromium without a window would print at once and forget; the page must stay as it is printed.
          await context.addInitScript(() => void (window.print = () => {}));
        },
      );
      const { page } = visit;
      const query = `?pack=sallowmere&age=2&unit=C&cover=${COVER}&sheet=${TYPES.join(',')}.a4`;
      await page.goto(siteAddress(query));
      await untilAnswered(page);
      await page.getByRole('navigation').getByRole('link', { name: 'Sheet', exact: true }).click();
      const part = page.getByRole('region', { name: 'Sheet', exact: true });
      const sheet = part.getByRole('article');
      await sheet.getByRole('img', { name: 'Code with the link' }).waitFor({ timeout: PATIENCE_MS });
      await part.getByRole('textbox', { name: /^For whom/ }).fill('a customer of Saturday');

      const { name, lat, lon } = await firstTown();
      const at = ['--at', `${lat},${lon}`, '--types', TYPES.join(','), '--age', '2'];
      const [open, covered] = await Promise.all([
        commandAnswer(...at),
        commandAnswer(...at, '--cover', COVER),
      ]);
      const a4 = await printed(page, part);
      expect(a4.pages).toBe(1);
      expect(a4.size).toEqual([595, 842]);
      const has = (text: string): void => expect(a4.text, text).toContain(bare(text));
      for (const text of [name, 'For a customer of Saturday', 'Invented', '2-year-old tree']) has(text);
      has('A forecast or warning in force goes first.');
      has('Put the cover on: down to the ground all round');
      for (const [i, type] of open.types.entries()) {
        const level = (id: Level) => type.levels.find((one) => one.level === id)!;
        const under = (id: Level) => covered.types[i].levels.find((one) => one.level === id)!;
        for (const id of ['leaf', 'kill', 'fruit'] as const) {
          has(id === 'fruit' ? 'loses fruit still hanging' : LEVEL_WORDS[id].one);
          has(levelWords(level(id)));
          has(levelWords(under(id)));
        }
        has(`leaves and twigs ${sentenceEnd(under('leaf')).main}, life ${sentenceEnd(under('kill')).main}.`);
      }

      const before = new URL(page.url()).search;
      const saved = page.waitForEvent('download', { timeout: PATIENCE_MS });
      await part.getByRole('button', { name: 'Save as picture' }).click();
      const download = await saved;
      expect(download.suggestedFilename()).toBe(`citrus-winters-${name.toLowerCase()}.png`);
      const picture = decode(await readFile(await download.path()));
      expect([picture.width, picture.height]).toEqual([2480, 3508]);
      expect(inkOf(picture)).toBeGreaterThan(0.02);
      expect(inkOf(picture)).toBeLessThan(0.3);
      const link = codeIn(picture);
      expect(link).toBe(siteAddress(before));

      await part.getByText('Letter', { exact: true }).click();
      await sheet.evaluate((root, longer) => {
        const walk = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
        for (let node = walk.nextNode(); node; node = walk.nextNode()) {
          if (node.parentElement!.closest('svg')) continue;
          node.textContent = (node.textContent ?? '').replace(
            /\p{L}{4,}/gu,
            (word) => word + word.slice(-Math.ceil(word.length * longer)),
          );
        }
      }, LONGER);
      const letter = await printed(page, part);
      expect(letter.pages).toBe(1);
      expect(letter.size).toEqual([612, 792]);
      // Nothing is cut: the content says so when it has no room.
      const content = sheet.locator('.sheet-content');
      expect(await content.getAttribute('data-full')).toBeNull();
      expect(await content.evaluate((box) => box.scrollHeight - box.clientHeight)).toBeLessThanOrEqual(1);
      expect(plain(await sheet.textContent())).toContain('computedted');

      // The same folded, as a longer one is printed.
      await page.goto(siteAddress(await foldQuery(before)));
      await untilAnswered(page);
      expect(new URL(page.url()).searchParams.get('s')).toBeNull();
      const restored = new URLSearchParams(new URL(page.url()).search);
      expect(Object.fromEntries(restored)).toEqual(Object.fromEntries(new URLSearchParams(before)));
      // The browser's own command prints the page, not the sheet.
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('#sheet').isVisible()).toBe(false);
      expect(visit.complaints).toEqual([]);
      await visit.close();
    },
    TEST_MS,
  );
});
