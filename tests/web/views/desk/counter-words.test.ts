import { describe, expect, it } from 'vitest';
import { AdviceHere, type RowAdvice } from '../../../../analysis/answer/advice-here.ts';
import type { CustomerAnswers } from '../../../../analysis/answer/advice-customer.ts';
import { IN_THE_OPEN } from '../../../../analysis/answer/standing-spot.ts';
import { CITRUS_TYPES } from '../../../../analysis/tree/catalogue.ts';
import { MATURE_TREE } from '../../../../analysis/tree/penalties.ts';
import {
  aboutNights,
  groupsOf,
  groupTitle,
  lossWords,
  nightsSpread,
  shownAtFirst,
} from '../../../../web/views/desk/counter/advice-words.ts';
import { movesWords } from '../../../../web/views/desk/counter/question-words.ts';
import {
  FORECAST_FIRST,
  sayPlace,
  sayType,
  type Told,
} from '../../../../web/views/desk/counter/say-words.ts';
import { inventedSubject } from '../../../analysis/answer/invented-subject.ts';

function rowsAt(middleC: number, winters = 60, answers: CustomerAnswers = {}): readonly RowAdvice[] {
  const here = new AdviceHere(
    inventedSubject(winters, [], middleC),
    { page: IN_THE_OPEN, wall: IN_THE_OPEN },
    100,
  );
  return here.rows({
    rows: CITRUS_TYPES.map((type) => ({ key: type.id, type, ageYears: null })),
    tree: MATURE_TREE,
    pageCovers: [],
    hasSpot: false,
    answers,
    nights: { page: null, wall: null },
  });
}
const told: Told = {
  place: 'SC 101',
  winters: { used: 60, first: 1960, last: 2019 },
  estimated: false,
  hemisphere: 'north',
};
const nights = { mean: 4.4, median: 3.5, hard: 9.1, most: { winter: 1990, nights: 14 }, winters: 60 };

describe('what stands in the groups', () => {
  it('every kind in exactly one of them, the safest first; pots and the rest are one group while nights are open', () => {
    const rows = rowsAt(-4);
    const groups = groupsOf(rows);
    expect(groups.map(({ advice }) => advice)).toEqual(['plant-out', 'with-plan', 'pot-or-not', 'not-here']);
    expect(groups.flatMap(({ rows: own }) => own)).toHaveLength(rows.length);
    for (const { rows: own } of groups) {
      const leaf = own.map(({ bare }) => bare.leaf.short.winters);
      expect(leaf).toEqual([...leaf].sort((a, b) => b - a));
    }
    const counted = rows.map((row) => ({
      ...row,
      ...(row.advice === 'pot-or-not' && { advice: 'in-pot' as const }),
    }));
    expect(groupsOf(counted).map(({ advice }) => advice)).toEqual([
      'plant-out',
      'with-plan',
      'in-pot',
      'not-here',
    ]);
  });

  it('a range stands beside each estimate, a bound says that it is one', () => {
    const figures = rowsAt(-4).map(({ bare }) => lossWords(bare.leaf));
    for (const { main, range, count } of figures) {
      expect(count).toMatch(/^\d+ of 60 winters$/);
      if (main.startsWith('about')) expect(range).toMatch(/^1 in |^(nearly )?every winter/);
      else expect(main).toMatch(/or rarer$|^not seen in|every winter$/);
    }
    expect(new Set(figures.map(({ range }) => range === '')).size).toBe(2);
    // The frequent end that puts a kind into its class is the one that is told.
    const headline = { period: 12, low: 9, high: 20, basis: 'fitted' as const, agrees: true };
    const short = { winters: 7, unseen: false };
    expect(lossWords({ headline, short, long: 25, hits: 5, winters: 60 })).toEqual({
      main: 'about 1 winter in 12',
      range: '1 in 7 to 1 in 25',
      count: '5 of 60 winters',
    });
  });

  it('pots are told with the nights they come in on, once they are counted', () => {
    const [one] = rowsAt(-4);
    const pots = (means: readonly number[]) =>
      groupTitle(
        'in-pot',
        means.map((mean) => ({ ...one, potNights: { ...nights, mean } })),
      );
    expect(pots([4.4, 11.6, 7])).toBe('Keep it in a pot and bring it in on about 4 to 12 nights a winter');
    expect(pots([3.8, 4.4])).toBe('Keep it in a pot and bring it in on about 4 nights a winter');
    expect(pots([1.2])).toBe('Keep it in a pot and bring it in on about 1 night a winter');
    expect(pots([0.2, 0.4])).toBe('Keep it in a pot and bring it in on less than one night a winter');
    expect(groupTitle('in-pot', [{ ...one, potNights: null }])).toBe('Keep it in a pot and bring it in');
    expect(groupTitle('not-here', [])).toBe('Not here');
  });

  it('no list is longer than one look before somebody asks, and no button hides a single row', () => {
    expect([0, 1, 6, 7].map((rows) => shownAtFirst('pot-or-not', rows))).toEqual([0, 1, 6, 7]);
    expect([8, 25].map((rows) => shownAtFirst('plant-out', rows))).toEqual([6, 6]);
    expect(shownAtFirst('not-here', 3)).toBe(0);
  });

  it('nights in words', () => {
    expect(aboutNights(4.4)).toBe('about 4 nights');
    expect(aboutNights(0.02)).toBe('0.1 nights');
    expect(aboutNights(0)).toBe('no night');
    expect(nightsSpread(nights, 'north')).toBe(
      'half the winters 3 or fewer, one in ten more than 9, most 14 (1989–90)',
    );
    expect(nightsSpread({ ...nights, median: 0.5 }, 'north')).toBe(
      'half the winters none, one in ten more than 9, most 14 (1989–90)',
    );
  });
});

describe('what is said', () => {
  it('of every kind: place, record and range, ending with the forecast; never a bare figure', () => {
    for (const row of rowsAt(-4)) {
      const words = sayType({ ...row, coverNights: nights, potNights: nights }, told);
      expect(words).toContain('SC 101');
      expect(words).toContain('60 complete winters at SC 101, 1959–60 to 2018–19');
      expect(words.endsWith(FORECAST_FIRST)).toBe(true);
      expect(words).not.toMatch(/undefined|null|NaN|\{\d\}/);
      for (const [, after] of words.matchAll(/about 1 winter in [\d.,]+(.{0,2})/g)) expect(after).toBe(' (');
    }
  });

  it('of a plan: what is put on, and how often', () => {
    const row = rowsAt(-4).find(({ covered, advice }) => advice === 'with-plan' && covered!.plan.nightWork)!;
    expect(sayType({ ...row, coverNights: nights }, told)).toMatch(
      /plant it with a plan at SC 101: .*cloth.*, tied to the ground, on about 4 nights a winter, more than 9 in one winter of ten\./,
    );
  });

  it('of a short record, which tells nothing to be planted without a plan', () => {
    const short = { ...told, winters: { used: 15, first: 1960, last: 1974 } };
    const rows = rowsAt(9, 15).filter(({ advice }) => advice === 'with-plan');
    expect(rows.length).toBeGreaterThan(3);
    for (const row of rows) {
      const words = sayType(row, short);
      expect(words).toContain('the record is too short to plant it without a plan. Uncovered');
      expect(words).not.toContain('cloth');
    }
  });

  it('of a pot that nobody is there to carry: it stays out, and no night is told to bring it in', () => {
    const rows = rowsAt(4, 60, { home: 'no', stands: 'pot' });
    const out = rows.filter(({ advice }) => advice === 'in-pot');
    expect(out.length).toBeGreaterThan(3);
    for (const row of out) {
      expect(row.inGarage).toBeNull();
      expect(sayType({ ...row, potNights: nights }, told)).toMatch(
        /keep it in a pot at SC 101, where it can stay out all winter\. Uncovered/,
      );
    }
    const counted = out.map((row) => ({ ...row, potNights: nights }));
    expect(groupTitle('in-pot', counted)).toBe('Keep it in a pot, out all winter');
    expect(sayPlace(rows, told)).toContain('In a pot that can stay out all winter: ');
    expect(rowsAt(4, 60, { stands: 'pot' }).some(({ staysOut }) => staysOut)).toBe(false);
  });

  it('of the whole place: every group that holds a kind; too few winters are no advice', () => {
    const words = sayPlace(rowsAt(-4), told);
    expect(words).toMatch(/Planted out: .+ With a plan for cold nights: .+ In a pot, if at all: .+/);
    // Names that have a comma of their own are held apart by semicolons; one kind more is one kind.
    const satsumas = rowsAt(-4).filter(({ typeId }) => typeId.startsWith('satsuma'));
    expect(sayPlace(satsumas, told)).toContain(
      'Satsuma mandarin, Owari type; Satsuma mandarin, early and other selections.',
    );
    const five = [...rowsAt(-4).filter(({ advice }) => advice === 'pot-or-not')].slice(0, 5);
    expect(sayPlace(five, told)).toMatch(/ and 1 more kind\./);
    expect(sayPlace(rowsAt(-4, 8), { ...told, winters: { used: 8, first: 1960, last: 1967 } })).toContain(
      'too few winters for any advice',
    );
  });

  it('of an answer: how many kinds it moves, and where to', () => {
    const moved = ['yuzu', 'sudachi', 'citron'].map((typeId) => ({
      key: typeId,
      typeId,
      from: 'with-plan' as const,
      to: 'not-here' as const,
    }));
    expect(movesWords({ value: 'no', assumed: false, moved })).toBe(
      'moves 3 kinds: 3 to “Not here” (Yuzu and 2 more)',
    );
    expect(movesWords({ value: 'no', assumed: false, moved: moved.slice(0, 2) })).toBe(
      'moves 2 kinds: 2 to “Not here” (Yuzu and Sudachi)',
    );
    expect(movesWords({ value: 'no', assumed: false, moved: [] })).toBe('changes nothing here');
    expect(movesWords({ value: 'yes', assumed: true, moved: [] })).toBe('taken for granted now');
  });
});
