import type { Locator } from 'playwright-core';
import { expect } from 'vitest';

import type { AgeShare, LifeAnswer, PlantingLife, TypeLife } from '../../analysis/answer/life.ts';
import { commandAnswer } from './command-answer.ts';
import { plain } from './visit.ts';

/** What the page says of a winter of a planting, by the letter of its course: in the grid, and in the table. */
const WORDS: Readonly<Record<string, readonly [told: string, short: string]>> = {
  '.': ['living, too young to bear', 'too young to bear'],
  c: ['a crop picked', 'picked'],
  b: [
    'a crop picked, though its bloom or new growth had been hit',
    'picked after bloom or new growth was hit',
  ],
  f: ['its crop lost', 'crop lost'],
  l: ['leaves and twigs lost', 'leaves lost'],
  w: ['major limbs lost', 'limbs lost'],
  k: ['killed to the graft', 'killed'],
  r: ['no crop while it grew again', 'growing again'],
  '?': ['winter not complete, no loss seen', 'not complete'],
};
const LETTER_OF = new Map(Object.entries(WORDS).map(([letter, [, short]]) => [short, letter]));
const FATE_OF = new Map([
  ['killed', 'killed'],
  ['living at the end of the record', 'living'],
  ['not known', 'unknown'],
]);
const ORDINALS = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
];

/** The life of one type by the command, where and how planted as `more` options say. */
export async function assessedLife(
  type: string,
  ...more: string[]
): Promise<LifeAnswer & { type: TypeLife }> {
  const { life } = await commandAnswer<{ life: LifeAnswer }>('--types', type, '--life', ...more);
  return { ...life, type: life.types[0] };
}

/** The winter that ends in `winter`, as the page names it in the north. */
export function winterName(winter: number): string {
  return `${winter - 1}–${String(winter).slice(2)}`;
}

/** What grid and readout say of one winter of a planting, `step` winters after its first. */
export function winterTold({ winter, course, fate }: PlantingLife, step: number): string {
  const ordinal = ORDINALS[step] ?? `\\d+(?:st|nd|rd|th)`;
  const told =
    fate === 'unknown' && step === course.length - 1
      ? 'a night cold enough to kill it, in a winter that isn’t complete'
      : WORDS[course[step]][0];
  return `^Planted autumn ${winter - 1}, ${ordinal} winter ${winterName(winter + step)}: ${told}\\.$`;
}

/** The plantings as the table beside the grid has them, its words read back into letters. */
export async function plantingsInTable(part: Locator): Promise<PlantingLife[]> {
  const table = part.getByRole('table', { name: /^What became of each planting/ });
  const rows = await table
    .locator('tbody tr')
    .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent ?? '')));
  return rows.map((cells) => {
    const [first, fateWords, years, crops, courseWords] = cells.map(plain);
    const winter = Number(first.slice(0, 4)) + 1;
    expect(first).toBe(winterName(winter));
    const fate = FATE_OF.get(fateWords) as PlantingLife['fate'];
    let course = '';
    for (const run of courseWords.split(', ')) {
      if (run === 'not certain') {
        expect(fate).toBe('unknown');
        continue;
      }
      const [, count, quiet] = /^(\d+) (\D+)$/.exec(run) ?? [];
      const [, loss, named] = /^(\D+) (\d{4}–\d{2})$/.exec(run) ?? [];
      if (named !== undefined) expect(named, courseWords).toBe(winterName(winter + course.length));
      course += LETTER_OF.get(quiet ?? loss)!.repeat(Number(count ?? 1));
    }
    return { winter, fate, years: Number(years), crops: Number(crops), course };
  });
}

/** Every winter of every planting as the grid speaks it, row by row. */
export async function plantingsInGrid(part: Locator): Promise<string[][]> {
  const rows = part.getByRole('grid', { name: /^Plantings of every winter/ }).locator('[role="row"]');
  return rows.evaluateAll((all) =>
    all.map((row) =>
      [...row.querySelectorAll('[role="gridcell"]')].map((cell) => cell.getAttribute('aria-label') ?? ''),
    ),
  );
}

/** A share told in words agrees with its figures: `43% (25% to 60%)`, `none of 46 followed; at most 72%`. */
export function expectShare(text: string, { share, low, high, followed }: AgeShare): void {
  if (share === null) return expect(text).toBe('not known');
  const told = text.match(/under 1%|over 99%|\d+%/g) ?? [];
  const ends = share >= 1 ? [low] : share <= 0 ? [high] : [share, low, high];
  const known = ends.filter((end) => end !== null);
  // Two ends that read alike are told once.
  if (told.length === 2 && known.length === 3) told.push(told[1]);
  expect(told, text).toHaveLength(known.length);
  known.forEach((figure, i) => expect(isToldAs(figure, told[i]), `${figure}: ${text}`).toBe(true));
  if (share >= 1 || share <= 0) expect(text).toContain(share >= 1 ? 'at least' : 'at most');
  if ((share >= 1 || share <= 0) && followed > 0) expect(text).toContain(`${followed} followed`);
}

function isToldAs(figure: number, told: string): boolean {
  if (told === 'under 1%') return figure < 0.01;
  if (told === 'over 99%') return figure > 0.99;
  return Math.abs(figure - Number(told.slice(0, -1)) / 100) < 0.00501;
}
