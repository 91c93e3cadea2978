import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choose } from '../../../analysis/answer/choose.ts';
import { tryWay } from '../../../analysis/answer/choose-tried.ts';
import { coversTried } from '../../../analysis/answer/choose-ways.ts';
import { allMet } from '../../../analysis/answer/choose-wishes.ts';
import type { Wishes } from '../../../analysis/answer/choosing.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { asking, growing, OPEN } from './made-offers.ts';

const wishes = fc.record<Wishes>({
  kinds: fc.subarray(['eating', 'cooking', 'rootstock'] as const),
  nightsToCover: fc.integer({ min: 0, max: 30 }),
  lostCropsInTen: fc.integer({ min: 0, max: 10 }),
  yearsToWait: fc.integer({ min: 1, max: 10 }),
  livingInTen: fc.integer({ min: 0, max: 10 }),
});
const offers = fc
  .array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 1, maxLength: 9 })
  .map(growing);
const runs = { numRuns: 150 };

describe('whatever is wished', () => {
  it('bearing more never shortens the list of those that meet it', () => {
    const more = fc.record({
      nightsToCover: fc.integer({ min: 0, max: 10 }),
      lostCropsInTen: fc.integer({ min: 0, max: 5 }),
      yearsToWait: fc.integer({ min: 0, max: 5 }),
      livingInTen: fc.integer({ min: 0, max: 5 }),
    });
    fc.assert(
      fc.property(wishes, more, offers, (strict, by, offerOf) => {
        const lenient: Wishes = {
          kinds: strict.kinds,
          nightsToCover: Math.min(30, strict.nightsToCover + by.nightsToCover),
          lostCropsInTen: Math.min(10, strict.lostCropsInTen + by.lostCropsInTen),
          yearsToWait: Math.min(10, strict.yearsToWait + by.yearsToWait),
          livingInTen: Math.max(0, strict.livingInTen - by.livingInTen),
        };
        const ids = (wished: Wishes) =>
          choose(asking(CITRUS_TYPES, wished), offerOf).meet.map(({ typeId }) => typeId);
        expect(ids(lenient)).toEqual(expect.arrayContaining(ids(strict)));
      }),
      runs,
    );
  });

  it('who meets it does so in every wish, who closes a gap too, and every type of the kinds stands once', () => {
    fc.assert(
      fc.property(wishes, offers, (wished, offerOf) => {
        const { meet, nearly, not } = choose(asking(CITRUS_TYPES, wished), offerOf);
        expect(meet.every((choice) => allMet(choice.wishes))).toBe(true);
        for (const { wishes: told, closing } of nearly) {
          expect(told.filter(({ met }) => !met)).toHaveLength(1);
          if (closing) expect(allMet(closing.wishes)).toBe(true);
        }
        const told = [...meet, ...nearly, ...not].map(({ typeId }) => typeId).sort();
        const asked = CITRUS_TYPES.filter(({ use }) => wished.kinds.includes(use)).map(({ id }) => id);
        expect(told).toEqual(asked.sort());
      }),
      runs,
    );
  });

  it('passing over hopeless ways loses none that meets it', () => {
    fc.assert(
      fc.property(wishes, offers, (wished, offerOf) => {
        const found = choose(asking(CITRUS_TYPES, wished), offerOf).meet.map(({ typeId }) => typeId);
        const plainly = CITRUS_TYPES.filter(
          (type) =>
            wished.kinds.includes(type.use) &&
            coversTried(OPEN).some((cover) => allMet(tryWay(type, null, cover, wished, offerOf).wishes)),
        ).map(({ id }) => id);
        expect([...found].sort()).toEqual(plainly.sort());
      }),
      runs,
    );
  });

  it('those that meet it stand in the order stated, and the same again', () => {
    fc.assert(
      fc.property(wishes, offers, (wished, offerOf) => {
        const once = choose(asking(CITRUS_TYPES, wished), offerOf);
        expect(choose(asking(CITRUS_TYPES, wished), offerOf)).toEqual(once);
        const keys = once.meet.map(({ typeId, wishes: [nights, crops, , living] }) => [
          -living.offered!,
          crops.offered!,
          nights.offered!,
          CITRUS_TYPES.findIndex(({ id }) => id === typeId),
        ]);
        const byKey = (a: readonly number[], b: readonly number[]): number =>
          a.map((key, k) => key - b[k]).find((difference) => difference !== 0) ?? 0;
        expect(keys).toEqual([...keys].sort(byKey));
      }),
      runs,
    );
  });
});
