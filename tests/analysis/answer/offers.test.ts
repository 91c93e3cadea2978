import { describe, expect, test } from 'vitest';
import { CROP, type Offer } from '../../../analysis/answer/choose-offer.ts';
import { answerLife } from '../../../analysis/answer/life-answer.ts';
import { lifePlace } from '../../../analysis/answer/life-place.ts';
import { offersAt } from '../../../analysis/answer/offers.ts';
import { IN_THE_OPEN } from '../../../analysis/answer/standing-spot.ts';
import { lastOf } from '../../../analysis/math/steps.ts';
import { CITRUS_TYPES, findType } from '../../../analysis/tree/catalogue.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import { datesFrom, madeNights, type MadeNight } from '../tree/made-nights.ts';
import { FIRST, inventedSubject } from './invented-subject.ts';

const COUNT = 14;
/** The crop of a Satsuma is in by the end of the year: these nights, °C hundredths, come on 20 January. */
const LEAF = -670;
const WOOD = -800;
const KILL = -1200;
/** And this one on 10 December, while it hangs. */
const FRUIT = -250;

interface Cold {
  readonly winter: number;
  readonly level: number;
}

/** Trees that never lack hardening, of the oldest age that may be planted, so that they bear in their first winter. */
function satsumas(cold: readonly Cold[], notComplete: readonly number[] = []): Offer {
  const nights = Array.from({ length: COUNT }, (_, w) => FIRST + w).flatMap((winter) => {
    const from = dayNumber(winter - 1, 11, 1);
    return datesFrom(from, dayNumber(winter, 2, 28)).map((day): MadeNight => {
      const hit = cold.find((one) => one.winter === winter);
      const on = hit && (hit.level === FRUIT ? dayNumber(winter - 1, 12, 10) : dayNumber(winter, 1, 20));
      return day === on ? { day, level: hit!.level } : { day };
    });
  });
  const planting = { startAgeYears: 5, picking: 'late', calendar: 'gulf' } as const;
  const place = lifePlace(inventedSubject(COUNT, notComplete), madeNights(nights), planting);
  const offers = offersAt(place, { tree: MATURE_TREE, planting, spot: IN_THE_OPEN });
  return offers(findType('satsuma_owari')!, { spotId: null, covers: [] });
}

function wintersWith({ cropsByWinter }: Offer, crop: number): number[] {
  return [...cropsByWinter.keys()].filter((w) => cropsByWinter[w] === crop).map((w) => FIRST + w);
}

/** Winters of one planting in each of `COUNT` winters, all followed to the end. */
const ALL = (COUNT * (COUNT + 1)) / 2;

describe('crops by winter of a grown tree', () => {
  test('fruit that is taken while it hangs is lost that winter', () => {
    expect(wintersWith(satsumas([{ winter: 1965, level: FRUIT }]), CROP.lost)).toEqual([1965]);
  });

  test('a loss of leaf after the crop is in costs the next', () => {
    expect(wintersWith(satsumas([{ winter: 1962, level: LEAF }]), CROP.lost)).toEqual([1963]);
  });

  test('a loss of wood, or of the tree, costs three', () => {
    for (const level of [WOOD, KILL])
      expect(wintersWith(satsumas([{ winter: 1966, level }]), CROP.lost)).toEqual([1967, 1968, 1969]);
  });

  test('a loss of leaf while wood grows again makes it no shorter', () => {
    const offer = satsumas([
      { winter: 1966, level: WOOD },
      { winter: 1967, level: LEAF },
    ]);
    expect(wintersWith(offer, CROP.lost)).toEqual([1967, 1968, 1969]);
  });

  test('a loss seen in a winter that is not complete counts for the winters after it', () => {
    const offer = satsumas([{ winter: 1962, level: LEAF }], [1962]);
    expect(wintersWith(offer, CROP.lost)).toEqual([1963]);
    expect(wintersWith(offer, CROP.unknown)).toEqual([1962]);
  });
});

describe('crops lost in ten', () => {
  test('a crop that was in before the leaves were lost is not lost', () => {
    // Planted in 1960, 1961 and 1962; each goes without in 1963.
    expect(satsumas([{ winter: 1962, level: LEAF }]).lostCropsInTen).toBeCloseTo((10 * 3) / ALL, 12);
  });

  test('fruit taken in a winter that is not complete counts no more than fruit kept there', () => {
    expect(satsumas([{ winter: 1965, level: FRUIT }], [1965]).lostCropsInTen).toBe(0);
    // 6 trees in 1965, the one planted then included.
    expect(satsumas([{ winter: 1965, level: FRUIT }]).lostCropsInTen).toBeCloseTo((10 * 6) / ALL, 12);
  });

  test('nothing is known, and nothing fails, where no winter is complete', () => {
    const offer = satsumas(
      [],
      Array.from({ length: COUNT }, (_, w) => FIRST + w),
    );
    expect(offer).toMatchObject({ lostCropsInTen: null, livingInTen: null, livingInTenLow: null });
  });
});

test('trees living ten years, and the low end, are those that the life of trees tells', () => {
  const planting = { startAgeYears: 1, picking: 'late', calendar: 'gulf' } as const;
  const nights = Array.from({ length: 40 }, (_, w) => ({
    day: dayNumber(FIRST + w, 1, 20),
    level: -90 * (w % 9),
  }));
  const place = lifePlace(inventedSubject(40, [], 1), madeNights(nights), planting);
  const none = NO_LEVEL_GAIN_SPREADS;
  const grown = { tree: MATURE_TREE, gains: none, spotGains: none, nightWork: false, planting };
  const question = { types: CITRUS_TYPES, ...grown };
  const offers = offersAt(place, { tree: MATURE_TREE, planting, spot: IN_THE_OPEN });
  for (const { id, night_by_night } of lastOf(answerLife(place, question)).types) {
    const { livingInTen, livingInTenLow } = offers(findType(id)!, { spotId: null, covers: [] });
    const { share, low } = night_by_night.ten_years;
    expect([livingInTen, livingInTenLow]).toEqual([10 * share!, 10 * low!]);
  }
});
