import { describe, expect, test } from 'vitest';
import { adviceNights, nightsIndex } from '../../../analysis/answer/advice-nights.ts';
import { lifePlace } from '../../../analysis/answer/life-place.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import { datesFrom, madeNights, type MadeNight } from '../tree/made-nights.ts';
import { FIRST, inventedSubject } from './invented-subject.ts';

const PLANTING = { startAgeYears: 5, picking: 'late', calendar: 'gulf' } as const;
const WINTERS = 4;
/** A Satsuma's leaves go at -6.67 °C, in a pot at -3.89: it is covered, or comes in, from 1.11 above. Hardened all winter. */
const GROUND = -550;
const POT_ONLY = -300;

/** A place with so many nights of these levels in January of each winter, all others mild. */
function nightsAt(perWinter: readonly (readonly number[])[], notComplete: readonly number[] = []) {
  const nights = perWinter.flatMap((levels, w) =>
    datesFrom(dayNumber(FIRST + w - 1, 11, 1), dayNumber(FIRST + w, 2, 28)).map((day): MadeNight => {
      const level = levels[day - dayNumber(FIRST + w, 1, 10)];
      return level === undefined ? { day } : { day, level };
    }),
  );
  const place = lifePlace(inventedSubject(WINTERS, notComplete), madeNights(nights), PLANTING);
  return adviceNights(place, CITRUS_TYPES, {
    tree: MATURE_TREE,
    planting: PLANTING,
    spotGains: NO_LEVEL_GAIN_SPREADS,
  });
}
const MATURE = nightsIndex(MATURE_TREE);

describe('nights to cover and to bring a pot in', () => {
  const { satsuma_owari: satsuma } = nightsAt([
    [GROUND - 20],
    [],
    [POT_ONLY, POT_ONLY, GROUND - 20],
    [POT_ONLY],
  ]);

  test('are those near the limit of the leaves; in a pot the roots are as cold as the air', () => {
    expect(satsuma.ground[MATURE]).toMatchObject({ mean: 0.5, median: 0.5, winters: WINTERS });
    expect(satsuma.pot[MATURE]).toMatchObject({
      mean: 5 / 4,
      median: 1,
      most: { winter: FIRST + 2, nights: 3 },
    });
    // Type 7 of 0, 1, 1, 3 at nine tenths: 1 + 0.7 x 2.
    expect(satsuma.pot[MATURE].hard).toBeCloseTo(2.4, 12);
  });

  test('a young tree, a crop to save and a pot never need fewer', () => {
    const here = nightsAt([[GROUND], [POT_ONLY], [GROUND, -700], []]);
    for (const { id } of CITRUS_TYPES) {
      const { ground, pot } = here[id];
      ground.forEach(({ mean }, at) => expect(pot[at].mean).toBeGreaterThanOrEqual(mean));
      const at = (ageYears: number, fruitLoad: boolean) => ground[nightsIndex({ ageYears, fruitLoad })].mean;
      expect(at(2, false)).toBeGreaterThanOrEqual(at(10, false));
      expect(at(10, true)).toBeGreaterThanOrEqual(at(10, false));
    }
  });

  test('only complete winters count; without one there is nothing to tell', () => {
    const { satsuma_owari: two } = nightsAt([[-700], [-700, -700], [], []], [FIRST, FIRST + 3]);
    expect(two.ground[MATURE]).toMatchObject({ mean: 1, winters: 2, most: { winter: FIRST + 1, nights: 2 } });
    const all = Array.from({ length: WINTERS }, (_, w) => FIRST + w);
    expect(nightsAt([[-700], [], [], []], all)).toEqual({});
  });
});
