import { describe, expect, test } from 'vitest';
import { answerLife, answerLifeWithoutRanges } from '../../../analysis/answer/life-answer.ts';
import { lifePlace } from '../../../analysis/answer/life-place.ts';
import type { LifeAnswer } from '../../../analysis/answer/life.ts';
import { lastOf } from '../../../analysis/math/steps.ts';
import { strictProtection } from '../../../analysis/answer/protection.ts';
import { CITRUS_TYPES, findType } from '../../../analysis/tree/catalogue.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { READINGS } from '../../../analysis/tree/winter-margins.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import { madeNights } from '../tree/made-nights.ts';
import { BARE_TEXTS } from './bare-texts.ts';
import { FIRST, inventedSubject } from './invented-subject.ts';

/** No night is cold enough to harm. */
function harmless(winters: number, notComplete: readonly number[] = []): LifeAnswer {
  const planting = { startAgeYears: 1, picking: 'late', calendar: 'gulf' } as const;
  const place = lifePlace(inventedSubject(winters, notComplete), madeNights([]), planting);
  const none = NO_LEVEL_GAIN_SPREADS;
  return lastOf(
    answerLife(place, {
      types: CITRUS_TYPES.slice(0, 1),
      tree: MATURE_TREE,
      gains: none,
      spotGains: none,
      nightWork: false,
      planting,
    }),
  );
}

function labels(winters: number): number[] {
  return Array.from({ length: winters }, (_, w) => FIRST + w);
}

describe('nights covered', () => {
  const covered = (cover: string): (number | undefined)[] => {
    const { gains, nightWork } = strictProtection({ ...BARE_TEXTS, cover });
    const planting = { startAgeYears: 1, picking: 'late', calendar: 'gulf' } as const;
    const night = { day: dayNumber(FIRST + 3, 1, 20), level: -100 };
    const place = lifePlace(inventedSubject(20), madeNights([night]), planting);
    const question = { tree: MATURE_TREE, gains, nightWork, spotGains: NO_LEVEL_GAIN_SPREADS, planting };
    const { types } = answerLifeWithoutRanges(place, { ...question, types: [findType('mexican_lime')!] });
    return READINGS.map((reading) => types[0]![reading].nights_covered?.worst);
  };

  test('are told of covers that go on at night, not of soil kept bare', () => {
    expect(covered('cloth-heavy')).toEqual([1, 1]);
    expect(covered('bare-soil')).toEqual([undefined, undefined]);
    expect(covered('bare-soil,cloth-heavy')).toEqual([1, 1]);
  });
});

describe('the life of trees on short records', () => {
  test.each([1, 5, 19, 20, 130])('%i winters without harm never make it certain', (winters) => {
    const [type] = harmless(winters).types;
    let before = 1;
    for (const { age, share, low, high, followed, alive } of type!.night_by_night.living) {
      expect(share).toBe(1);
      expect(high).toBe(1);
      expect(low).toBeLessThan(before);
      // Three in n is the usual upper end of none in n.
      expect(low).toBeGreaterThan((1 - Math.min(0.99, 3 / winters)) ** age - 1e-9);
      expect(alive).toBe(followed);
      expect(followed).toBe(Math.max(0, winters - age + 1));
      before = low!;
    }
  });

  test('fewer than 20 winters are said to be counts', () => {
    expect(harmless(20).notes).toEqual([]);
    expect(harmless(19).notes).toEqual([
      'Only 19 complete winters to plant in: counts of trees are what there is, a share of so few says little.',
    ]);
    expect(harmless(1).notes[0]).toMatch(/^Only 1 complete winter to plant in/);
  });

  test('without a complete winter nothing is told, and said so', () => {
    const { winters, types, notes } = harmless(3, labels(3));
    expect(winters).toEqual([]);
    expect(notes).toEqual(['No winter on record is complete, so no tree could be planted and followed.']);
    const { living, plantings, crops_in_ten } = types[0]!.night_by_night;
    expect(plantings).toEqual([]);
    expect(crops_in_ten).toBeNull();
    for (const { followed, share, low, high } of living)
      expect([followed, share, low, high]).toEqual([0, null, null, null]);
  });

  test('many winters that are not complete are said, those before the first that is left out', () => {
    const early = [1960, 1961, 1962];
    expect(harmless(43, [...early, 1970, 1980, 1990, 2000]).notes).toEqual([]);
    expect(harmless(43, [...early, 1970, 1980, 1990, 2000, 2001]).notes).toEqual([
      '5 of the 40 winters are not complete: trees are taken to live through those unless a loss was seen, ' +
        'so counts of living trees may be too high. Shares leave such winters out.',
    ]);
  });
});
