import { describe, expect, it } from 'vitest';
import { CITRUS_TYPES, findType } from '../../../analysis/tree/catalogue.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import { MATURE_TREE, penaltiesAt, totalPenaltyC, type TreeState } from '../../../analysis/tree/penalties.ts';
import { celsiusDifferenceToFahrenheit } from '../../../analysis/units/temperature.ts';

const totalF = (level: (typeof LEVELS)[number], id: string, state: Partial<TreeState>) =>
  celsiusDifferenceToFahrenheit(
    totalPenaltyC(penaltiesAt(level, findType(id)!, { ...MATURE_TREE, ...state })),
  );

describe('penalties', () => {
  it('adds nothing to the mature, healthy, hardened tree the thresholds are for', () => {
    for (const type of CITRUS_TYPES) {
      for (const level of LEVELS) expect(penaltiesAt(level, type, MATURE_TREE)).toEqual([]);
    }
  });

  it('never moves fruit, whatever the state of the tree', () => {
    const worst: TreeState = {
      ageYears: 1,
      condition: 'weak',
      fruitLoad: true,
      container: true,
      hardened: false,
      rootstock: 'rough-lemon',
    };
    for (const type of CITRUS_TYPES) expect(penaltiesAt('fruit', type, worst)).toEqual([]);
  });

  // Common practice, no source: a young tree is guarded about 5 °F sooner.
  it('guards a newly planted tree about 5 °F sooner, less every year, not at all from year six', () => {
    const byAge = [1, 2, 3, 4, 5, 6, 20].map((ageYears) => totalF('leaf', 'satsuma_owari', { ageYears }));
    expect(Math.abs(byAge[0] - 5)).toBeLessThanOrEqual(1);
    for (let i = 1; i < byAge.length; i++) expect(byAge[i]).toBeLessThanOrEqual(byAge[i - 1]);
    expect(byAge.slice(-2)).toEqual([0, 0]);
  });

  // S04 (UF): satsuma 15 °F when mature and dormant, 26 °F when not: at most 11 °F; S05: up to 8 °F in general.
  it('keeps the loss of hardening within the published bounds', () => {
    for (const type of CITRUS_TYPES) {
      const [soft] = penaltiesAt('leaf', type, { ...MATURE_TREE, hardened: false });
      expect(celsiusDifferenceToFahrenheit(soft.highC)).toBeLessThanOrEqual(11.001);
      expect(celsiusDifferenceToFahrenheit(soft.centreC)).toBeLessThanOrEqual(8.001);
    }
  });

  it('counts only the larger of young and not hardened', () => {
    expect(totalF('wood', 'satsuma_owari', { ageYears: 1, hardened: false })).toBeCloseTo(8, 9);
    expect(totalF('wood', 'eureka_lemon', { ageYears: 1, hardened: false })).toBeCloseTo(5.5, 9);
    const causes = penaltiesAt('wood', findType('eureka_lemon')!, {
      ...MATURE_TREE,
      ageYears: 1,
      hardened: false,
    });
    expect(causes.map((penalty) => penalty.cause)).toEqual(['age']);
  });

  it('adds fruit load, condition, container and rootstock, the hardier rootstock as a small credit', () => {
    expect(
      totalF('kill', 'navel_orange', { fruitLoad: true, condition: 'weak', container: true }),
    ).toBeCloseTo(8.5, 9);
    expect(totalF('kill', 'navel_orange', { rootstock: 'trifoliate' })).toBeCloseTo(-1, 9);
    expect(totalF('kill', 'navel_orange', { rootstock: 'rough-lemon' })).toBeCloseTo(2, 9);
  });
});
