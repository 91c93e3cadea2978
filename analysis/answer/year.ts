import type { HarvestCalendar } from '../tree/harvest.ts';
import type { Basis } from '../tree/catalogue.ts';
import type { Level } from '../tree/levels.ts';

/** Chances a freeze date is told for. */
export const DATE_CHANCES = [0.1, 0.25, 0.5, 0.75, 0.9] as const;

/** The year at a place: freeze dates, harvest, what to do when. Dates are `MM-DD`; chances and shares 0-1; intervals 90 %. */
export interface YearAnswer {
  readonly calendar: HarvestCalendar;
  readonly hemisphere: 'north' | 'south';
  /** Winters whose dates count: complete, October and April (April and October in the south) too. */
  readonly winters: number;
  readonly left_out: readonly { readonly winter: number; readonly reason: string }[];
  /** At or below 0 and -2.2 °C in the open, whatever the tree. */
  readonly freezes: readonly FreezeDates[];
  readonly types: readonly TypeYear[];
  readonly notes: readonly string[];
}

/** First and last dates of sustained cold at or below a limit: a share of winters without any, and dates in the others. */
export interface FreezeDates {
  readonly limit_c: number;
  readonly hours: number;
  readonly winters: number;
  /** Share of winters without such a night; `null`: no winter counts. */
  readonly share_without: number | null;
  /** In `chance` of all winters the first such night has come by `date`; `null`: no more winters than that have one. */
  readonly first: readonly DateChance[];
  /** In `chance` of all winters such a night comes on `date` or later; `null` likewise. */
  readonly last: readonly DateChance[];
  readonly earliest: string | null;
  readonly latest: string | null;
}

/** A date and its 90 % range, from the earlier end to the later. */
export interface DateChance {
  readonly chance: number;
  /** `null`: no more winters than that have such a night, so that it isn't to be expected in so many (rank `chance * (winters + 1)`). */
  readonly date: string | null;
  /** `null` at the far end (later than any for a first, earlier than any for a last date): maybe none in that many winters. Either end may be known without `date`. */
  readonly low: string | null;
  readonly high: string | null;
}

export interface TypeYear {
  readonly id: string;
  readonly name: string;
  /** At its level's threshold plus penalties, with the spot's and cover's gains. */
  readonly levels: readonly { readonly level: Level; readonly dates: FreezeDates }[];
  readonly harvest: HarvestYear;
  /** What picking early saves for the tree; `null` where fruit hangs at all times, or lives weren't asked about. */
  readonly picking_saves: PickingSaves | null;
  readonly tasks: readonly CalendarTask[];
  /** Freezes out of season: shares of winters in which the leaves were taken on a night before `before`, and after `after`; `null` without a winter. */
  readonly early_late: {
    readonly before: string;
    readonly share_before: number;
    readonly after: string;
    readonly share_after: number;
  } | null;
}

/** Share of trees living at ten years, hardening counted night by night, with the crop left hanging and picked early; `null`: not followed so far. */
export interface PickingSaves {
  readonly ten_years_late: number | null;
  readonly ten_years_early: number | null;
}

/** The crop against the cold. */
export interface HarvestYear {
  readonly from: string;
  readonly to: string;
  readonly basis: Basis;
  /** Fruit hangs in every cold month, picked or not. */
  readonly always_exposed: boolean;
  /** By half-month from the first ripe day to the last (through the winter where fruit always hangs): chance that a fruit-killing night has come by its end. */
  readonly halves: readonly {
    readonly from: string;
    readonly to: string;
    readonly lost: number;
    readonly low: number;
    readonly high: number;
  }[];
  /** Chance that the crop is lost before its first ripe day, and before its last. */
  readonly lost_before_ripe: number | null;
  readonly lost_before_end: number | null;
  /** Last day to pick by with a loss in fewer than 1 winter in 10; `null`: even the first ripe day is too late. */
  readonly pick_by: string | null;
  /** Share of winters lost by that day, with its range. */
  readonly lost_by_pick_by: { readonly lost: number; readonly low: number; readonly high: number } | null;
  /** True when the whole harvest keeps the loss under 1 in 10. */
  readonly safe_to_the_end: boolean;
}

/** Something to do, on dates that come from the record, or from the trade. */
export interface CalendarTask {
  readonly id:
    | 'stop-feeding'
    | 'toughen'
    | 'covers-ready'
    | 'harvest'
    | 'pick-by'
    | 'prune'
    | 'cut-frozen'
    | 'plant'
    | 'bloom';
  readonly title: string;
  readonly from: string;
  /** `null`: from then on, or a single day. */
  readonly to: string | null;
  /** First day on record on which it was needed, where the date goes by 1 winter in 10: half of the hits may come before. */
  readonly earliest?: string;
  /** The rule that made the dates, in words. */
  readonly why: string;
  readonly basis: Basis | 'record';
  /** Keys of `sourceOf`. */
  readonly sources: readonly string[];
}
