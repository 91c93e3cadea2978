import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../../analysis/answer/assessment.ts';
import { rankRows } from '../../../web/state/rank-rows.ts';
import { rankingSentence } from '../../../web/views/ranking/ranking-words.ts';

/** As much of an answer as the ranking reads: name, use and the wood period of each type. */
function answers(...types: [name: string, use: string, period: number][]): Assessment {
  return {
    types: types.map(([name, use, period]) => ({
      id: name,
      name,
      use,
      levels: [{ level: 'wood', threshold_c: -5, headline: { period, low: period, basis: 'fitted' } }],
    })),
  } as unknown as Assessment;
}

const SOME = answers(
  ['Lime', 'cooking', 3],
  ['Satsuma', 'eating', 30],
  ['Navel', 'eating', 8],
  ['Stock', 'rootstock', 90],
);

describe('the ranking', () => {
  it('groups by use, hardiest first, rootstocks only when asked for', () => {
    const names = (show: boolean): string[][] =>
      rankRows(SOME, 'wood', show).map(({ rows }) => rows.map(({ type }) => type.name));
    expect(names(false)).toEqual([['Satsuma', 'Navel'], ['Lime']]);
    expect(names(true)).toEqual([['Satsuma', 'Navel'], ['Lime'], ['Stock']]);
    expect(rankRows(SOME, 'kill', false)).toEqual([]);
  });

  it('comes to one sentence', () => {
    const sentence = (assessment: Assessment): string =>
      rankingSentence(rankRows(assessment, 'wood', false), 'wood');
    expect(sentence(SOME)).toBe(
      'Of 3 kinds, 1 loses major limbs here no oftener than 1 winter in 20: Satsuma.',
    );
    expect(sentence(answers(['Shown as 20', 'eating', 19.6], ['Shown as 19', 'eating', 19.4]))).toBe(
      'Of 2 kinds, 1 loses major limbs here no oftener than 1 winter in 20: Shown as 20.',
    );
    expect(sentence(answers(['Lime', 'cooking', 3]))).toMatch(/^Of 1 kinds, none|^Of 1 kind, none/);
    expect(sentence(answers(['A', 'eating', 30], ['B', 'eating', 40]))).toMatch(
      /^All 2 kinds lose major limbs/,
    );
  });
});
