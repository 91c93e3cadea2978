import { seasonDayOfDate } from '../winter/season-day.ts';
import type { Hemisphere } from '../winter/winter-year.ts';
import type { HarvestCalendar } from './harvest.ts';

/** Days after which new leaves stand as much as old ones: about six weeks (S05). */
export const NEW_LEAVES_MATURE_DAYS = 42;

/** The main bloom and the growth that comes with it; days as `seasonDayOf` counts them, both included. */
export interface BloomWindow {
  readonly fromDay: number;
  readonly toDay: number;
}

/** Month and day, first and last: common practice, no source. */
const MAIN_BLOOM: Readonly<Record<HarvestCalendar, readonly [from: MonthDay, to: MonthDay]>> = {
  gulf: [
    [3, 1],
    [4, 15],
  ],
  california: [
    [3, 25],
    [4, 30],
  ],
};
type MonthDay = readonly [month: number, day: number];

/** When citrus blooms; south of the equator half a year later. */
export function bloomWindow(calendar: HarvestCalendar, hemisphere: Hemisphere): BloomWindow {
  const [fromDay, toDay] = MAIN_BLOOM[calendar].map(([month, day]) =>
    seasonDayOfDate(hemisphere === 'north' ? month : month + 6, day, hemisphere),
  );
  return { fromDay, toDay };
}
