import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AgeShare, LifeAnswer, LifeReading, TypeLife } from '../../../../analysis/answer/life.ts';
import {
  countOrShare,
  countRows,
  cropCells,
  cropRows,
  cropsSentence,
  hardeningSentence,
  hasShares,
  leadSentence,
  medianSentence,
  rangeOfShare,
  shareWithRange,
  shareWords,
  shortRecordSentence,
  thresholdWords,
} from '../../../../web/views/life/life-words.ts';
import { typeRows } from '../../../../web/views/life/type-rows.ts';

const age = (more: Partial<AgeShare> = {}): AgeShare => ({
  ...{
    age: 10,
    followed: 51,
    alive: 22,
    share: 0.43,
    low: null,
    high: null,
    kaplan_meier: 0.42,
    basis: 'record',
  },
  if_threshold: { low: null, high: null },
  ...more,
});
const reading = (alive: number, more: Partial<LifeReading> = {}): LifeReading => {
  const at = age({ alive, share: alive / 51 });
  return {
    ...{ living: [at], first_crop: at, ten_years: at, twenty_years: at },
    median_years: { years: null, low: null, high: null },
    ...{ crops_in_ten: null, crops_in_ten_with_bloom: null, crops_lost_in_ten: null, nights_covered: null },
    plantings: [],
    ...more,
  };
};
const type = (night: LifeReading, hardened: LifeReading, more: Partial<TypeLife> = {}): TypeLife => ({
  ...{ id: 'eureka_lemon', name: 'Eureka lemon', first_crop_year: 3, first_crop_basis: 'practice' },
  years_to_bear_again: { leaf: 1, wood: 3 },
  hardening_on_cold_nights: null,
  night_by_night: night,
  hardened,
  ...more,
});
const life = (winters: number, types: readonly TypeLife[] = []): LifeAnswer => ({
  ...{ start_age_years: 1, picking: 'late', calendar: 'gulf', horizon_years: 30 },
  winters: Array.from({ length: winters }, (_, i) => 1950 + i),
  types,
  notes: [],
});

describe('a share in words', () => {
  it('stands with its range once there is one', () => {
    expect(shareWithRange(age())).toBe('43%');
    expect(shareWithRange(age({ low: 0.25, high: 0.6 }))).toBe('43% (25% to 60%)');
  });

  it('is never certain: everything or nothing seen is told as what was seen and the end of the range', () => {
    expect(shareWithRange(age({ share: 1, alive: 51, low: 0.914, high: 1 }))).toBe(
      'all 51 followed; at least 91%',
    );
    expect(shareWithRange(age({ share: 1, alive: 51 }))).toBe('all 51 followed');
    expect(shareWithRange(age({ share: 1, alive: 50, low: 0.9, high: 1 }))).toBe(
      'none of 51 followed is known to have died; at least 90%',
    );
    expect(shareWithRange(age({ share: 1, alive: 0, followed: 0, low: 0.8, high: 1 }))).toBe(
      'no loss, going round these winters; at least 80%',
    );
    expect(shareWithRange(age({ share: 0, alive: 0, low: 0, high: 0.05 }))).toBe(
      'none of 51 followed; at most 5%',
    );
    expect(shareWithRange(age({ share: 0, alive: 0, low: 0, high: 0.004 }))).toBe(
      'none of 51 followed; under 1% at most',
    );
    expect(rangeOfShare(age({ low: 0.7, high: 1 }))).toBe('70% to over 99%');
    expect(rangeOfShare(age({ low: 0, high: 0.3 }))).toBe('under 1% to 30%');
  });

  it('never says 100% or 0%, whatever the share', () => {
    const unit = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.oneof(unit, fc.constantFrom(0, 1)),
        fc.oneof(unit, fc.constantFrom(0, 1)),
        fc.integer({ min: 0, max: 60 }),
        (share, end, followed) => {
          const [low, high] = [Math.min(share, end), Math.max(share, end)];
          const alive = Math.round(share * followed);
          const words = shareWithRange(age({ share, low, high, followed, alive }));
          expect(words).not.toMatch(/\b(100|0)%/);
        },
      ),
    );
  });

  it('is not known without an estimate, and a bare count on a short record', () => {
    expect(shareWords(age({ share: null }))).toBe('not known');
    expect(countOrShare(age(), false)).toBe('22 of 51');
    expect(countOrShare(age({ followed: 0, alive: 0 }), false)).toBe('none followed');
    expect(countOrShare(age(), true)).toBe('43%');
  });

  it('tells the doubt of the kill figure in either order of its ends', () => {
    expect(thresholdWords(age({ if_threshold: { low: 0.6, high: 0.2 } }))).toBe(
      'kill figure’s range 20% to 60%',
    );
    expect(thresholdWords(age({ if_threshold: { low: 0.43, high: 0.43 } }))).toBe('');
    expect(thresholdWords(age())).toBe('');
  });
});

describe('the first sentence', () => {
  it('names winters, followed trees and both readings, the colder first', () => {
    expect(leadSentence(life(61), type(reading(22), reading(34)), false)).toBe(
      'Of 61 winters in which you could have planted a young Eureka lemon here, 51 could be followed through ten winters. ' +
        'With hardening counted night by night, 22 of those trees lived; had every tree been hardened, 34 of them.',
    );
  });

  it('says none and all in words, and that winters are estimated', () => {
    expect(
      leadSentence({ ...life(61), start_age_years: 4 }, type(reading(22), reading(34)), false),
    ).toContain('planted a 4-year-old Eureka lemon here');
    const sentence = leadSentence(life(61), type(reading(0), reading(51)), true);
    expect(sentence).toContain('Of 61 estimated winters');
    expect(sentence).toContain('none of those trees lived; had every tree been hardened, all 51 of them.');
    expect(leadSentence(life(61), type(reading(22), reading(22)), false)).toContain(
      '22 of those trees lived, with hardening counted night by night as with hardened trees.',
    );
  });

  it('says when no tree can be followed', () => {
    const none = reading(0, { ten_years: age({ followed: 0, alive: 0, share: null }) });
    expect(leadSentence(life(6), type(none, none), false)).toContain(
      'none could be followed through ten winters',
    );
  });
});

describe('how long half of them live', () => {
  const half = (years: number | null, low: number | null = null, high: number | null = null): LifeReading =>
    reading(22, { median_years: { years, low, high } });

  it('stands with its range, and is open where more than half outlive what is told', () => {
    expect(medianSentence(type(half(8, 5, 14), half(17, 9, null)), 30)).toBe(
      'Half of the trees planted reach 8 winters (range 5 to 14); of hardened trees half reach 17 winters (range 9 to more than 30).',
    );
    expect(medianSentence(type(half(8), half(null, 12)), 30)).toBe(
      'Half of the trees planted reach 8 winters; of hardened trees more than half outlive the 30 winters told of (range 12 or more).',
    );
    expect(medianSentence(type(half(null), half(null)), 30)).toBe(
      'More than half of the trees planted outlive the 30 winters told of, by either reading.',
    );
    expect(medianSentence(type(half(null, 8), half(null, 19)), 30)).toBe(
      'More than half of the trees planted outlive the 30 winters told of (range 8 or more), and so do more than half of hardened trees (range 19 or more).',
    );
    expect(medianSentence(type(half(8, 5, 14), half(8, 5, 14)), 30)).toBe(
      'Half of the trees planted reach 8 winters (range 5 to 14), by either reading.',
    );
  });
});

describe('hardening when the cold comes', () => {
  const told = (hardening: number | null): string =>
    hardeningSentence(type(reading(1), reading(1), { hardening_on_cold_nights: hardening }));

  it('says plainly where trees are seldom hardened', () => {
    expect(told(0.34)).toBe(
      'Trees here are seldom fully hardened when the cold comes: on nights near the leaf limit they had 34% of full hardening on average.',
    );
    expect(told(0.8)).not.toContain('seldom');
    expect(told(1)).toContain('trees here had full hardening');
    expect(told(null)).toBe('');
  });
});

describe('crops', () => {
  const crops = { plantings: 51, median: 4, worst_tenth: 0 };
  const night = reading(22, {
    crops_in_ten: crops,
    crops_in_ten_with_bloom: { ...crops, median: 2.5 },
    crops_lost_in_ten: 2.345,
  });

  it('are told from the most a tree could give', () => {
    expect(cropsSentence(type(night, night))).toBe(
      'Of the 8 crops a tree could give in its first ten winters, half of 51 plantings gave 4 or fewer and the worst tenth none, ' +
        'with hardening counted night by night.',
    );
    const half = reading(22, { crops_in_ten: { plantings: 51, median: 8, worst_tenth: 4 } });
    expect(cropsSentence(type(half, half))).toContain(
      'at least half of 51 plantings gave every one and the worst tenth at most\u00a04',
    );
    const all = reading(22, { crops_in_ten: { plantings: 51, median: 8, worst_tenth: 8 } });
    expect(cropsSentence(type(all, all))).toContain('at least nine in ten of 51 plantings gave every one');
    expect(cropsSentence(type(reading(1), night))).toContain('crops are not counted');
    expect(cropCells({ ...crops, worst_tenth: 2 })).toEqual(['4', 'at most\u00a02']);
  });

  it('stand in rows for both readings, nights only under a cover', () => {
    const bare = cropRows(type(night, reading(22)));
    expect(bare.map(([, first]) => first)).toEqual(['4', 'none', '2.5', 'none', '2.3']);
    expect(bare.every(([, , hardened]) => hardened === '–')).toBe(true);
    const covered = { ...night, nights_covered: { mean: 3.42, worst: 14 } };
    expect(cropRows(type(covered, covered)).slice(5)).toEqual([
      ['Nights a winter under the cover, mean', '3.4', '3.4'],
      ['Nights under the cover in the worst winter', '14', '14'],
    ]);
  });
});

describe('a short record', () => {
  it('is counted only', () => {
    expect(hasShares(life(20))).toBe(true);
    expect(hasShares(life(19))).toBe(false);
    expect(shortRecordSentence(life(20))).toBe('');
    expect(shortRecordSentence(life(14))).toContain('fewer than 20 winters');
    expect(countRows(type(reading(22), reading(34)))[1]).toEqual(['Ten years', '22 of 51', '34 of 51']);
  });
});

describe('the list of kinds', () => {
  it('has those first that live most often, then by the hardened reading, rootstocks only when asked for', () => {
    const kinds = [
      type(reading(22), reading(30), { id: 'eureka_lemon', name: 'B' }),
      type(reading(22), reading(40), { id: 'meyer_lemon', name: 'A' }),
      type(reading(51), reading(51), { id: 'trifoliate_orange', name: 'C' }),
      type(reading(0), reading(51), { id: 'citron', name: 'D' }),
    ];
    const ids = (show: boolean): readonly string[] => typeRows(life(61, kinds), show).map(({ id }) => id);
    expect(ids(false)).toEqual(['meyer_lemon', 'eureka_lemon', 'citron']);
    expect(ids(true)[0]).toBe('trifoliate_orange');
  });
});
