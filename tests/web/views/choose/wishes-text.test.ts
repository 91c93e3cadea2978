import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkWishes, WISH_LIMITS } from '../../../../analysis/answer/choose-wishes.ts';
import { CITRUS_TYPES } from '../../../../analysis/tree/catalogue.ts';
import { readAddress, writeAddress } from '../../../../web/state/address.ts';
import {
  kindOf,
  KINDS,
  readWishesText,
  USUAL_WISHES,
  writeWishesText,
  type Kind,
} from '../../../../web/views/choose/wishes-text.ts';

const figure = (wish: keyof typeof WISH_LIMITS) =>
  fc.integer({ min: WISH_LIMITS[wish].least, max: WISH_LIMITS[wish].most });

describe('wishes as text', () => {
  it('come back as they were, by way of the address', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(KINDS) as Kind[])),
        figure('nightsToCover'),
        figure('lostCropsInTen'),
        figure('yearsToWait'),
        figure('livingInTen'),
        (kind, nightsToCover, lostCropsInTen, yearsToWait, livingInTen) => {
          const wishes = {
            kinds: KINDS[kind].uses,
            nightsToCover,
            lostCropsInTen,
            yearsToWait,
            livingInTen,
          };
          const text = writeWishesText(wishes);
          const address = readAddress(writeAddress(text === undefined ? {} : { wishes: text }));
          expect(address.ignored).toEqual([]);
          expect(readWishesText(address.chosen.wishes ?? null)).toEqual({ wishes, problem: null });
          expect(kindOf(wishes)).toBe(kind);
        },
      ),
    );
  });

  it('are the usual ones without a text, and need none then', () => {
    expect(readWishesText(null)).toEqual({ wishes: USUAL_WISHES, problem: null });
    expect(writeWishesText(USUAL_WISHES)).toBeUndefined();
    expect(() => checkWishes(USUAL_WISHES)).not.toThrow();
  });

  it('are the usual ones with a sentence where the text makes no sense', () => {
    const wrong = [
      '',
      'oops',
      'eating',
      'eating,5,2,4',
      'eating,5,2,4,8,1',
      'fresh,5,2,4,8',
      'toString,5,2,4,8',
    ];
    wrong.push('eating,31,2,4,8', 'eating,5,11,4,8', 'eating,5,2,0,8', 'eating,5,2,4,11', 'eating,-1,2,4,8');
    wrong.push('eating,5.5,2,4,8', 'eating,,2,4,8', 'eating,5,2,4,1e1', 'eating, 5,2,4,8');
    for (const text of wrong) {
      const { wishes, problem } = readWishesText(text);
      expect(wishes, text).toBe(USUAL_WISHES);
      expect(problem, text).toContain(`“${text}”`);
    }
    expect(readWishesText('x'.repeat(500)).problem!.length).toBeLessThan(300);
  });

  it('leave rootstocks out unless all are asked for', () => {
    const rootstocks = CITRUS_TYPES.filter(({ use }) => use === 'rootstock');
    expect(rootstocks.length).toBeGreaterThan(0);
    const has = (kind: Kind): boolean => rootstocks.every(({ use }) => KINDS[kind].uses.includes(use));
    expect([has('eating'), has('cooking'), has('both'), has('all')]).toEqual([false, false, false, true]);
  });
});
