import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Subject } from '../../../analysis/answer/subject.ts';
import { answerYear } from '../../../analysis/answer/year-answer.ts';
import { DATE_CHANCES, type FreezeDates, type YearAnswer } from '../../../analysis/answer/year.ts';
import type { KeptNights } from '../../../analysis/records/kept-nights.ts';
import { CITRUS_TYPES, findType } from '../../../analysis/tree/catalogue.ts';
import { HARVEST_CALENDARS } from '../../../analysis/tree/harvest.ts';
import { atEveryLevel, NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { sourceOf } from '../../../analysis/tree/sources.ts';
import { hitNights } from '../../../analysis/winter/hit-nights.ts';
import { seasonDayOf, seasonDayText } from '../../../analysis/winter/season-day.ts';
import { NO_GAINS } from '../../../analysis/winter/winter-minima.ts';
import { inventedNights } from '../place/invented-nights.ts';

const WINTERS = 40;
const DRAWS = 100;

/** An invented place with all its nights, or with some winters that aren't complete. */
function inventedPlace(options: { south?: boolean; middleC?: number; gaps?: number; seed?: number } = {}): {
  subject: Subject;
  nights: KeptNights;
} {
  const { south = false, middleC = 3, gaps = 0, seed = 3 } = options;
  const site = { lat: south ? -31 : 31, lon: -42, elevationM: 20, coastKm: 10 };
  const { members, nights } = inventedNights({ seed, winters: WINTERS, sites: [site], middleC, gaps, south });
  return {
    nights: nights[0],
    subject: {
      place: { label: 'Invented', lat: site.lat, lon: site.lon, elevation_m: 20, basis: 'station' },
      winters: members[0].winters,
      neighbours: [],
      evidence: [],
      notes: [],
    },
  };
}

const satsuma = findType('satsuma_owari')!;
const lemon = findType('eureka_lemon')!;
const asked = {
  types: [satsuma, lemon],
  tree: MATURE_TREE,
  gains: NO_LEVEL_GAIN_SPREADS,
  calendar: 'gulf' as const,
  draws: DRAWS,
};
const gain = (degreesC: number) => {
  const spread = { lowC: degreesC, centreC: degreesC, highC: degreesC };
  return atEveryLevel({ calm: spread, windy: spread });
};
const task = (answer: YearAnswer, type: number, id: string) =>
  answer.types[type].tasks.find((own) => own.id === id);
const atTenth = (days: FreezeDates['first']) => days.find(({ chance }) => chance === 0.1)!.date;

const north = inventedPlace();
const answer = answerYear(north.subject, north.nights, asked);

describe("the year's dates", () => {
  it('are those of the nights that hit, counted by a plain loop', () => {
    const all = [
      ...answer.freezes,
      ...answer.types.flatMap(({ levels }) => levels.map(({ dates }) => dates)),
    ];
    for (const dates of all) {
      const hits = hitNights(north.nights, { hours: dates.hours, limitC: dates.limit_c, gains: NO_GAINS });
      const days = hits.map(({ day }) => seasonDayOf(day, 'north'));
      const winters = new Set(hits.map(({ winter }) => winter));
      expect(dates.winters).toBe(WINTERS);
      expect(dates.share_without).toBeCloseTo(1 - winters.size / WINTERS, 12);
      const firsts = [...winters].map((winter) => days[hits.findIndex((hit) => hit.winter === winter)]);
      const earliest = firsts.length === 0 ? null : seasonDayText(Math.min(...firsts), 'north');
      expect(dates.earliest).toBe(earliest);
      expect(dates.latest).toBe(days.length === 0 ? null : seasonDayText(Math.max(...days), 'north'));
      expect(dates.first.map(({ chance }) => chance)).toEqual([...DATE_CHANCES]);
    }
    expect(all.some(({ share_without }) => share_without! > 0 && share_without! < 1)).toBe(true);
    // Leaf nights out of season, winter by winter.
    const [leaf] = [answer.types[1].levels[1].dates];
    const hits = hitNights(north.nights, { hours: leaf.hours, limitC: leaf.limit_c, gains: NO_GAINS });
    const early = new Set(
      hits.filter(({ day }) => seasonDayOf(day, 'north') < 153).map(({ winter }) => winter),
    );
    const late = new Set(
      hits.filter(({ day }) => seasonDayOf(day, 'north') > 229).map(({ winter }) => winter),
    );
    expect(answer.types[1].early_late).toEqual({
      before: '12-01',
      share_before: early.size / WINTERS,
      after: '02-15',
      share_after: late.size / WINTERS,
    });
    expect(late.size).toBeGreaterThan(0);
  });

  it('tell of the limits in °C with the penalties of the tree', () => {
    expect(answer.freezes.map(({ limit_c }) => limit_c)).toEqual([0, expect.closeTo(-2.2222, 4)]);
    const young = answerYear(north.subject, north.nights, {
      ...asked,
      tree: { ...MATURE_TREE, ageYears: 1 },
    });
    // 5.5 °F for a tree in its first years, at every level but fruit.
    const [fruit, leaf] = young.types[0].levels;
    expect(fruit.dates).toEqual(answer.types[0].levels[0].dates);
    expect(leaf.dates.limit_c - answer.types[0].levels[1].dates.limit_c).toBeCloseTo(5.5 / 1.8, 1);
  });

  it('are the same for a type alone and among all, and each time', () => {
    const all = answerYear(north.subject, north.nights, { ...asked, types: CITRUS_TYPES });
    expect(all.types).toHaveLength(37);
    expect(all.types.find(({ id }) => id === satsuma.id)).toEqual(answer.types[0]);
    expect(JSON.parse(JSON.stringify(all))).toEqual(all);
    for (const calendar of HARVEST_CALENDARS)
      for (const { tasks } of answerYear(north.subject, north.nights, {
        ...asked,
        types: CITRUS_TYPES,
        calendar,
      }).types)
        for (const { from, to, sources, why } of tasks) {
          expect(from).toMatch(/^\d\d-\d\d$/);
          if (to !== null) expect(to).toMatch(/^\d\d-\d\d$/);
          for (const key of sources) expect(sourceOf(key), key).not.toBe(key);
          expect(why).not.toMatch(/NaN|undefined|null/);
        }
  });

  it('leave out winters that do not count, with the reason, and say what is not known', () => {
    const gaps = inventedPlace({ gaps: 0.3 });
    const own = answerYear(gaps.subject, gaps.nights, asked);
    const incomplete = gaps.subject.winters.complete.filter((flag) => flag === 0).length;
    expect(incomplete).toBeGreaterThan(0);
    expect(own.winters).toBe(WINTERS - incomplete);
    expect(own.left_out).toHaveLength(incomplete);
    expect(own.left_out[0].reason).toBe('January misses 9 nights');
    expect(own.notes.join()).toContain('October and April');
    const whole = { ...gaps.subject.winters, datesWhole: new Uint8Array(WINTERS).fill(1) };
    const judged = answerYear({ ...gaps.subject, winters: whole }, gaps.nights, asked);
    expect(judged.notes.join()).not.toContain('October and April');
  });

  it('say "estimated" between stations', () => {
    const place = { ...north.subject.place, basis: 'history' as const };
    expect(answerYear({ ...north.subject, place }, north.nights, asked).notes.join()).toContain('estimated');
    expect(answer.notes.join()).not.toContain('estimated');
  });

  it('tell nothing of a place without a winter that counts, but what practice has', () => {
    const winters = { ...north.subject.winters, complete: new Uint8Array(WINTERS) };
    const none = answerYear({ ...north.subject, winters }, north.nights, asked);
    expect(none.winters).toBe(0);
    expect(none.freezes[0]).toMatchObject({ winters: 0, earliest: null });
    expect(none.types[0]).toMatchObject({ early_late: null, harvest: { halves: [], pick_by: null } });
    expect(none.types[0].tasks.map(({ id }) => id)).toEqual([
      'stop-feeding',
      'harvest',
      'cut-frozen',
      'plant',
      'bloom',
    ]);
    expect(JSON.stringify(none)).not.toContain('NaN');
    expect(none.notes.join()).toContain('No winter is whole enough');
  });
});

describe('what to do when', () => {
  it('takes its dates from the record: covers, pruning, planting, picking', () => {
    const [lemonLeaf, freeze, hard] = [answer.types[1].levels[1].dates, ...answer.freezes];
    expect(task(answer, 1, 'covers-ready')).toMatchObject({
      from: atTenth(lemonLeaf.first),
      earliest: lemonLeaf.earliest,
      basis: 'record',
    });
    expect(task(answer, 1, 'prune')).toMatchObject({ from: atTenth(freeze.last), to: '08-15' });
    expect(task(answer, 1, 'plant')).toMatchObject({ from: atTenth(hard.last), basis: 'record' });
    expect(task(answer, 0, 'pick-by')?.from).toBe(answer.types[0].harvest.pick_by);
    expect(task(answer, 0, 'harvest')).toMatchObject({ from: '10-01', to: '12-31', basis: 'found' });
  });

  it('has the dates of practice: late summer, bloom, and no cutting before May or June (S12, S33)', () => {
    expect(task(answer, 0, 'stop-feeding')).toMatchObject({ from: '08-15', to: '09-30', basis: 'practice' });
    expect(task(answer, 0, 'bloom')).toMatchObject({ from: '03-01', to: '04-15' });
    expect(task(answer, 0, 'cut-frozen')!.from).toBe('05-27');
    const california = answerYear(north.subject, north.nights, { ...asked, calendar: 'california' });
    expect(task(california, 0, 'cut-frozen')!.from).toBe('06-11');
  });

  it('is half a year later south of the equator', () => {
    const south = inventedPlace({ south: true });
    const own = answerYear(south.subject, south.nights, asked);
    expect(own.hemisphere).toBe('south');
    expect(task(own, 0, 'stop-feeding')).toMatchObject({ from: '02-15', to: '03-31' });
    expect(task(own, 0, 'bloom')).toMatchObject({ from: '09-01', to: '10-15' });
    expect(task(own, 0, 'harvest')).toMatchObject({ from: '04-01', to: '06-30' });
    expect(task(own, 0, 'prune')!.to).toBe('02-15');
    expect(own.types[1].early_late).toMatchObject({ before: '06-01', after: '08-15' });
    const month = Number(task(own, 1, 'covers-ready')!.from.slice(0, 2));
    expect(month).toBeGreaterThanOrEqual(4);
    expect(month).toBeLessThanOrEqual(8);
  });

  it('has covers ready for the nights without them, and no date where such nights are rare', () => {
    const covered = answerYear(north.subject, north.nights, { ...asked, gains: gain(4) });
    expect(task(covered, 1, 'covers-ready')).toEqual(task(answer, 1, 'covers-ready'));
    const spot = answerYear(north.subject, north.nights, { ...asked, gains: gain(4), spotGains: gain(9) });
    expect(task(spot, 1, 'covers-ready')).toBeUndefined();
  });

  it('tells no record date where winters are mild, and plants by practice', () => {
    const mild = inventedPlace({ middleC: 14 });
    const own = answerYear(mild.subject, mild.nights, asked);
    expect(task(own, 1, 'covers-ready')).toBeUndefined();
    expect(task(own, 1, 'prune')).toBeUndefined();
    expect(task(own, 1, 'plant')).toMatchObject({ from: '02-01', basis: 'practice' });
    expect(own.types[0].harvest).toMatchObject({ safe_to_the_end: true, pick_by: '12-31' });
    expect(task(own, 0, 'pick-by')).toBeUndefined();
  });
});

describe('properties of the year', () => {
  const later = (a: string | null, b: string | null) => rank(a) >= rank(b);
  const rank = (date: string | null): number =>
    date === null
      ? Infinity
      : seasonDayOf(Date.parse(`${date >= '07' ? 1999 : 2000}-${date}`) / 86_400_000, 'north');

  it('more gain, or a hardier limit: no more winters with a loss, no earlier first date, no earlier picking', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...CITRUS_TYPES),
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: 0, max: 300 }),
        (type, less, more) => {
          const year = (hundredths: number) =>
            answerYear(north.subject, north.nights, {
              ...asked,
              types: [type],
              gains: gain(hundredths / 100),
            }).types[0];
          const [bare, warm] = [year(less), year(less + more)];
          warm.levels.forEach(({ dates }, l) => {
            const before = bare.levels[l].dates;
            expect(dates.share_without).toBeGreaterThanOrEqual(before.share_without!);
            dates.first.forEach(({ date, low }, c) => {
              expect(later(date, before.first[c].date)).toBe(true);
              expect(later(low, before.first[c].low)).toBe(true);
            });
            // From the tenderest level to the hardiest; fruit has other hours.
            const tenderer = warm.levels[l - 1]?.dates;
            if (l > 1 && tenderer.hours === dates.hours)
              expect(dates.share_without).toBeGreaterThanOrEqual(tenderer.share_without!);
          });
          warm.harvest.halves.forEach(({ lost }, h) =>
            expect(lost).toBeLessThanOrEqual(bare.harvest.halves[h].lost),
          );
          if (bare.harvest.safe_to_the_end) expect(warm.harvest.safe_to_the_end).toBe(true);
          else if (bare.harvest.pick_by && !warm.harvest.safe_to_the_end)
            expect(later(warm.harvest.pick_by, bare.harvest.pick_by)).toBe(true);
          expect(warm.early_late!.share_before).toBeLessThanOrEqual(bare.early_late!.share_before);
          expect(warm.early_late!.share_after).toBeLessThanOrEqual(bare.early_late!.share_after);
        },
      ),
      { numRuns: 25 },
    );
  });
});
