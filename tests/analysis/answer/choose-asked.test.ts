import { describe, expect, it } from 'vitest';
import { choose, choosing } from '../../../analysis/answer/choose.ts';
import { InputError } from '../../../analysis/records/input-error.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { asking, offer, OPEN, recording, typesOf } from './made-offers.ts';

const satsuma = typesOf('satsuma_owari');

describe('what is asked and when', () => {
  it('looks at the kinds wished for only', () => {
    const kinds = (...wished: ('eating' | 'cooking' | 'rootstock')[]) =>
      choose(asking(CITRUS_TYPES, { kinds: wished }), () => offer()).meet.length;
    const [eating, cooking, rootstock] = [kinds('eating'), kinds('cooking'), kinds('rootstock')];
    expect(Math.min(eating, cooking, rootstock)).toBeGreaterThan(0);
    expect(eating + cooking + rootstock).toBe(CITRUS_TYPES.length);
    expect(kinds()).toBe(0);
    expect(choose(asking(typesOf('sour_orange'), { kinds: ['eating'] }), () => offer())).toEqual({
      meet: [],
      nearly: [],
      not: [],
      pairs: [],
    });
  });

  it('never tries lights unconfirmed, nor a garage for a tree in the ground', () => {
    const all = (page: typeof OPEN) => {
      const { offerOf, asked } = recording(() => offer({ livingInTen: 7.5 }));
      choose(asking(satsuma, {}, page), offerOf);
      return new Set(asked.flatMap(({ covers }) => covers));
    };
    expect(all(OPEN).has('lights')).toBe(false);
    expect(all(OPEN).has('garage')).toBe(false);
    expect(all({ ...OPEN, container: true }).has('garage')).toBe(true);
    const lit = { ...OPEN, covers: ['lights', 'lights-confirmed'] as const };
    expect(all(lit).has('lights')).toBe(true);
  });

  it('leaves out of the page’s cover what should not be done', () => {
    const page = { ...OPEN, covers: ['sheet', 'lights', 'open-flame', 'tied'] as const };
    const { offerOf, asked } = recording(() => offer({ livingInTen: 7.5 }));
    choose(asking(satsuma, {}, page), offerOf);
    expect(asked.map(({ covers }) => covers)).toContainEqual(['sheet', 'tied']);
    expect(asked.some(({ covers }) => covers.includes('open-flame'))).toBe(false);
  });

  it('reads ranges only of what is told', () => {
    const read: string[] = [];
    const chosen = choose(asking(CITRUS_TYPES), (type, { covers }) => ({
      ...offer({ livingInTen: type.id === 'satsuma_owari' && covers.includes('tied') ? 8.5 : 3 }),
      get livingInTenLow() {
        read.push(`${type.id} ${covers.join()}`);
        return 4;
      },
    }));
    expect(read).toEqual(['satsuma_owari cloth-medium,tied']);
    expect(chosen.meet[0].wishes[3].rule).toContain('It could be as few as 4');
  });

  it('never takes a cover for none, though a grown tree never needed it', () => {
    const seldom = (nightsToCover: number) =>
      choose(asking(satsuma, { nightsToCover }), (_, { covers }) =>
        offer({ nightsToCover: 0, livingInTen: covers.includes('tied') ? 9 : 3 }),
      );
    expect(seldom(1).meet[0].wishes[0]).toMatchObject({
      offered: 0.1,
      rule: 'Hardly ever to be covered once grown; you would cover 1 night.',
    });
    expect(seldom(0).meet).toEqual([]);
    expect(seldom(0).nearly[0].wishes[0].rule).toBe(
      'Hardly ever to be covered once grown; you would cover none.',
    );
  });

  it('counts no nights for what is not put on at night', () => {
    const chosen = choose(asking(satsuma, { nightsToCover: 0 }), (_, { covers }) =>
      offer({ nightsToCover: 9, livingInTen: covers.includes('soil-bank') ? 9 : 3 }),
    );
    expect(chosen.meet[0]).toMatchObject({ way: { covers: ['soil-bank'] } });
    expect(chosen.meet[0].wishes[0].offered).toBe(0);
  });

  it('tells the share done, rising to all, and can be left at any step', () => {
    const types = typesOf('satsuma_owari', 'meyer_lemon', 'navel_orange');
    const { offerOf, asked } = recording((type) =>
      offer({ lostCropsInTen: type.id === 'meyer_lemon' ? 2.5 : 1 }),
    );
    const shares = [...choosing(asking(types), offerOf)];
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    const before = asked.length;
    const left = choosing(asking(types), offerOf);
    left.next();
    left.return({ meet: [], nearly: [], not: [], pairs: [] });
    expect(left.next().done).toBe(true);
    expect(asked.length - before).toBeLessThan(before);
  });

  it('refuses wishes that are none', () => {
    for (const wish of [{ nightsToCover: -1 }, { livingInTen: 11 }, { yearsToWait: NaN }])
      expect(() => choose(asking(satsuma, wish), () => offer())).toThrow(InputError);
  });
});
