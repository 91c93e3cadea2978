import { describe, expect, test } from 'vitest';
import { sceneOf, unknownsLeft } from '../../../analysis/answer/advice-customer.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { MATURE_TREE, penaltiesAt, totalPenaltyC } from '../../../analysis/tree/penalties.ts';

const AGES = [1, 2, 3, 4, 5, 6, 7, 10, 30];
const aged = (ageYears: number) => ({ ...MATURE_TREE, ageYears });

describe('a tree that may be planted young', () => {
  test('is asked about only where the page’s tree has its grown thresholds', () => {
    const isYoung = (ageYears: number): boolean =>
      totalPenaltyC(penaltiesAt('kill', CITRUS_TYPES[0], aged(ageYears))) >
      totalPenaltyC(penaltiesAt('kill', CITRUS_TYPES[0], MATURE_TREE));
    const page = { hasSpot: false, hasAges: false };
    const asked = AGES.filter((age) => unknownsLeft({ ...page, tree: aged(age) }, {}).includes('young'));
    expect(asked).toEqual(AGES.filter((age) => !isYoung(age)));
  });

  test('is never taken for older than it is, and is of the tenderest age', () => {
    for (const age of AGES) {
      const { ageYears } = sceneOf(aged(age), { young: 'yes' }).tree;
      expect(ageYears).toBeLessThanOrEqual(age);
      for (const type of CITRUS_TYPES)
        expect(totalPenaltyC(penaltiesAt('kill', type, aged(ageYears)))).toBe(
          totalPenaltyC(penaltiesAt('kill', type, aged(1))),
        );
      expect(sceneOf(aged(age), { young: 'no' }).tree.ageYears).toBe(age);
    }
  });
});
