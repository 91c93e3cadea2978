import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { wayWords } from '../../analysis/answer/choose-ways.ts';
import type { Choice, Chosen, Wishes } from '../../analysis/answer/choosing.ts';
import { launchChromium } from './chromium.ts';
import { chosenInNode } from './choose-part.ts';
import { PATIENCE_MS, TEST_MS } from './patience.ts';
import { openPart, plain, siteAddress, startVisit, untilAnswered } from './visit.ts';

/** What the page asks for while nobody said what they want. */
const USUAL: Wishes = {
  kinds: ['eating', 'cooking'],
  nightsToCover: 5,
  lostCropsInTen: 2,
  yearsToWait: 4,
  livingInTen: 8,
};
const MEET = 'Kinds that meet all you want';
const NEARLY = 'Kinds that nearly do';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const query = (page: Page, key: string): string | null => new URL(page.url()).searchParams.get(key);
const ids = (choices: readonly Choice[]): string[] => choices.map(({ typeId }) => typeId);

/** A kind as a list shows it: its name, how it would be grown, and the rules of both that and what closes the gap. */
interface Shown {
  readonly name: string;
  readonly ways: readonly string[];
  readonly rules: readonly string[];
}

/** The kinds of a list in their order, `[]` where the list isn't there. */
async function shownIn(part: Locator, label: string): Promise<Shown[]> {
  const list = part.getByRole('list', { name: label, exact: true });
  const items = await list.locator('> li').evaluateAll((all) =>
    all.map((item) => ({
      name: item.querySelector('h4')?.textContent ?? '',
      ways: [...item.querySelectorAll('p')].map((p) => p.textContent ?? ''),
      rules: [...item.querySelectorAll('dd')].map((rule) => rule.textContent ?? ''),
    })),
  );
  return items.map(({ name, ways, rules }) => ({
    name: plain(name),
    ways: ways.map((words) => plain(words).toLowerCase()),
    // Their order on the page is the page's affair.
    rules: rules.map(plain).sort(),
  }));
}

/** The same from an answer; the page leaves out what stands in brackets after a name. */
function shownFrom(choices: readonly Choice[]): Shown[] {
  return choices.map(({ name, way, wishes, closing }) => {
    const missesYears = wishes.some(({ wish, met }) => wish === 'yearsToWait' && !met);
    const gap = closing
      ? [`what closes the gap. ${closing.words.toLowerCase()}`]
      : wishes.every(({ met }) => met)
        ? []
        : [
            missesYears
              ? 'neither a spot nor a cover makes it bear sooner.'
              : 'no spot or cover tried closes the gap.',
          ];
    return {
      name: name.replace(/ *\([^)]*\)/, ''),
      ways: [`${wayWords(way)}.`, ...gap],
      rules: [...wishes, ...(closing?.wishes ?? [])].map(({ rule }) => rule).sort(),
    };
  });
}

/** Waits until the page shows exactly that answer, with every rule. */
async function expectChosen(part: Locator, { meet, nearly }: Chosen): Promise<void> {
  const wanted = [shownFrom(meet), shownFrom(nearly)];
  await expect
    .poll(
      async () => {
        // A list of many shows its first ones until asked for all.
        for (const all of await part.getByRole('button', { name: /^Show all \d+$/ }).all()) await all.click();
        return [await shownIn(part, MEET), await shownIn(part, NEARLY)];
      },
      { timeout: PATIENCE_MS },
    )
    .toEqual(wanted);
}

/** The button of a kind in a list that sets a way of growing it. */
function useOf(part: Locator, list: string, { name }: Choice, words: string): Locator {
  return part
    .getByRole('list', { name: list, exact: true })
    .getByRole('button', { name: `${words} for a ${name.replace(/ *\([^)]*\)/, '')}`, exact: true });
}

describe('which to plant', () => {
  it(
    'changes with each question as the same nights give it in Node, tells its rules, and sets a spot or a cover',
    async () => {
      const chosen = await chosenInNode();
      const usual = chosen(USUAL);
      const lenient = { ...USUAL, lostCropsInTen: 4 };
      const [more, stricter] = [chosen(lenient), chosen({ ...lenient, nightsToCover: 0 })];
      const cooking = chosen({ ...lenient, kinds: ['cooking'], nightsToCover: 0 });
      // The record must tell these apart for this to be a test.
      expect(usual.meet.length).toBeGreaterThan(0);
      expect(more.meet.length).toBeGreaterThan(usual.meet.length);
      expect(stricter.meet.length).toBeLessThan(more.meet.length);
      expect(ids(more.meet)).toEqual(expect.arrayContaining(ids(stricter.meet)));
      const closes = stricter.nearly.find(
        ({ closing }) => closing?.way.spotId && closing.way.covers.length === 0,
      )!;

      const visit = await startVisit(browser);
      const { page } = visit;
      await page.goto(siteAddress());
      await untilAnswered(page);
      const open = 'Look through the kinds';
      const part = await openPart(page, 'Which to plant', (view) => view.getByRole('button', { name: open }));
      await part.getByRole('button', { name: open }).click();
      await expectChosen(part, usual);

      const line = part.getByText(/^Now set on the page: /);
      const covered = usual.meet.find(({ way: { spotId, covers } }) => spotId === null && covers.length > 0)!;
      await useOf(part, MEET, covered, 'Use this cover').click();
      expect(query(page, 'cover')?.split(',').sort()).toEqual([...covered.way.covers].sort());
      expect(plain(await line.textContent())).toContain(wayWords(covered.way));
      await line.getByRole('button', { name: 'Undo' }).click();
      expect(query(page, 'cover')).toBeNull();

      const crops = part.getByRole('slider', { name: 'Crops you can bear to lose' });
      await crops.focus();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowRight');
      expect(await crops.getAttribute('aria-valuetext')).toBe('4 in ten');
      expect(query(page, 'wishes')).toBe('both,5,4,4,8');
      await expectChosen(part, more);

      await part.getByRole('slider', { name: 'Nights a winter you would cover it' }).focus();
      await page.keyboard.press('Home');
      expect(query(page, 'wishes')).toBe('both,0,4,4,8');
      await expectChosen(part, stricter);

      await part.getByText('To cook with', { exact: true }).click();
      expect(query(page, 'wishes')).toBe('cooking,0,4,4,8');
      await expectChosen(part, cooking);
      await page.goBack();
      await expectChosen(part, stricter);

      const { way } = closes.closing!;
      await useOf(part, NEARLY, closes, 'Use this spot').click();
      expect(query(page, 'spot')).toBe(way.spotId);
      expect(query(page, 'cover')).toBeNull();
      expect(plain(await line.textContent())).toContain(wayWords(way));
      const settled = chosen({ ...lenient, nightsToCover: 0 }, way);
      expect(ids(settled.meet)).toContain(closes.typeId);
      await expectChosen(part, settled);
      await page.goBack();
      expect([query(page, 'spot'), query(page, 'cover')]).toEqual([null, null]);
      await expect.poll(() => line.count()).toBe(0);
      await expectChosen(part, stricter);
      expect(visit.complaints).toEqual([]);
      await visit.close();
    },
    TEST_MS,
  );
});
