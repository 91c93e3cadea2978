import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Assessment } from '../../analysis/answer/assessment.ts';

const LEVEL_LABELS = { fruit: 'Fruit', leaf: 'Leaf', wood: 'Wood', kill: 'Life' } as const;

/** A period with two figures, written here anew: 1.4, 12, 130. */
function twoFigures(period: number): string {
  if (period >= 99.5) {
    const grain = 10 ** (Math.floor(Math.log10(period)) - 1);
    return String(Math.round(period / grain) * grain);
  }
  return period < 9.95 ? String(Number(period.toFixed(1))) : String(Math.round(period));
}

/** As tables say it: nobody reads `1 in 1`. */
function periodInTable(period: number): string {
  if (period < 1.0005) return 'every winter';
  return period < 1.06 ? 'nearly every winter' : `1 in ${twoFigures(period)}`;
}

/**
 * Holds the figures that the page tells of every type in the ranking's table, which must be open, against the command's answer.
 * @param winters what the counted winters are called
 * @returns how many headlines in two figures were compared
 */
export async function expectRankingFigures(
  page: Page,
  level: keyof typeof LEVEL_LABELS,
  answer: Assessment,
  winters: 'estimated winters' | 'complete winters',
): Promise<number> {
  const label = LEVEL_LABELS[level];
  await page.getByRole('radio', { name: label, exact: true }).check({ force: true });
  const table = page.getByRole('table', { name: new RegExp(`^${label}: how often, by type`) });
  await table.waitFor();
  const rows = await table
    .getByRole('row')
    .evaluateAll((found) => found.map((row) => [...row.children].map((cell) => cell.textContent ?? '')));
  const shown = new Map(
    rows.slice(1).map(([name, , words, , counted, curve]) => [name, { words, counted, curve }]),
  );
  let compared = 0;
  for (const type of answer.types) {
    const expected = type.levels.find((entry) => entry.level === level)!;
    const { headline, counted, fitted } = expected;
    const cells = shown.get(type.name);
    expect(cells, `${type.name} is in the table`).toBeDefined();
    expect(cells!.counted, `${type.name}, ${level}`).toBe(`${counted.hits} of ${counted.winters} ${winters}`);
    if (fitted?.period && fitted.period <= 2 * counted.winters) {
      expect(cells!.curve, `${type.name}, ${level}, curve`).toBe(periodInTable(fitted.period));
    }
    if (headline.basis === 'fitted' && level !== 'kill' && headline.period! > 1.06) {
      expect(cells!.words, `${type.name}, ${level}`).toBe(
        `about 1 winter in ${twoFigures(headline.period!)}`,
      );
      compared++;
    }
  }
  return compared;
}
