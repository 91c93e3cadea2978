import { describe, expect, it } from 'vitest';
import type { LevelAnswer } from '../../../analysis/answer/assessment.ts';
import {
  countWords,
  disagreementWords,
  levelWords,
  penaltyC,
  rangeWords,
  reachedC,
  sentenceEnd,
} from '../../../web/format/answer-words.ts';
import { formatPeriodWithin, formatRangeWithin } from '../../../web/format/periods.ts';
import { treeWords } from '../../../web/format/tree-words.ts';
import { shortTypeName } from '../../../web/format/type-names.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';

const PLAIN: LevelAnswer['headline'] = { period: 14, low: 9, high: 27, basis: 'fitted', agrees: true };

/** An answer with everything ordinary: 5 of 60 winters, a curve that agrees. */
function answer(change: Partial<LevelAnswer> = {}): LevelAnswer {
  return {
    level: 'wood',
    threshold_c: -5,
    hours: 4,
    penalties_c: { age: 1.5, container: 0.5 },
    gain_calm_c: 0,
    gain_windy_c: 0,
    counted: {
      hits: 5,
      winters: 60,
      period: 12,
      low: 6.5,
      high: 25,
      hit_winters: [1985],
      hit_incomplete: [],
    },
    fitted: { period: 14, low: 9, high: 27 },
    headline: PLAIN,
    if_threshold: { low: { threshold_c: -6, period: 24 }, high: { threshold_c: -4, period: 8 } },
    if_gain: {
      low: { gain_calm_c: 0, gain_windy_c: 0, headline: PLAIN },
      high: { gain_calm_c: 0, gain_windy_c: 0, headline: PLAIN },
    },
    with_duration: { hits: 6, period: 10 },
    chance_in_years: { years: 10, p: 0.5, low: 0.3, high: 0.7 },
    nights_per_winter: null,
    beside: { likelihood_period: null, window_share: null, windows: 0, recent: null },
    ...change,
  };
}

describe('an answer in words', () => {
  it('claims nothing where no winter is complete', () => {
    const none = answer({
      counted: {
        ...answer().counted,
        hits: 0,
        winters: 0,
        period: null,
        low: 1,
        high: null,
        hit_winters: [],
      },
      fitted: null,
      headline: { period: null, low: 1, high: null, basis: 'not seen', agrees: true },
    });
    expect([levelWords(none), rangeWords(none)]).toEqual(['not known', '']);
    expect(sentenceEnd(none)).toEqual({
      main: 'no one can say how often',
      rest: 'no winter on record here is complete',
    });
  });

  it('is a period with its range and its count', () => {
    expect(levelWords(answer())).toBe('about 1 winter in 14');
    expect(sentenceEnd(answer()).main).toBe('in about 1 winter in 14');
    expect(rangeWords(answer())).toBe('range 1 in 9 to 1 in 27');
    expect(countWords(answer())).toBe('5 of 60 complete winters');
    expect(countWords(answer(), true)).toBe('5 of 60 estimated winters');
    expect(disagreementWords(answer())).toBe('');
  });

  it('adds the penalties to the threshold', () => {
    expect(penaltyC(answer())).toBe(2);
    expect(reachedC(answer())).toBe(-3);
  });

  it('shows life as a band from the two ends of the threshold', () => {
    const kill = answer({ level: 'kill' });
    expect(levelWords(kill)).toBe('1 in 8 to 1 in 24');
    expect(sentenceEnd(kill).main).toBe('in between 1 winter in 8 and 1 in 24');
    expect(rangeWords(kill)).toBe('');
  });

  it('leaves a band open where its rare end is only a bound', () => {
    const bound = { low: { threshold_c: -6, period: 11 }, high: { threshold_c: -4, period: 8 } };
    const kill = answer({ level: 'kill', if_threshold: bound });
    expect(levelWords(kill)).toBe('1 in 8 or rarer');
    expect(sentenceEnd(kill).main).toBe('in 1 winter in 8, or more rarely');
  });

  it('claims nothing where nothing was seen', () => {
    const unseen = answer({
      headline: { period: null, low: 1.7, high: null, basis: 'not seen', agrees: true },
    });
    expect(sentenceEnd(unseen)).toEqual({
      main: 'not once in 60 winters',
      rest: 'could be as often as 1 in 1.7',
    });
    const beyond = answer({ headline: { period: 90, low: 90, high: null, basis: 'beyond', agrees: true } });
    expect(levelWords(beyond)).toBe('1 in 90 or rarer');
    expect(sentenceEnd(beyond)).toEqual({
      main: `too rarely for ${beyond.counted.winters} winters to tell`,
      rest: '1 winter in 90 or rarer, the low end of the range',
    });
  });

  it('says where curve and count part', () => {
    const parted = answer({ headline: { period: 14, low: 9, high: 27, basis: 'fitted', agrees: false } });
    expect(disagreementWords(parted)).toMatch(
      /curve says 1 in 14, outside what the count allows \(1 in 6\.5 to 1 in 25\)/,
    );
  });
});

describe('periods within a record', () => {
  it('end at twice its length', () => {
    expect(formatPeriodWithin(120, 60)).toBe('1 in 120');
    expect(formatPeriodWithin(121, 60)).toBe('rarer than 1 in 120');
    expect(formatPeriodWithin(null, 60)).toBe('rarer than 1 in 120');
    expect(formatRangeWithin(30, 3_000_000, 60)).toBe('1 in 30 or rarer');
    expect(formatRangeWithin(130, 400, 60)).toBe('rarer than 1 in 120');
  });
});

describe('trees and names', () => {
  it('stand around the type', () => {
    expect(treeWords(MATURE_TREE)).toEqual({ before: 'vigorous mature', after: '' });
    expect(
      treeWords({ ...MATURE_TREE, ageYears: 2, condition: 'average', hardened: false, container: true }),
    ).toEqual({ before: '2-year-old', after: ', of average vigour, in a container, not hardened,' });
  });
  it('are short in rows', () => {
    expect(shortTypeName('Grapefruit (Marsh, Duncan, Ruby types)')).toBe('Grapefruit');
    expect(shortTypeName('Meyer lemon')).toBe('Meyer lemon');
  });
});
