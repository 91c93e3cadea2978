import { describe, expect, it } from 'vitest';
import { MATURE_TREE } from '../../../../analysis/tree/penalties.ts';
import {
  chanceSpans,
  firstAfterLast,
  outOfSeason,
  seasonPart,
} from '../../../../web/views/year/freeze-season.ts';
import {
  dateRange,
  datesSentence,
  earlyAndLate,
  earlySentence,
  limitWords,
  pickingSentence,
  treeSentence,
} from '../../../../web/views/year/year-words.ts';
import { chances, madeDates, madeHarvest, plain } from './made-year.ts';

const COLD = 'Cold enough';
const SEASON = { before: '12-01', share_before: 0.05, after: '02-15', share_after: 0 };

describe('first and last dates in words', () => {
  it('tells both ends by 1 winter in 10, and the winters without', () => {
    expect(plain(datesSentence(COLD, madeDates(), 'north', false))).toBe(
      'Cold enough has come by 2 December in 1 winter in 10, and in 1 winter in 10 it still comes on 20 February or later. 60% of the winters had none.',
    );
    expect(datesSentence(COLD, madeDates({ share_without: 0 }), 'north', false)).toContain(
      'No winter was without.',
    );
  });

  it('says how many winters had it where that is fewer than 1 in 10', () => {
    const rare = madeDates({ share_without: 0.95, first: chances([]), last: chances([]) });
    expect(plain(datesSentence(COLD, rare, 'north', true))).toBe(
      'Cold enough came in 2 of 40 estimated winters, fewer than 1 in 10: at the earliest on 14 November, at the latest on 2 March.',
    );
  });

  it('tells no season where the last date of 1 winter in 10 comes before the first', () => {
    const crossed = madeDates({ first: chances(['02-06']), last: chances(['01-06']), share_without: 0.875 });
    expect(plain(datesSentence(COLD, crossed, 'north', false))).toBe(
      'Cold enough came in 5 of 40 complete winters: at the earliest on 14 November, at the latest on 2 March.',
    );
  });

  it('never says never', () => {
    const none = madeDates({
      share_without: 1,
      first: chances([]),
      last: chances([]),
      earliest: null,
      latest: null,
    });
    expect(datesSentence(COLD, none, 'north', false)).toContain('not the same as never');
    expect(datesSentence(COLD, { ...none, winters: 0, share_without: null }, 'north', false)).toBe(
      'No winter on record is whole enough to tell.',
    );
  });

  it('tells early and late cold apart, each with how often and its outermost date', () => {
    const [early, late] = earlyAndLate(SEASON, madeDates(), false);
    expect(early.seen).toBe(true);
    expect(plain(early.sentence)).toBe(
      'before 1 December, when the tree has hardly hardened: in 2 of 40 complete winters, at the earliest on 14 November.',
    );
    expect(late.seen).toBe(false);
    expect(late.sentence).toContain('in none of the 40 complete winters');
  });

  it('leaves a range open where so many winters may have no such night', () => {
    const first = { chance: 0.25, date: '01-10', low: '12-20', high: null };
    expect(plain(dateRange(first, 'first'))).toBe('20 Dec or later');
    expect(plain(dateRange({ ...first, low: null, high: '02-01' }, 'last'))).toBe('1 Feb or earlier');
    expect(plain(dateRange({ ...first, high: '01-19' }, 'first'))).toBe('20 Dec to 19 Jan');
    expect(dateRange({ ...first, low: '01-10', high: '01-10' }, 'first')).toBe('');
    expect(dateRange({ ...first, low: null }, 'first')).toBe('');
  });

  it('writes limits in the unit shown', () => {
    expect(plain(limitWords(madeDates(), 'F'))).toBe('28 °F for 4 h');
    expect(plain(limitWords(madeDates({ hours: 0, limit_c: 0 }), 'C'))).toBe('0 °C at any moment');
  });

  it('names the tree, its spot and its cover', () => {
    expect(treeSentence(MATURE_TREE, '', 'no cover')).toContain('mature tree, in the open, without a cover');
    expect(treeSentence(MATURE_TREE, 'south wall', 'frost cloth')).toContain(
      'on its spot (south wall), under frost cloth',
    );
  });
});

describe('parts of the freeze season', () => {
  it('splits the year at its two dates, in both hemispheres', () => {
    expect(['11-30', '12-01', '02-15', '02-16'].map((date) => seasonPart(date, SEASON, 'north'))).toEqual([
      'early',
      'mid',
      'mid',
      'late',
    ]);
    const south = { before: '06-01', after: '08-15' };
    expect(['05-31', '07-10', '08-16'].map((date) => seasonPart(date, south, 'south'))).toEqual([
      'early',
      'mid',
      'late',
    ]);
  });

  it('gives the stretches of a span outside midwinter, whole where all of it is outside', () => {
    expect(outOfSeason({ from: '11-14', to: '03-24' }, SEASON, 'north')).toEqual([
      { from: '11-14', to: '12-01' },
      { from: '02-15', to: '03-24' },
    ]);
    expect(outOfSeason({ from: '12-24', to: '02-01' }, SEASON, 'north')).toEqual([]);
    expect(outOfSeason({ from: '03-01', to: '03-09' }, SEASON, 'north')).toEqual([
      { from: '03-01', to: '03-09' },
    ]);
  });

  it('has no span where a chance lacks a date, or its last date comes before its first', () => {
    const spans = chanceSpans(madeDates({ last: chances(['02-20', '01-05']) }), 'north');
    expect(spans).toEqual([{ chance: 0.1, from: '12-02', to: '02-20' }]);
  });

  it('knows a first date after its last, over the new year too', () => {
    const dates = (first: readonly string[], last: readonly string[]) =>
      madeDates({ first: chances(first), last: chances(last) });
    expect(firstAfterLast(dates(['01-29'], ['12-25']), 'north')).toBe(true);
    expect(firstAfterLast(dates(['12-25'], ['01-29']), 'north')).toBe(false);
    expect(firstAfterLast(dates(['08-02'], ['07-10']), 'south')).toBe(true);
    expect(firstAfterLast(dates([], ['12-25']), 'north')).toBe(false);
  });
});

describe('the crop in words', () => {
  it('tells the day to pick by with its loss', () => {
    expect(plain(pickingSentence(madeHarvest(), 40))).toBe(
      'Pick by 4 December: until then fewer than 1 crop in 10 is lost (8%, range 3% to 16%). Left to the end of its season, 30% of crops are lost.',
    );
  });

  it('lets a safe crop hang, and says when even the first ripe day is too late', () => {
    const safe = madeHarvest({ safe_to_the_end: true, pick_by: '12-31' });
    expect(plain(pickingSentence(safe, 40))).toMatch(/can hang to the end of its season, 31 December/);
    const late = madeHarvest({ pick_by: null, lost_by_pick_by: null, lost_before_ripe: 0.2 });
    expect(plain(pickingSentence(late, 40))).toBe(
      'Even the first ripe day is too late to keep the loss under 1 in 10: 20% of crops are lost before 1 November. Left to the end of its season, 30% of crops are lost.',
    );
  });

  it('does not send someone to pick what hangs all winter, and knows nothing without winters', () => {
    const lemon = madeHarvest({ always_exposed: true, pick_by: null, lost_by_pick_by: null });
    expect(pickingSentence(lemon, 40)).toMatch(/^Some fruit hangs in every cold month/);
    const unknown = { pick_by: null, lost_by_pick_by: null, lost_before_ripe: null, lost_before_end: null };
    expect(pickingSentence(madeHarvest({ ...unknown, halves: [] }), 40)).toMatch(/^No winter on record/);
  });

  it('tells of the record where every crop was lost or none, and says when it is short', () => {
    const all = madeHarvest({ lost_before_end: 1 });
    expect(pickingSentence(all, 40)).toContain('every crop on record is lost');
    expect(pickingSentence(all, 40)).not.toContain('100%');
    const safe = madeHarvest({ safe_to_the_end: true, pick_by: '12-31', lost_before_end: 0 });
    expect(pickingSentence(safe, 2)).toMatch(/Told from 2 winters only\.$/);
    expect(pickingSentence(safe, 20)).not.toContain('Told from');
  });

  it('tells what early picking saves for the tree only where it is known', () => {
    const told = (late: number | null, early: number | null, winters = 60): string =>
      earlySentence({ ten_years_late: late, ten_years_early: early }, winters);
    expect(told(0.62, 0.71)).toMatch(/71% .* 62%/);
    expect(told(0.62, 0.62)).toMatch(/62% .*either way/);
    expect(told(null, 0.7)).toBe('');
    expect(told(0.62, 0.71, 19)).toBe('');
    expect(earlySentence(null, 60)).toBe('');
  });

  it('never tells of trees that all live as of a certainty', () => {
    const all = earlySentence({ ten_years_late: 1, ten_years_early: 1 }, 60);
    expect(all).toContain('every tree lived ten years either way');
    expect(earlySentence({ ten_years_late: 0, ten_years_early: 0 }, 60)).toContain('none lived');
    for (const late of [0.9, 1])
      expect(earlySentence({ ten_years_late: late, ten_years_early: 1 }, 60)).not.toContain('100%');
  });
});
