import { describe, expect, it } from 'vitest';
import { nightsFromHourly } from '../../../analysis/night/nights-from-hourly.ts';
import type { KeptNights } from '../../../analysis/records/kept-nights.ts';
import { MISSING_HUNDREDTHS } from '../../../analysis/records/nights.ts';
import { findType } from '../../../analysis/tree/catalogue.ts';
import { flushOfNights } from '../../../analysis/tree/flush.ts';
import { hardeningOfNights } from '../../../analysis/tree/hardening.ts';
import { atEveryLevel } from '../../../analysis/tree/level-gains.ts';
import { makeMargins } from '../../../analysis/tree/make-margins.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import {
  isHit,
  LOSSES,
  marginIndex,
  type Loss,
  type TreeInWinter,
} from '../../../analysis/tree/winter-margins.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import {
  celsiusDifferenceToFahrenheit,
  fahrenheitToCelsius,
  toHundredths,
} from '../../../analysis/units/temperature.ts';
import { NO_GAINS } from '../../../analysis/winter/winter-minima.ts';
import type { Hemisphere } from '../../../analysis/winter/winter-year.ts';
import { hourly, hours } from '../night/series.ts';
import { completeWinters, datesFrom, keptOf, madeNights, type MadeNight } from './made-nights.ts';

const MATURE: TreeInWinter = { reading: 'night_by_night', ageClass: 3, bearing: false };
const HARDENED: TreeInWinter = { ...MATURE, reading: 'hardened' };
const levelOfF = (temperatureF: number): number => toHundredths(fahrenheitToCelsius(temperatureF));

/** Margin of a winter for a type without penalties or gains, on the Gulf coast's calendar. */
function marginAt(
  nights: KeptNights,
  id: string,
  winter: number,
  tree: TreeInWinter,
  loss: Loss,
  hemisphere: Hemisphere = 'north',
): number {
  const state = {
    hardening: hardeningOfNights(nights),
    flush: flushOfNights(nights, 'gulf', hemisphere),
  };
  const made = makeMargins(nights, completeWinters(winter), state, {
    type: findType(id)!,
    tree: MATURE_TREE,
    gains: atEveryLevel(NO_GAINS),
    hangsUntil: null,
    hemisphere,
  });
  return made.margins[marginIndex(0, tree) + LOSSES.indexOf(loss)];
}

describe('what hardening moves', () => {
  // Handbook, adjustments: (1 - min(CHI500 / 400, 1)) * D, D = 8 °F for satsuma, kumquat and hardier types, 5 °F for mandarin,
  // orange, grapefruit and Meyer, 3 °F for lemon, lime and citron; within S04's 15 to 26 °F for satsuma.
  const D = {
    satsuma_owari: 8,
    kumquat_nagami: 8,
    navel_orange: 5,
    grapefruit: 5,
    meyer_lemon: 5,
    eureka_lemon: 3,
  };

  it.each(Object.entries(D))(
    '%s: %d °F from not hardened to hardened, half of it at 200 hours',
    (id, degreesF) => {
      const day = dayNumber(2021, 1, 20);
      const before = (coolHours: number): MadeNight[] =>
        datesFrom(day - 30, day - 1).map((own) => ({ day: own, coolHours }));
      const movedF = (coolHours: number): number => {
        const nights = madeNights([...before(coolHours), { day, level: levelOfF(15), coolHours }]);
        const moved =
          marginAt(nights, id, 2021, MATURE, 'leaf') - marginAt(nights, id, 2021, HARDENED, 'leaf');
        return celsiusDifferenceToFahrenheit(moved / 100);
      };
      expect(Math.abs(movedF(0) - degreesF)).toBeLessThan(0.02);
      expect(Math.abs(movedF(200) - degreesF / 2)).toBeLessThan(0.02);
      expect(movedF(400)).toBe(0);
      expect(movedF(500)).toBe(0);
    },
  );

  it('moves a young tree only by the larger of the two: 5.5 °F for its age, 8 °F less hardening', () => {
    const day = dayNumber(2021, 1, 20);
    const limitF = (coolHours: number): number => {
      const nights = madeNights([
        ...datesFrom(day - 30, day - 1).map((own) => ({ day: own, coolHours })),
        { day, level: levelOfF(15), coolHours },
      ]);
      const margin = marginAt(nights, 'satsuma_owari', 2021, { ...MATURE, ageClass: 0 }, 'leaf');
      return 15 + celsiusDifferenceToFahrenheit(margin / 100);
    };
    expect(Math.abs(limitF(0) - 28)).toBeLessThan(0.02);
    expect(Math.abs(limitF(100) - 26)).toBeLessThan(0.02);
    // 8 °F * (1 - 300/400) = 2 °F is less than the age's.
    expect(Math.abs(limitF(300) - 25.5)).toBeLessThan(0.02);
  });
});

describe('early and late freezes', () => {
  /** Hourly readings: `ofDay` is a day's temperature, eleven hours after midnight of `freeze` at 24 °F. */
  function freezeOn(freeze: number, ofDay: (day: number) => number): KeptNights {
    const times = hours(24 * dayNumber(2020, 10, 1), 24 * dayNumber(2021, 4, 1));
    const temps = times.map((time) => {
      const day = Math.floor(time / 24);
      const frozen = day === freeze && time % 24 <= 11;
      return frozen ? fahrenheitToCelsius(24) : ofDay(day);
    });
    return keptOf(nightsFromHourly(hourly(times, temps)), 'north');
  }
  const winterCold = (day: number): number =>
    day >= dayNumber(2020, 12, 1) && day < dayNumber(2021, 3, 1) ? 6 : 20;

  // Handbook, cautions: "A November freeze after warm weather hurts more than a colder January one" (S04, S05).
  it('24 °F takes the leaves of a satsuma after a warm autumn, and not in January after six weeks of cool days', () => {
    const november = freezeOn(dayNumber(2020, 11, 15), () => 20);
    const january = freezeOn(dayNumber(2021, 1, 15), winterCold);
    const margin = (nights: KeptNights, tree: TreeInWinter): number =>
      marginAt(nights, 'satsuma_owari', 2021, tree, 'leaf');
    expect(isHit(margin(november, MATURE))).toBe(true);
    expect(isHit(margin(january, MATURE))).toBe(false);
    expect(margin(january, MATURE)).toBe(margin(january, HARDENED));
    // By the reading that takes every tree as hardened the two are alike.
    expect(margin(november, HARDENED)).toBe(margin(january, HARDENED));
    // One cool night of twelve hours: 8 °F * (1 - 12/400) above the January limit.
    const warmerF = celsiusDifferenceToFahrenheit((margin(november, MATURE) - margin(january, MATURE)) / 100);
    expect(warmerF).toBeGreaterThan(7);
    expect(warmerF).toBeLessThanOrEqual(8.01);
  });

  it('in January after a warm spell the limit is warmer than without', () => {
    const freeze = dayNumber(2021, 1, 15);
    const spell = freezeOn(freeze, (day) => (day >= freeze - 6 && day < freeze ? 20 : winterCold(day)));
    const steady = freezeOn(freeze, winterCold);
    expect(marginAt(spell, 'satsuma_owari', 2021, MATURE, 'leaf')).toBeGreaterThan(
      marginAt(steady, 'satsuma_owari', 2021, MATURE, 'leaf'),
    );
  });

  // S05: new flush is hurt at about 31 °F.
  it('in February after a warm spell 31 °F takes the new growth, though not the old leaves', () => {
    const freeze = dayNumber(2021, 2, 20);
    const winter = (warm: number, freezeF: number): KeptNights =>
      madeNights(
        datesFrom(dayNumber(2020, 12, 1), dayNumber(2021, 2, 27))
          .filter((day) => day < freeze - 8 - warm || day >= freeze - 8)
          .map((day) => ({ day, level: day === freeze ? levelOfF(freezeF) : 500 })),
      );
    const flush = (nights: KeptNights): number => marginAt(nights, 'satsuma_owari', 2021, MATURE, 'flush');
    expect(isHit(flush(winter(12, 31)))).toBe(true);
    expect(flush(winter(12, 31))).toBe(0);
    expect(isHit(flush(winter(12, 31.1)))).toBe(false);
    expect(flush(winter(5, 31))).toBe(MISSING_HUNDREDTHS);
    for (const id of ['satsuma_owari', 'navel_orange', 'meyer_lemon']) {
      for (const loss of ['leaf', 'wood', 'kill'] as const) {
        expect(isHit(marginAt(winter(12, 31), id, 2021, MATURE, loss))).toBe(false);
      }
    }
  });

  it('turns with the seasons south of the equator', () => {
    const freeze = dayNumber(2021, 8, 20);
    const nights = madeNights(
      datesFrom(dayNumber(2021, 6, 1), dayNumber(2021, 8, 27))
        .filter((day) => day < freeze - 20 || day >= freeze - 8)
        .map((day) => ({ day, level: day === freeze ? levelOfF(31) : 500 })),
      'south',
    );
    expect(marginAt(nights, 'satsuma_owari', 2021, MATURE, 'flush', 'south')).toBe(0);
    // The same dates in the north are a summer: no spell of the cold months, no bloom.
    const north = madeNights([...nights.day].map((day, i) => ({ day, level: nights.sustained[0][i] })));
    expect(marginAt(north, 'satsuma_owari', 2022, MATURE, 'flush')).toBe(MISSING_HUNDREDTHS);
    const autumn = madeNights([{ day: dayNumber(2021, 5, 10), level: levelOfF(24), coolHours: 30 }], 'south');
    const midwinter = madeNights(
      datesFrom(dayNumber(2021, 6, 1), dayNumber(2021, 7, 10)).map((day) => ({
        day,
        level: day === dayNumber(2021, 7, 10) ? levelOfF(24) : 500,
      })),
      'south',
    );
    expect(isHit(marginAt(autumn, 'satsuma_owari', 2021, MATURE, 'leaf', 'south'))).toBe(true);
    expect(isHit(marginAt(midwinter, 'satsuma_owari', 2021, MATURE, 'leaf', 'south'))).toBe(false);
  });
});
