import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  adviseType,
  COVER_NIGHTS_MOST,
  FEWEST_WINTERS_TO_ADVISE,
  KILL_ONCE_IN,
  LEAF_ONCE_IN,
  OPEN_ADVICE,
  POT_NIGHTS_MOST,
  type AdviceQuestion,
  type Buyer,
  type OpenAdvice,
  type ShortEnds,
} from '../../../analysis/answer/advice.ts';

const ends = (leaf: number, kill: number, unseen = false): ShortEnds => ({
  leaf: { winters: leaf, unseen },
  kill: { winters: kill, unseen },
});
const USUAL_BUYER: Buyer = { atHome: true, stands: 'either' };
const SAFE = ends(LEAF_ONCE_IN, KILL_ONCE_IN);
const LOST = ends(1.2, 2);

/** A type that nothing saves, in 60 winters, unless told. */
function asked(told: Partial<AdviceQuestion>): AdviceQuestion {
  const pot = { bare: LOST, nights: POT_NIGHTS_MOST + 1 };
  return { winters: 60, bare: LOST, plans: [], pot, buyer: USUAL_BUYER, ...told };
}
const classOf = (told: Partial<AdviceQuestion>): OpenAdvice | null => adviseType(asked(told)).advice;
const underCover = (of: ShortEnds, nights: number | null = 5, nightWork = true) => ({
  ends: of,
  nights,
  nightWork,
});
const inPot = (nights: number | null) => ({ bare: LOST, nights });

describe('edges of the classes', () => {
  test('the fewest winters that tell a class are those whose clean count shows the leaves’ limit, about', () => {
    // Without a hit in n winters Wilson's 90 % interval ends at z²/(n + z²), z = 1.645 (NIST/SEMATECH e-Handbook 7.2.4.1).
    const shown = (winters: number): number => (winters + 1.645 ** 2) / 1.645 ** 2;
    expect(Math.round(shown(FEWEST_WINTERS_TO_ADVISE))).toBe(LEAF_ONCE_IN);
    expect(Math.round(shown(FEWEST_WINTERS_TO_ADVISE - 1))).toBeLessThan(LEAF_ONCE_IN);
  });

  test('plant it out: both losses exactly as rare as asked, and not a hair oftener', () => {
    expect(classOf({ bare: SAFE })).toBe('plant-out');
    expect(classOf({ bare: ends(4.99, 100) })).toBe('not-here');
    expect(classOf({ bare: ends(100, 24.9) })).toBe('not-here');
  });

  test('with a plan: the first cover that does, and no oftener than a person puts it on', () => {
    const plans = [underCover(LOST), underCover(SAFE), underCover(ends(50, 100))];
    expect(adviseType(asked({ plans }))).toMatchObject({ advice: 'with-plan', plan: 1 });
    expect(classOf({ plans: [underCover(SAFE, COVER_NIGHTS_MOST)] })).toBe('with-plan');
    expect(classOf({ plans: [underCover(SAFE, COVER_NIGHTS_MOST + 0.1)] })).toBe('not-here');
    expect(classOf({ plans: [underCover(SAFE, null)] })).toBe('with-plan');
  });

  test('with nobody at home only what stands all winter counts', () => {
    const buyer: Buyer = { atHome: false, stands: 'either' };
    expect(classOf({ buyer, plans: [underCover(SAFE)], pot: inPot(2) })).toBe('not-here');
    expect(classOf({ buyer, plans: [underCover(SAFE, 0, false)] })).toBe('with-plan');
    expect(classOf({ buyer, bare: SAFE })).toBe('plant-out');
  });

  test('in a pot: on no more nights than the limit, open while nobody has counted them', () => {
    expect(classOf({ pot: inPot(POT_NIGHTS_MOST) })).toBe('in-pot');
    expect(classOf({ pot: inPot(POT_NIGHTS_MOST + 0.1) })).toBe('not-here');
    expect(classOf({ pot: inPot(null) })).toBe('pot-or-not');
    expect(classOf({ pot: { bare: SAFE, nights: null } })).toBe('in-pot');
  });

  test('a buyer with ground only gets no pot, one with a pot only gets nothing else', () => {
    expect(classOf({ pot: inPot(3), buyer: { atHome: true, stands: 'ground' } })).toBe('not-here');
    const potOnly: Buyer = { atHome: true, stands: 'pot' };
    expect(classOf({ bare: SAFE, pot: inPot(3), buyer: potOnly })).toBe('in-pot');
    expect(classOf({ bare: SAFE, pot: inPot(31), buyer: potOnly })).toBe('not-here');
    const away: Buyer = { atHome: false, stands: 'pot' };
    expect(classOf({ pot: { bare: SAFE, nights: 40 }, buyer: away })).toBe('in-pot');
  });
});

describe('short records', () => {
  test('too few winters have no class', () => {
    expect(classOf({ winters: FEWEST_WINTERS_TO_ADVISE - 1, bare: ends(90, 90) })).toBeNull();
    expect(classOf({ winters: 0 })).toBeNull();
  });

  test('counts only: never better than with a plan, and it says that it is a short record', () => {
    // 0 of 15 winters: Wilson's range ends at 1 in 6.544 (15 / 2.7055 + 1), too short for the 25 that kill is to be.
    const unseen = ends(6.5443, 6.5443, true);
    expect(adviseType(asked({ winters: 15, bare: unseen }))).toEqual({
      advice: 'with-plan',
      plan: null,
      record: 'counts only',
    });
    expect(classOf({ winters: 15, bare: ends(6.54, 6.54) })).toBe('not-here');
  });

  test('a long record without one cold night passes as far as it can show', () => {
    // 0 of 60: 1 in 23.2, less than the 25 asked for.
    expect(classOf({ bare: ends(23.2, 23.2, true) })).toBe('plant-out');
    // Estimated, its level so doubtful that it could be 1 in 9.
    expect(classOf({ bare: ends(9, 9, true) })).toBe('not-here');
  });
});

const period = fc.double({ min: 1, max: 200, noNaN: true });
const anyEnds = fc.record({
  leaf: fc.record({ winters: period, unseen: fc.boolean() }),
  kill: fc.record({ winters: period, unseen: fc.boolean() }),
});
const nights = fc.option(fc.double({ min: 0, max: 60, noNaN: true }));
const question: fc.Arbitrary<AdviceQuestion> = fc.record({
  winters: fc.integer({ min: 0, max: 120 }),
  bare: anyEnds,
  plans: fc.array(fc.record({ ends: anyEnds, nightWork: fc.boolean(), nights }), { maxLength: 4 }),
  pot: fc.record({ bare: anyEnds, nights }),
  buyer: fc.record({ atHome: fc.boolean(), stands: fc.constantFrom('either', 'ground', 'pot') }),
});
const rank = (asked: AdviceQuestion): number => {
  const { advice } = adviseType(asked);
  return advice === null ? Infinity : OPEN_ADVICE.indexOf(advice);
};

describe('never a better class for less', () => {
  /** Every loss comes oftener by a factor, and what was never seen may be seen. */
  const colder = ({ leaf, kill }: ShortEnds, by: number): ShortEnds => ({
    leaf: { winters: Math.max(1, leaf.winters / by), unseen: false },
    kill: { winters: Math.max(1, kill.winters / by), unseen: false },
  });

  test('a colder place', () => {
    fc.assert(
      fc.property(question, fc.double({ min: 1, max: 5, noNaN: true }), (asked, by) => {
        const more = (n: number | null): number | null => n && n * by;
        const there: AdviceQuestion = {
          ...asked,
          bare: colder(asked.bare, by),
          plans: asked.plans.map((one) => ({ ...one, ends: colder(one.ends, by), nights: more(one.nights) })),
          pot: {
            bare: colder(asked.pot.bare, by),
            nights: more(asked.pot.nights),
          },
        };
        expect(rank(there)).toBeGreaterThanOrEqual(rank(asked));
      }),
    );
  });

  test('one cover more to choose from, somebody at home, a place for a pot too', () => {
    fc.assert(
      fc.property(question, anyEnds, (asked, another) => {
        const more = [...asked.plans, { ends: another, nightWork: false, nights: 0 }];
        expect(rank({ ...asked, plans: more })).toBeLessThanOrEqual(rank(asked));
        expect(rank({ ...asked, buyer: { ...asked.buyer, atHome: true } })).toBeLessThanOrEqual(
          rank({ ...asked, buyer: { ...asked.buyer, atHome: false } }),
        );
        const standing = (stands: Buyer['stands']) => rank({ ...asked, buyer: { ...asked.buyer, stands } });
        expect(standing('either')).toBeLessThanOrEqual(Math.min(standing('ground'), standing('pot')));
      }),
    );
  });

  test('counting the nights only settles what was open', () => {
    fc.assert(
      fc.property(question, fc.double({ min: 0, max: 60, noNaN: true }), (asked, counted) => {
        const open = adviseType({ ...asked, pot: { ...asked.pot, nights: null } }).advice;
        const settled = adviseType({ ...asked, pot: { ...asked.pot, nights: counted } }).advice;
        if (open === 'pot-or-not') expect(['in-pot', 'not-here']).toContain(settled);
        else expect(settled).toBe(open);
      }),
    );
  });
});
