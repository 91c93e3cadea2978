import type { CitrusType } from './catalogue.ts';
import { SEASON_DAYS, seasonDayOfDate } from '../winter/season-day.ts';
import type { Hemisphere } from '../winter/winter-year.ts';

/** Whose months of ripeness are used: those of Florida and the Gulf coast, or California's, about two months later. */
export const HARVEST_CALENDARS = ['gulf', 'california'] as const;
export type HarvestCalendar = (typeof HARVEST_CALENDARS)[number];

/** How long ripe fruit is left hanging: to the end of its season, or half a month into it. */
export const PICKINGS = ['late', 'early'] as const;
export type Picking = (typeof PICKINGS)[number];

/** Fruit picked early is in so many days after it begins to ripen. */
export const EARLY_PICKING_DAYS = 15;

/** When a type ripens; days as {@link seasonDayOf} counts them. */
export interface HarvestWindow {
  readonly fromDay: number;
  /** Last day; smaller than `fromDay` where the harvest goes on into the next winter's count. */
  readonly toDay: number;
  /** Some fruit hangs in every cold month, picked or not: lemons and limes, and crops that ripen after the winter. */
  readonly alwaysExposed: boolean;
}

/** Bear most of the year, so that some fruit always hangs (S22). */
const EVERBEARING = new Set(['mexican_lime', 'tahiti_lime', 'makrut_lime', 'eureka_lemon', 'lisbon_lemon']);

/** West coast of North America, where California's months hold; elsewhere those of the Gulf coast stand in (design choice). */
export function usualCalendar(lat: number, lon: number): HarvestCalendar {
  return lat >= 31 && lat <= 50 && lon >= -125 && lon <= -114 ? 'california' : 'gulf';
}

/** South of the equator the months are half a year later. */
export function harvestWindow(
  type: Pick<CitrusType, 'id' | 'harvest'>,
  calendar: HarvestCalendar,
  hemisphere: Hemisphere,
): HarvestWindow {
  const [from, to] = type.harvest[calendar].map((month) =>
    hemisphere === 'north' ? month : ((month + 5) % 12) + 1,
  );
  const fromDay = seasonDayOfDate(from, 1, hemisphere);
  const next = (to % 12) + 1;
  const toDay = (seasonDayOfDate(next, 1, hemisphere) - 1 + SEASON_DAYS) % SEASON_DAYS;
  return { fromDay, toDay, alwaysExposed: EVERBEARING.has(type.id) || toDay < fromDay };
}

/** Fruit ripens on the tree all year, so that a day to pick by is one of this winter's. */
export function bearsAllYear(type: { readonly id: string }, window: HarvestWindow): boolean {
  return EVERBEARING.has(type.id) || ripensEveryDay(window);
}

/** The harvest ends on the day before it begins. */
export function ripensEveryDay({ fromDay, toDay }: HarvestWindow): boolean {
  return (toDay + 1) % SEASON_DAYS === fromDay;
}

/** Last day on which the season's crop hangs; `null` where fruit hangs at all times. */
export function hangsUntil(window: HarvestWindow, picking: Picking): number | null {
  if (window.alwaysExposed) return null;
  return picking === 'late' ? window.toDay : Math.min(window.toDay, window.fromDay + EARLY_PICKING_DAYS - 1);
}
