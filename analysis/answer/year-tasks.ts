import { sayMonthDay } from '../language/dates.ts';
import { sayFigureText } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { bloomWindow, NEW_LEAVES_MATURE_DAYS } from '../tree/bloom.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import { BEARABLE_LOSS, type FruitLoss } from '../tree/fruit-loss.ts';
import type { HarvestCalendar, HarvestWindow } from '../tree/harvest.ts';
import { SEASON_DAYS, seasonDayOfDate, seasonDayText } from '../winter/season-day.ts';
import type { ChancedDay, SeasonDates } from '../winter/season-dates.ts';
import type { Hemisphere } from '../winter/winter-year.ts';
import type { CalendarTask } from './year.ts';

/** What a type's calendar is made of. */
export interface TaskFacts {
  readonly type: CitrusType;
  readonly calendar: HarvestCalendar;
  readonly hemisphere: Hemisphere;
  readonly window: HarvestWindow;
  readonly loss: FruitLoss;
  /** Nights at or below 10 °C, 0 °C and -2.2 °C in the open. */
  readonly cool: SeasonDates;
  readonly freeze: SeasonDates;
  readonly hardFreeze: SeasonDates;
  /** Nights that take the leaves, penalties and the spot's gain counted, without a cover. */
  readonly uncovered: SeasonDates;
}

/** Once in ten winters. */
const ONE_IN_TEN = 0.1;

/** The months of practice, as north of the equator: [month, day]. */
const LATE_SUMMER_FROM = [8, 15] as const;
const AUTUMN_FROM = [10, 1] as const;
const TOUGHEN_FROM = [9, 1] as const;
const PLANT_FROM = [2, 1] as const;

/**
 * What to do in the year of a type, in the order of {@link CalendarTask.id}. A task whose date the record doesn't give, because
 * no more than 1 winter in 10 has such a night, is left out.
 */
export function yearTasks(facts: TaskFacts): CalendarTask[] {
  return [
    stopFeeding(facts),
    toughen(facts),
    coversReady(facts),
    harvest(facts),
    pickBy(facts),
    prune(facts),
    cutFrozen(facts),
    plant(facts),
    bloom(facts),
  ].filter((task) => task !== null);
}

function stopFeeding({ hemisphere }: TaskFacts): CalendarTask {
  return {
    id: 'stop-feeding',
    title: t`Stop feeding nitrogen`,
    from: seasonDayText(practiceNumber(LATE_SUMMER_FROM, hemisphere), hemisphere),
    to: seasonDayText(practiceNumber(AUTUMN_FROM, hemisphere) - 1, hemisphere),
    why: t`The last nitrogen by late summer, so that growth stops before the cold: a tree still growing stands much less of it.`,
    basis: 'practice',
    sources: ['practice', 'S23', 'S26'],
  };
}

function toughen({ hemisphere, cool }: TaskFacts): CalendarTask | null {
  const half = atChance(cool.first, 0.5);
  if (half.day === null) return null;
  const earliest = practiceNumber(TOUGHEN_FROM, hemisphere);
  const tooEarly = half.day < earliest;
  return {
    id: 'toughen',
    title: t`Let it toughen`,
    from: tooEarly ? seasonDayText(earliest, hemisphere) : seasonDayText(half.day, hemisphere),
    to: null,
    why: sentences(
      t`No feeding and no pruning from here on, so that growth stops: cool hours at or below 50 °F (10 °C) harden a tree.`,
      tooEarly
        ? t`Such nights come before autumn here; ${dayWords(earliest, hemisphere)} is practice.`
        : t`In half of the winters the first such night has come by this date${rangeWords(half, hemisphere)}.`,
    ),
    basis: tooEarly ? 'practice' : 'record',
    sources: ['S19', 'S23', 'practice'],
  };
}

function coversReady({ hemisphere, uncovered }: TaskFacts): CalendarTask | null {
  const first = atChance(uncovered.first, ONE_IN_TEN);
  if (first.day === null) return null;
  return {
    id: 'covers-ready',
    title: t`Have covers ready`,
    from: seasonDayText(first.day, hemisphere),
    to: null,
    earliest: seasonDayText(uncovered.earliest!, hemisphere),
    why: t`By this date 1 winter in 10 has had its first night that takes the leaves of this tree without a cover${rangeWords(first, hemisphere)}; the earliest on record came on ${dayWords(uncovered.earliest!, hemisphere)}.`,
    basis: 'record',
    sources: [],
  };
}

function harvest({ type, calendar, hemisphere, window }: TaskFacts): CalendarTask {
  const where = calendar === 'gulf' ? t`on the Gulf coast and in Florida` : t`in California`;
  return {
    id: 'harvest',
    title: t`Pick`,
    from: seasonDayText(window.fromDay, hemisphere),
    to: seasonDayText(window.toDay, hemisphere),
    why: t`Months in which its fruit is ripe ${where}${southWords(hemisphere)}.`,
    basis: type.harvest.basis,
    sources: type.harvest.basis === 'found' ? (calendar === 'gulf' ? ['S10', 'S08'] : ['S22']) : [],
  };
}

function pickBy({ hemisphere, window, loss }: TaskFacts): CalendarTask | null {
  const { pickBy: day, byPickBy, safeToTheEnd } = loss;
  if (day === null || byPickBy === null || safeToTheEnd) return null;
  const [lost, low, high] = [byPickBy.lost, byPickBy.low, byPickBy.high].map(percent);
  return {
    id: 'pick-by',
    title: t`Have the crop picked`,
    from: seasonDayText(day, hemisphere),
    to: null,
    why:
      day === window.toDay
        ? t`By this day a night that takes fruit has come in ${lost} of the winters, fewer than 1 in 10 (90 % range ${low} to ${high}).`
        : t`By this day a night that takes fruit has come in ${lost} of the winters, fewer than 1 in 10 (90 % range ${low} to ${high}); a day later in 1 in 10 or more.`,
    basis: 'record',
    sources: [],
  };
}

function prune({ hemisphere, freeze }: TaskFacts): CalendarTask | null {
  const last = atChance(freeze.last, ONE_IN_TEN);
  if (last.day === null) return null;
  const until = practiceNumber(LATE_SUMMER_FROM, hemisphere);
  const untilSummer = (until - last.day + SEASON_DAYS) % SEASON_DAYS;
  return {
    id: 'prune',
    title: t`Routine pruning`,
    from: seasonDayText(last.day, hemisphere),
    // A year's last freeze in summer leaves no time before it: then only the beginning is told.
    to: untilSummer < SEASON_DAYS / 2 ? seasonDayText(until, hemisphere) : null,
    why: sentences(
      t`Pruning draws new growth, which freezes first: wait until only 1 winter in 10 has another night at or below 32 °F (0 °C) on this date or later${rangeWords(last, hemisphere)}.`,
      t`Stop by late summer, so that new growth is hard before winter.`,
    ),
    basis: 'record',
    sources: ['S23', 'S26'],
  };
}

function cutFrozen({ calendar, hemisphere }: TaskFacts): CalendarTask {
  const { toDay } = bloomWindow(calendar, hemisphere);
  return {
    id: 'cut-frozen',
    title: t`Cut a freeze-hit tree, not before`,
    from: seasonDayText((toDay + NEW_LEAVES_MATURE_DAYS) % SEASON_DAYS, hemisphere),
    to: null,
    why: t`Only after the spring growth has matured, six weeks after the main bloom, can dead wood be told from living: May and June are told of in Georgia, June in California${southWords(hemisphere)}, and dieback may go on for two years.`,
    basis: 'inferred',
    sources: ['S05', 'S12', 'S32', 'S33'],
  };
}

function plant({ hemisphere, hardFreeze }: TaskFacts): CalendarTask {
  const last = atChance(hardFreeze.last, ONE_IN_TEN);
  const practice = practiceNumber(PLANT_FROM, hemisphere);
  const byRecord = last.day !== null && last.day > practice;
  return {
    id: 'plant',
    title: t`Plant`,
    from: seasonDayText(byRecord ? last.day : practice, hemisphere),
    to: null,
    why: byRecord
      ? t`After the last hard freeze: only 1 winter in 10 has another night at or below 28 °F (-2.2 °C) on this date or later${rangeWords(last, hemisphere)}.`
      : sentences(
          t`After the last hard freeze, on the Gulf coast from February to March by practice${southWords(hemisphere)}.`,
          last.day === null
            ? t`No more than 1 winter in 10 has a night at or below 28 °F (-2.2 °C) here.`
            : t`In 9 winters in 10 the last night at or below 28 °F (-2.2 °C) is over before.`,
        ),
    basis: byRecord ? 'record' : 'practice',
    sources: ['practice'],
  };
}

function bloom({ calendar, hemisphere }: TaskFacts): CalendarTask {
  const { fromDay, toDay } = bloomWindow(calendar, hemisphere);
  return {
    id: 'bloom',
    title: t`Main bloom`,
    from: seasonDayText(fromDay, hemisphere),
    to: seasonDayText(toDay, hemisphere),
    why: t`Usual weeks of the main bloom; bloom and new growth are hurt at about 31 °F (-0.6 °C). A warm winter brings it earlier.`,
    basis: 'practice',
    sources: ['practice', 'S05'],
  };
}

function atChance(days: readonly ChancedDay[], chance: number): ChancedDay {
  const told = days.find((day) => day.chance === chance);
  if (!told) throw new RangeError(`No date is told for the chance ${chance}.`);
  return told;
}

/** Day of the season of a date of practice: half a year later south of the equator. */
function practiceNumber([month, day]: readonly [number, number], hemisphere: Hemisphere): number {
  return seasonDayOfDate(hemisphere === 'north' ? month : ((month + 5) % 12) + 1, day, hemisphere);
}

function sentences(...parts: readonly string[]): string {
  return parts.join(' ');
}

function southWords(hemisphere: Hemisphere): string {
  return hemisphere === 'south' ? t`, here half a year later` : '';
}

/** ` (90 % range 20 November to 12 December)`. */
function rangeWords({ low, high }: ChancedDay, hemisphere: Hemisphere): string {
  if (low === null && high === null) return '';
  const end = (day: number | null): string => (day === null ? t`none at all` : dayWords(day, hemisphere));
  return t` (90 % range ${end(low)} to ${end(high)})`;
}

/** `12 March`. */
function dayWords(seasonDay: number, hemisphere: Hemisphere): string {
  const [month, day] = seasonDayText(seasonDay, hemisphere).split('-').map(Number);
  return sayMonthDay(month, day);
}

/** Whole per cents; what is fewer than 1 in 10 is never told as 10. */
function percent(share: number): string {
  const rounded = Math.round(100 * share);
  const told =
    share < BEARABLE_LOSS && rounded === 100 * BEARABLE_LOSS ? Math.floor(1000 * share) / 10 : rounded;
  return t`${sayFigureText(String(told))} %`;
}
