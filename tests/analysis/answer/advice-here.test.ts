import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OPEN_ADVICE, type OpenAdvice } from '../../../analysis/answer/advice.ts';
import { sceneOf, WALL_SPOT } from '../../../analysis/answer/advice-customer.ts';
import { lossFigures } from '../../../analysis/answer/advice-figures.ts';
import { AdviceHere, type CounterQuestion } from '../../../analysis/answer/advice-here.ts';
import { PLAN_COVERS, plansFor } from '../../../analysis/answer/advice-plans.ts';
import { rankTypes } from '../../../analysis/answer/assess.ts';
import { FitShelf } from '../../../analysis/answer/fit-book.ts';
import { gainsOnSpot } from '../../../analysis/answer/protection.ts';
import { IN_THE_OPEN, standingSpot } from '../../../analysis/answer/standing-spot.ts';
import type { Subject } from '../../../analysis/answer/subject.ts';
import { refusals } from '../../../analysis/cover/refusals.ts';
import { lastOf } from '../../../analysis/math/steps.ts';
import { CITRUS_TYPES, findType } from '../../../analysis/tree/catalogue.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { BARE_TEXTS } from './bare-texts.ts';
import { inventedSubject } from './invented-subject.ts';

const DRAWS = 100;
const wall = standingSpot({ ...BARE_TEXTS, spot: WALL_SPOT });
const here = (subject: Subject): AdviceHere => new AdviceHere(subject, { page: IN_THE_OPEN, wall }, DRAWS);
const ALL = CITRUS_TYPES.map((type) => ({ key: type.id, type, ageYears: null }));
const question = (told: Partial<CounterQuestion> = {}): CounterQuestion => ({
  rows: ALL,
  tree: MATURE_TREE,
  pageCovers: [],
  hasSpot: false,
  answers: {},
  nights: { page: null, wall: null },
  ...told,
});
const rank = (advice: OpenAdvice | null): number => (advice === null ? -1 : OPEN_ADVICE.indexOf(advice));

describe('the whole chain', () => {
  test('a colder place never has a better class, whatever the record', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 70 }),
        fc.double({ min: -9, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (winters, middleC, colderC) => {
          const milder = here(inventedSubject(winters, [], middleC)).rows(question());
          const colder = here(inventedSubject(winters, [], middleC - colderC)).rows(question());
          colder.forEach(({ advice }, i) =>
            expect(rank(advice)).toBeGreaterThanOrEqual(rank(milder[i].advice)),
          );
        },
      ),
      { numRuns: 25 },
    );
  });

  test('the uncovered figures are those of the ranking, and the short end is no longer than its range', () => {
    const subject = inventedSubject(60, [], -3);
    const ranking = rankTypes(subject, {
      types: CITRUS_TYPES,
      levels: ['leaf', 'kill'],
      tree: MATURE_TREE,
      gains: NO_LEVEL_GAIN_SPREADS,
      years: 10,
      draws: DRAWS,
    });
    const rows = here(subject).rows(question());
    ranking.types.forEach(({ id, levels }, i) => {
      const row = rows[i];
      expect(row.typeId).toBe(id);
      for (const [own, told] of [
        [row.bare.leaf, levels[0]],
        [row.bare.kill, levels[1]],
      ] as const) {
        expect(own.headline).toEqual(told.headline);
        expect([own.hits, own.winters]).toEqual([told.counted.hits, told.counted.winters]);
        expect(own.short.winters).toBeLessThanOrEqual(told.headline.low!);
        expect(own.short.winters).toBeLessThanOrEqual(own.headline.period ?? Infinity);
      }
    });
  });

  test('a place where it never freezes has everything planted out, a record of 15 winters nothing', () => {
    const mild = here(inventedSubject(40, [], 9)).rows(question());
    expect(new Set(mild.map(({ advice }) => advice))).toEqual(new Set(['plant-out']));
    const short = here(inventedSubject(15, [], 9)).rows(question());
    expect(new Set(short.map(({ advice }) => advice))).toEqual(new Set(['with-plan']));
    expect(new Set(short.map(({ record }) => record))).toEqual(new Set(['counts only']));
    expect(here(inventedSubject(8, [], 9)).rows(question())[0].advice).toBeNull();
  });

  test('with so many nights to bring it in a pot is told, or not', () => {
    const nights = (mean: number) => {
      const one = { mean, median: mean, hard: mean, most: { winter: 1970, nights: mean }, winters: 60 };
      const all = new Array(8).fill(one);
      const table = Object.fromEntries(CITRUS_TYPES.map(({ id }) => [id, { ground: all, pot: all }]));
      return { page: table, wall: table };
    };
    const place = here(inventedSubject(60, [], -4));
    const open = place.rows(question());
    expect(open.some(({ advice }) => advice === 'pot-or-not')).toBe(true);
    for (const [mean, told] of [
      [12, 'in-pot'],
      [31, 'not-here'],
    ] as const) {
      const rows = place.rows(question({ nights: nights(mean) }));
      rows.forEach(({ advice }, i) => {
        if (open[i].advice === 'pot-or-not') expect(advice).toBe(told);
      });
    }
    // Fifteen nights are the most that a cover goes on.
    const covered = place
      .rows(question({ nights: nights(16) }))
      .filter(({ advice }) => advice === 'with-plan');
    for (const { covered: under } of covered) expect(under!.plan.nightWork).toBe(false);
  });
});

describe('covers', () => {
  test('those of a plan are refused by no rule, each saves leaves or costs no night, and the strongest stands last', () => {
    for (const ids of PLAN_COVERS) expect(refusals(ids, { container: false })).toEqual([]);
    const gains = plansFor([]).map(({ ids }) => gainsOnSpot(IN_THE_OPEN, ids).leaf.calm.centreC);
    expect(gains).toEqual([...gains].sort((a, b) => a - b));
    plansFor([]).forEach(({ nightWork }, i) => expect(nightWork).toBe(i > 0));
  });

  test('the page’s own comes first, without what is refused for a tree in the ground', () => {
    expect(plansFor(['sheet', 'tied'])[0]).toEqual({ ids: ['sheet', 'tied'], nightWork: true });
    expect(plansFor(['garage']).map(({ ids }) => ids)).toEqual(PLAN_COVERS);
    expect(plansFor(['lights']).map(({ ids }) => ids)).toEqual(PLAN_COVERS);
    expect(plansFor(['bare-soil', 'soil-bank'])).toHaveLength(PLAN_COVERS.length);
    const more = plansFor(['bare-soil', 'soil-bank', 'cloth-light']).map(({ ids }) => ids);
    expect(more.slice(1)).toEqual(PLAN_COVERS);
  });

  test('a plan is told only where it does what is asked, with its own figures', () => {
    const subject = inventedSubject(60, [], -4);
    const rows = here(subject)
      .rows(question())
      .filter(({ advice }) => advice === 'with-plan');
    expect(rows.length).toBeGreaterThan(3);
    const shelves = { ranged: new FitShelf(subject, DRAWS), plain: new FitShelf(subject, 20) };
    for (const { typeId, covered, bare } of rows) {
      const gains = gainsOnSpot(IN_THE_OPEN, covered!.plan.ids);
      expect(covered!.figures).toEqual(
        lossFigures({ type: findType(typeId)!, tree: MATURE_TREE, gains }, shelves),
      );
      expect(covered!.figures.leaf.short.winters).toBeGreaterThan(bare.leaf.short.winters);
    }
  });

  test('where none does, the strongest that this buyer can put on is shown with its figures', () => {
    const place = here(inventedSubject(60, [], -6));
    for (const [home, strongest] of [
      ['yes', PLAN_COVERS.at(-1)],
      ['no', PLAN_COVERS[0]],
    ] as const) {
      const lost = place.rows(question({ answers: { home } })).filter(({ covered }) => !covered?.does);
      expect(lost.length).toBeGreaterThan(10);
      for (const { covered } of lost) expect(covered!.plan.ids).toEqual(strongest);
    }
  });
});

describe('questions to the buyer', () => {
  const place = here(inventedSubject(60, [], -4));
  const asking = (told: Partial<CounterQuestion> = {}) => lastOf(place.asking(question(told)));
  const classes = (told: Partial<CounterQuestion>) =>
    new Map(place.rows(question(told)).map(({ key, advice }) => [key, advice]));

  test('two at most, and each tells exactly what its answers change', () => {
    const asked = asking();
    expect(asked).toHaveLength(2);
    const now = classes({});
    for (const { unknown, options } of asked) {
      for (const { value, assumed, moved } of options) {
        const then = classes({ answers: { [unknown]: value } });
        const changed = [...now].filter(([key, advice]) => then.get(key) !== advice).map(([key]) => key);
        expect(moved.map(({ key }) => key)).toEqual(changed);
        for (const { key, from, to } of moved) expect([now.get(key), then.get(key)]).toEqual([from, to]);
        expect(assumed && moved.length > 0).toBe(false);
      }
    }
  });

  test('no other question moves more types', () => {
    const moves = (answers: CounterQuestion['answers']): number => {
      const [now, then] = [classes({}), classes({ answers })];
      return [...now].filter(([key, advice]) => then.get(key) !== advice).length;
    };
    const [first, second] = asking().map(({ options }) =>
      Math.max(...options.map(({ moved }) => moved.length)),
    );
    const all = [
      { home: 'no' },
      { wall: 'yes' },
      { young: 'yes' },
      { stands: 'ground' },
      { fruit: 'yes' },
    ] as const;
    const sizes = all.map((answers) => moves(answers)).sort((a, b) => b - a);
    expect([first, second]).toEqual(sizes.slice(0, 2));
  });

  test('none is put where no answer changes anything', () => {
    expect(lastOf(here(inventedSubject(40, [], 20)).asking(question()))).toEqual([]);
  });

  test('what was answered, what the page knows and the ages of the stock are not asked again', () => {
    const unknowns = (told: Partial<CounterQuestion>) => asking(told).map(({ unknown }) => unknown);
    const [first] = unknowns({});
    const answered = { [first]: first === 'home' ? 'no' : 'yes' };
    expect(unknowns({ answers: answered })).not.toContain(first);
    expect(unknowns({ tree: { ...MATURE_TREE, ageYears: 2 } })).not.toContain('young');
    expect(unknowns({ rows: ALL.map((row) => ({ ...row, ageYears: 3 })) })).not.toContain('young');
    expect(unknowns({ hasSpot: true })).not.toContain('wall');
    expect(unknowns({ tree: { ...MATURE_TREE, container: true } })).not.toContain('stands');
  });

  test('a buyer with a pot only is told of a pot or of nothing; a row’s own age counts', () => {
    const potOnly = classes({ answers: { stands: 'pot' } });
    expect([...potOnly.values()].every((advice) => advice !== 'plant-out' && advice !== 'with-plan')).toBe(
      true,
    );
    expect(sceneOf({ ...MATURE_TREE, container: true }, {}).buyer.stands).toBe('pot');
    const young = classes({ rows: ALL.map((row) => ({ ...row, ageYears: 2 })) });
    expect(young).toEqual(classes({ answers: { young: 'yes' } }));
  });
});
