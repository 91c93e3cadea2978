import { wilsonInterval } from '../extremes/wilson.ts';
import { SEASON_DAYS, seasonDayOfDate } from '../winter/season-day.ts';
import type { Hemisphere } from '../winter/winter-year.ts';
import { bearsAllYear, ripensEveryDay, type HarvestWindow } from './harvest.ts';

/** A crop is kept from the cold well enough while fewer winters than this have taken it. */
export const BEARABLE_LOSS = 0.1;

const LAST_DAY = SEASON_DAYS - 1;

/** Share of winters that have taken the crop, with Wilson's 90 % range. */
export interface LostShare {
  readonly lost: number;
  readonly low: number;
  readonly high: number;
}

/** A half-month; days as `seasonDayOf` counts them, both included; lost by its end. */
export interface HalfMonthLoss extends LostShare {
  readonly fromDay: number;
  readonly toDay: number;
}

/** The crop of a type against the first night of each winter that takes fruit. */
export interface FruitLoss {
  readonly halves: readonly HalfMonthLoss[];
  /** Before the first ripe day; `null` where fruit ripens all year, or without a winter. */
  readonly beforeRipe: number | null;
  /** Before the last ripe day; in the whole winter where fruit always hangs. */
  readonly beforeEnd: number | null;
  /** Last day to pick by with a loss in fewer than 1 winter in 10; `null`: the first ripe day is too late, or no winter is known. */
  readonly pickBy: number | null;
  readonly byPickBy: LostShare | null;
  /** The whole harvest keeps the loss under 1 in 10. */
  readonly safeToTheEnd: boolean;
}

/**
 * Counts in how many winters a night that takes fruit has come by each day of the harvest. A crop hangs from the summer
 * before it ripens on, so a night before its first ripe day takes it too. Fruit that hangs in all cold months is told of from
 * October to April (April to October in the south).
 * @param first day of each winter's first such night, NaN in one without
 */
export function fruitLoss(
  first: Float64Array,
  type: { readonly id: string },
  window: HarvestWindow,
  hemisphere: Hemisphere,
): FruitLoss {
  const winters = first.length;
  if (winters === 0)
    return {
      halves: [],
      beforeRipe: null,
      beforeEnd: null,
      pickBy: null,
      byPickBy: null,
      safeToTheEnd: false,
    };
  const lostBy = (day: number): LostShare => {
    const hits = first.filter((came) => came <= day).length;
    return { lost: hits / winters, ...wilsonInterval(hits, winters) };
  };
  const { fromDay, toDay, alwaysExposed } = window;
  const told = alwaysExposed ? coldMonths(hemisphere) : { fromDay, toDay };
  const halves = halfMonths(hemisphere)
    .filter((half) => half.fromDay >= told.fromDay && half.toDay <= told.toDay)
    .map((half) => ({ ...half, ...lostBy(half.toDay) }));
  const beforeEnd = lostBy(alwaysExposed ? Infinity : toDay).lost;
  const allYear = bearsAllYear(type, window);
  const beforeRipe = allYear ? null : lostBy(fromDay - 1).lost;
  const safeToTheEnd = beforeEnd < BEARABLE_LOSS;
  const pickBy = safeToTheEnd ? toDay : lastBearableDay(first, window, allYear);
  return {
    halves,
    beforeRipe,
    beforeEnd,
    pickBy,
    byPickBy: pickBy === null ? null : safeToTheEnd && alwaysExposed ? lostBy(Infinity) : lostBy(pickBy),
    safeToTheEnd,
  };
}

/** The day before the winters lost become 1 in 10, within the harvest. */
function lastBearableDay(first: Float64Array, window: HarvestWindow, allYear: boolean): number | null {
  const { fromDay, toDay } = window;
  const days = [...first].filter((day) => !Number.isNaN(day)).sort((a, b) => a - b);
  const tooMany = Math.ceil(BEARABLE_LOSS * first.length - 1e-9);
  const bearable = days[tooMany - 1] - 1;
  // A harvest that goes on into the next winter's count begins with it where fruit ripens all year; else it ends this one.
  const goesOn = toDay < fromDay;
  if (bearable < (goesOn && allYear ? 0 : fromDay)) return null;
  const ends = goesOn && (!allYear || ripensEveryDay(window)) ? LAST_DAY : toDay;
  return Math.min(bearable, ends);
}

/** October to April, in the south April to October. */
function coldMonths(hemisphere: Hemisphere): { fromDay: number; toDay: number } {
  return hemisphere === 'north'
    ? { fromDay: seasonDayOfDate(10, 1, hemisphere), toDay: seasonDayOfDate(4, 30, hemisphere) }
    : { fromDay: seasonDayOfDate(4, 1, hemisphere), toDay: seasonDayOfDate(10, 31, hemisphere) };
}

/** The halves of the months, from the first of the winter: 1st to 15th, 16th to the last. */
function halfMonths(hemisphere: Hemisphere): { fromDay: number; toDay: number }[] {
  return Array.from({ length: 12 }, (_, m) => (hemisphere === 'north' ? (m + 6) % 12 : m) + 1).flatMap(
    (month) => {
      const firstDay = seasonDayOfDate(month, 1, hemisphere);
      const next = seasonDayOfDate((month % 12) + 1, 1, hemisphere);
      const lastDay = next > firstDay ? next - 1 : LAST_DAY;
      return [
        { fromDay: firstDay, toDay: firstDay + 14 },
        { fromDay: firstDay + 15, toDay: lastDay },
      ];
    },
  );
}
