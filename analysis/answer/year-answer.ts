import type { KeptNights } from '../records/kept-nights.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import { fruitLoss, type FruitLoss } from '../tree/fruit-loss.ts';
import { harvestWindow, type HarvestCalendar, type HarvestWindow } from '../tree/harvest.ts';
import { NO_LEVEL_GAIN_SPREADS, type LevelGainSpreads } from '../tree/level-gains.ts';
import { LEVELS } from '../tree/levels.ts';
import type { TreeState } from '../tree/penalties.ts';
import { fahrenheitToCelsius } from '../units/temperature.ts';
import { datedWinters } from '../winter/dated-winters.ts';
import { gainsAt } from '../winter/gain-spread.ts';
import { seasonDayOfDate, seasonDayText } from '../winter/season-day.ts';
import type { ChancedDay, SeasonDates } from '../winter/season-dates.ts';
import { NO_GAINS } from '../winter/winter-minima.ts';
import { hemisphereOf, type Hemisphere } from '../winter/winter-year.ts';
import { DatesShelf, type LimitDates } from './dates-shelf.ts';
import { limitC } from './level-answer.ts';
import type { Subject } from './subject.ts';
import { yearNotes } from './year-notes.ts';
import { yearTasks } from './year-tasks.ts';
import type { DateChance, FreezeDates, HarvestYear, PickingSaves, TypeYear, YearAnswer } from './year.ts';

export interface YearQuestion {
  readonly types: readonly CitrusType[];
  readonly tree: TreeState;
  /** What spot and cover add; their centres count. */
  readonly gains: LevelGainSpreads;
  /** What the spot alone adds: covers are to be ready for the nights without them. In the open unless told. */
  readonly spotGains?: LevelGainSpreads;
  readonly calendar: HarvestCalendar;
  /** What picking early saves for a type, where lives are worked out too: see `pickingSaves`. */
  readonly pickingSaves?: (type: CitrusType) => PickingSaves | null;
  /** Draws behind every range; 1,000 unless told. */
  readonly draws?: number;
}

const FREEZE_C = 0;
const HARD_FREEZE_C = fahrenheitToCelsius(28);
/** Nights at or below this harden a tree (S19), °C. */
const COOL_C = 10;
const DRAWS = 1000;
/** The same for all places: draws depend on the number of winters alone. */
const SEED = 1958;

/** Freezes before the first of these days and after the second stand out: 1 December and 15 February; south half a year on. */
const OUT_OF_SEASON = {
  north: { before: seasonDayOfDate(12, 1, 'north'), after: seasonDayOfDate(2, 15, 'north') },
  south: { before: seasonDayOfDate(6, 1, 'south'), after: seasonDayOfDate(8, 15, 'south') },
};

/** The year at a place: freeze dates, each type's harvest against the cold, and what to do when (design 3.9). */
export function answerYear(subject: Subject, nights: KeptNights, question: YearQuestion): YearAnswer {
  const { place, winters } = subject;
  const { types, tree, gains, spotGains = NO_LEVEL_GAIN_SPREADS, calendar, draws = DRAWS } = question;
  const hemisphere = hemisphereOf(place.lat);
  const dated = datedWinters(winters, hemisphere);
  const shelf = new DatesShelf(nights, dated, hemisphere, draws, SEED);
  const open = (limit: number): LimitDates => shelf.at({ hours: 0, limitC: limit, gains: NO_GAINS });
  const freeze = open(FREEZE_C);
  const hardFreeze = open(HARD_FREEZE_C);
  const cool = open(COOL_C);
  const told = types.map((type): TypeYear => {
    const levels = LEVELS.map((level) => ({
      level,
      dates: shelf.at({
        hours: type.thresholds[level].hours,
        limitC: limitC({ type, level, tree }),
        gains: gainsAt(gains[level], 'centreC'),
      }),
    }));
    const [fruit, leaf] = levels;
    const uncovered = shelf.at({
      ...leaf.dates.limit,
      gains: gainsAt(spotGains.leaf, 'centreC'),
    });
    const window = harvestWindow(type, calendar, hemisphere);
    const loss = fruitLoss(fruit.dates.winterDates.first, type, window, hemisphere);
    return {
      id: type.id,
      name: type.name,
      levels: levels.map(({ level, dates }) => ({ level, dates: freezeDates(dates, hemisphere) })),
      harvest: harvestYear(type, window, loss, hemisphere),
      tasks: yearTasks({
        type,
        calendar,
        hemisphere,
        window,
        loss,
        cool: cool.dates,
        freeze: freeze.dates,
        hardFreeze: hardFreeze.dates,
        uncovered: uncovered.dates,
      }),
      picking_saves: question.pickingSaves?.(type) ?? null,
      early_late: outOfSeason(leaf.dates, hemisphere),
    };
  });
  return {
    calendar,
    hemisphere,
    winters: dated.winters.length,
    left_out: dated.leftOut,
    freezes: [freeze, hardFreeze].map((dates) => freezeDates(dates, hemisphere)),
    types: told,
    notes: yearNotes(subject, dated, tree),
  };
}

function freezeDates({ limit, dates }: LimitDates, hemisphere: Hemisphere): FreezeDates {
  const text = (day: number | null): string | null => (day === null ? null : seasonDayText(day, hemisphere));
  const chanced = (days: readonly ChancedDay[]): DateChance[] =>
    days.map(({ chance, day, low, high }) => ({ chance, date: text(day), low: text(low), high: text(high) }));
  return {
    limit_c: limit.limitC,
    hours: limit.hours,
    winters: dates.winters,
    share_without: shareWithout(dates),
    first: chanced(dates.first),
    last: chanced(dates.last),
    earliest: text(dates.earliest),
    latest: text(dates.latest),
  };
}

function shareWithout({ winters, without }: SeasonDates): number | null {
  return winters === 0 ? null : without / winters;
}

function harvestYear(
  type: CitrusType,
  window: HarvestWindow,
  loss: FruitLoss,
  hemisphere: Hemisphere,
): HarvestYear {
  const text = (day: number): string => seasonDayText(day, hemisphere);
  return {
    from: text(window.fromDay),
    to: text(window.toDay),
    basis: type.harvest.basis,
    always_exposed: window.alwaysExposed,
    halves: loss.halves.map(({ fromDay, toDay, ...share }) => ({
      from: text(fromDay),
      to: text(toDay),
      ...share,
    })),
    lost_before_ripe: loss.beforeRipe,
    lost_before_end: loss.beforeEnd,
    pick_by: loss.pickBy === null ? null : text(loss.pickBy),
    lost_by_pick_by: loss.byPickBy,
    safe_to_the_end: loss.safeToTheEnd,
  };
}

function outOfSeason({ winterDates }: LimitDates, hemisphere: Hemisphere): TypeYear['early_late'] {
  const { first, last } = winterDates;
  if (first.length === 0) return null;
  const { before, after } = OUT_OF_SEASON[hemisphere];
  return {
    before: seasonDayText(before, hemisphere),
    share_before: first.filter((day) => day < before).length / first.length,
    after: seasonDayText(after, hemisphere),
    share_after: last.filter((day) => day > after).length / last.length,
  };
}
