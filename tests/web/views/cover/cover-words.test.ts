import { describe, expect, it } from 'vitest';
import type { Headline, LevelAnswer } from '../../../../analysis/answer/assessment.ts';
import { MEASURE_IDS } from '../../../../analysis/cover/cover-ids.ts';
import type { CoverRecord } from '../../../../analysis/cover/cover-nights.ts';
import { forgetting } from '../../../../analysis/cover/forgetting.ts';
import { findMeasure, gainNow, MEASURES } from '../../../../analysis/cover/measures.ts';
import {
  forgettingSentence,
  headlineCell,
  longestWish,
  meanFigure,
  nightsSentence,
  overTheGain,
  toldWithRange,
  worstWinter,
} from '../../../../web/views/cover/cover-words.ts';
import { coverWords, SHORT_NAMES } from '../../../../web/format/cover-words.ts';
import { cautionsOf, effortWords, savesOnly, shortGain } from '../../../../web/views/cover/measure-words.ts';
import { mostNights, nightTicks, stripOf } from '../../../../web/views/cover/night-strip.ts';
import { textInUnit } from '../../../../web/format/text-in-unit.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const fitted = (period: number): Headline => ({
  ...{ period, low: period / 2, high: period * 2 },
  basis: 'fitted',
  agrees: true,
});

function level(low: Headline, high: Headline, winters = 60): LevelAnswer {
  const end = (headline: Headline) => ({ gain_calm_c: 1, gain_windy_c: 0, headline });
  return { if_gain: { low: end(low), high: end(high) }, counted: { winters } } as unknown as LevelAnswer;
}

describe('measures in words', () => {
  it('have a short name each, and gains in the unit shown', () => {
    expect(Object.keys(SHORT_NAMES).sort()).toEqual([...MEASURE_IDS].sort());
    const heavy = findMeasure('cloth-heavy')!;
    expect(shortGain(gainNow(heavy, 'leaf', false), 'F')).toBe('+7.0 / 0');
    expect(shortGain(gainNow(heavy, 'leaf', true), 'F')).toBe('+7.0 / +2.5');
    expect(shortGain(gainNow(heavy, 'leaf', true), 'C')).toBe('+3.9 / +1.4');
    expect(shortGain(gainNow(findMeasure('soil-bank')!, 'leaf', true), 'F')).toBe('–');
    expect(savesOnly(heavy)).toBe('');
    expect(savesOnly(findMeasure('soil-bank')!)).toBe('the graft only');
    expect(savesOnly(findMeasure('sprinkler-raised')!)).toBe('limbs and graft only');
  });

  it('name a choice and its work', () => {
    expect(coverWords(['cloth-heavy', 'watered-soil', 'tied'])).toBe(
      'heavy frost cloth and watered soil, tied to the ground',
    );
    expect(coverWords(['plastic-on-leaves'])).toBe('no cover');
    expect(effortWords(30, 20)).toBe('30 min a season, 20 min each cold night');
    expect(effortWords(240, 0)).toBe('4 h a season');
    expect(effortWords(0, 0)).toBe('none');
  });

  it('say each caution once, with all it goes for', () => {
    const cautions = cautionsOf(['cloth-light', 'cloth-heavy']);
    expect(new Set(cautions.map(({ caution }) => caution)).size).toBe(cautions.length);
    expect(cautions.find(({ caution }) => caution.startsWith('Leaves that touch'))!.of).toEqual([
      'Light frost cloth',
      'Heavy frost cloth',
    ]);
    expect(cautionsOf(['tied'])).toEqual([]);
  });

  it('are read in °C with levels and differences each by its own rule', () => {
    const c = (text: string) => plain(textInUnit(text, 'C'));
    expect(c('Start before 32 °F (0 °C), and keep it on.')).toBe('Start before 0 °C, and keep it on.');
    expect(c('held to 10 °F (5.6 °C) on calm nights')).toBe('held to 5.6 °C on calm nights');
    expect(c('with the air near 15 to 17 °F')).toBe('with the air near −9.4 to −8.3 °C');
    expect(c('at 17 °F in wind')).toBe('at −8.3 °C in wind');
    expect(c('7 to 8 °F calm and 3 to 4 °F windy')).toBe('3.9 to 4.4 °C calm and 1.7 to 2.2 °C windy');
    expect(c('a short lawn 1.8 °F')).toBe('a short lawn 1 °C');
    expect(plain(textInUnit('before 32 °F (0 °C)', 'F'))).toBe('before 32 °F');
    for (const { about, cautions } of MEASURES)
      for (const text of [about, ...cautions]) expect(textInUnit(text, 'C')).not.toMatch(/°F/);
  });
});

describe('what a cover buys in words', () => {
  it('tells the ends of the gain only where they differ', () => {
    expect(overTheGain(level(fitted(15), fitted(60)))).toBe(
      'Over what the gain may be: 1 in 15 at its low end, 1 in 60 at its high end.',
    );
    expect(overTheGain(level(fitted(15), fitted(15)))).toBe('');
    expect(overTheGain(level(fitted(15), fitted(60)), true)).toMatch(
      /^Over what spot and cover together may gain: /,
    );
    expect(overTheGain(level(fitted(15), fitted(60), 0))).toBe('');
  });

  it('tells a bound as one, since it may be shorter than the period without the cover', () => {
    const counted = { winters: 46 };
    const bare = { level: 'leaf', headline: fitted(56), counted } as unknown as LevelAnswer;
    const beyond = { ...fitted(100), low: 44, high: null, basis: 'beyond' };
    const covered = { level: 'leaf', headline: beyond, counted } as unknown as LevelAnswer;
    expect(plain(toldWithRange(bare))).toMatch(/^about 1 winter in 56 /);
    expect(plain(toldWithRange(covered))).toBe('too rare to tell (1 in 44 or rarer)');
  });

  it('never tells a period beyond twice the record', () => {
    expect(headlineCell(fitted(31), 60)).toBe('1 in 31');
    expect(headlineCell(fitted(130), 60)).toBe('rarer than 1 in 120');
    expect(headlineCell({ ...fitted(108), high: null, basis: 'beyond' }, 60)).toBe('1 in 54 or rarer');
    expect(headlineCell({ ...fitted(9), period: null, basis: 'not seen' }, 14)).toBe('0 of 14');
    expect(longestWish(60)).toBe(120);
    expect(longestWish(0)).toBe(2);
  });
});

const burden = (total: number, winters: number, worst: [number, number] | null = null) => ({
  total,
  perWinter: winters === 0 ? null : total / winters,
  worst: worst && { winter: worst[0], nights: worst[1] },
});
const record: CoverRecord = {
  completeWinters: 10,
  toCover: burden(9, 10, [1990, 6]),
  saved: burden(4, 10, [1990, 4]),
  lost: burden(1, 10, [1995, 1]),
  spells: burden(3, 10, [1990, 2]),
  winters: [
    { winter: 1990, complete: true, toCover: 6, saved: 4, lost: 0, spells: 2 },
    { winter: 1995, complete: true, toCover: 3, saved: 0, lost: 1, spells: 1 },
  ],
  nights: [],
};

describe('nights in words', () => {
  it('tells totals, means and the worst winter', () => {
    expect(nightsSentence(record, false)).toBe(
      'Over 10 complete winters it would have gone on 9 nights: 4 of them it would have saved, 1 would have been lost even so, and on 4 it would have come close without harm.',
    );
    expect(meanFigure(record.toCover)).toBe('0.90');
    expect(meanFigure(burden(34, 10))).toBe('3.4');
    expect(meanFigure(burden(0, 10))).toBe('0');
    expect(meanFigure(burden(0, 0))).toBe('–');
    expect(worstWinter(record.toCover, 'north')).toBe('6 in 1989–90');
    expect(worstWinter(burden(0, 10), 'north')).toBe('–');
    expect(nightsSentence({ ...record, toCover: burden(0, 10) }, true)).toContain('never have had to go on');
    expect(nightsSentence({ ...record, completeWinters: 0 }, false)).toContain('no mean');
  });

  it('tells what forgetting costs: one winter lost of two, and of the other 1 - 0.9^4', () => {
    const sentence = forgettingSentence(forgetting(record));
    expect(sentence).toContain(
      '2 would have brought the loss without a cover and 1 with every night covered',
    );
    expect(sentence).toContain('1.3 on average: 1 in 7.4 instead of 1 in 10');
    const nothing = { ...record, winters: [record.winters[1]] };
    expect(forgettingSentence(forgetting(nothing))).toBe('');
  });

  it('stacks every winter of the record, and marks whole nights', () => {
    const history = [1989, 1990, 1995].map((winter) => ({ winter, complete: winter !== 1989 }));
    const strip = stripOf(history, record.winters);
    expect(strip).toEqual([
      { winter: 1989, complete: false, lost: 0, saved: 0, only: 0 },
      { winter: 1990, complete: true, lost: 0, saved: 4, only: 2 },
      { winter: 1995, complete: true, lost: 1, saved: 0, only: 2 },
    ]);
    expect(mostNights(strip)).toBe(6);
    expect(mostNights([])).toBe(1);
    expect(nightTicks(6, 5)).toEqual([2, 4, 6]);
    expect(nightTicks(1, 5)).toEqual([1]);
    expect(nightTicks(9, 5)).toEqual([2, 4, 6, 8]);
  });
});
