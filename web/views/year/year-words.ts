import type { DateChance, FreezeDates, HarvestYear, PickingSaves } from '../../../analysis/answer/year.ts';
import { t } from '../../../analysis/language/t.ts';
import type { Basis } from '../../../analysis/tree/catalogue.ts';
import type { HarvestCalendar } from '../../../analysis/tree/harvest.ts';
import type { Level } from '../../../analysis/tree/levels.ts';
import type { TreeState } from '../../../analysis/tree/penalties.ts';
import { countedWinters } from '../../format/estimated.ts';
import { LEVEL_WORDS } from '../../format/level-words.ts';
import { formatMonthDay, formatMonthDays } from '../../format/month-day.ts';
import { formatChance, formatHours } from '../../format/numbers.ts';
import { formatTemperature } from '../../format/temperatures.ts';
import { treeWords } from '../../format/tree-words.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import { NO_COVER } from '../../format/cover-words.ts';
import { formatShare } from '../life/life-words.ts';
import { oneInTen, type EarlyLate } from './freeze-season.ts';

/** Below this many winters dates are only rough (design 3.5). */
export const FEW_WINTERS = 20;

/** How many winters had such a night. */
export function countWith({ share_without, winters }: FreezeDates): number {
  return share_without === null ? 0 : Math.round((1 - share_without) * winters);
}

/** `34 of 61 complete winters`: those with such a night. */
export function wintersWith(dates: FreezeDates, estimated: boolean): string {
  return t`${countWith(dates)} of ${countedWinters(dates.winters, estimated)}`;
}

/** `24 °F`, `26.1 °F`. */
export function formatLimit({ limit_c }: FreezeDates, unit: TemperatureUnit): string {
  return formatTemperature(limit_c, unit, 1).replace(/[.,]0(?=\u00a0)/, '');
}

/** What a limit is: `24 °F for 4 h`, `32 °F at any moment`. */
export function limitWords(dates: FreezeDates, unit: TemperatureUnit): string {
  const level = formatLimit(dates, unit);
  return dates.hours === 0 ? t`${level} at any moment` : t`${level} for ${formatHours(dates.hours)}`;
}

/** When such nights come, in a sentence for the strip and the headline. `what` begins it: `Cold that takes its leaves`. */
export function datesSentence(
  what: string,
  dates: FreezeDates,
  hemisphere: 'north' | 'south',
  estimated: boolean,
): string {
  const { share_without } = dates;
  if (share_without === null) return t`No winter on record is whole enough to tell.`;
  if (share_without >= 1 || dates.earliest === null || dates.latest === null)
    return t`${what} came in none of the ${countedWinters(dates.winters, estimated)}, which is not the same as never.`;
  const span = oneInTen(dates, hemisphere);
  if (span === null) {
    const [earliest, latest] = [dates.earliest, dates.latest].map((date) => formatMonthDay(date, 'long'));
    return 1 - share_without < 0.1
      ? t`${what} came in ${wintersWith(dates, estimated)}, fewer than 1 in 10: at the earliest on ${earliest}, at the latest on ${latest}.`
      : t`${what} came in ${wintersWith(dates, estimated)}: at the earliest on ${earliest}, at the latest on ${latest}.`;
  }
  const without =
    share_without <= 0
      ? t`No winter was without.`
      : t`${formatChance(share_without)} of the winters had none.`;
  const [from, to] = [span.from, span.to].map((date) => formatMonthDay(date, 'long'));
  return `${t`${what} has come by ${from} in 1 winter in 10, and in 1 winter in 10 it still comes on ${to} or later.`} ${without}`;
}

/** Early and late cold, told apart since it hurts more than in midwinter: a sentence each. */
export function earlyAndLate(
  { share_before, share_after, before, after }: EarlyLate,
  { winters, earliest, latest }: FreezeDates,
  estimated: boolean,
): readonly { readonly part: 'early' | 'late'; readonly seen: boolean; readonly sentence: string }[] {
  const counted = countedWinters(winters, estimated);
  const many = (share: number, edge: string): string => {
    const count = Math.round(share * winters);
    return (count === 0 ? t`in none of the ${counted}` : t`in ${count} of ${counted}`) + edge;
  };
  const first =
    share_before > 0 && earliest !== null ? t`, at the earliest on ${formatMonthDay(earliest, 'long')}` : '';
  const last =
    share_after > 0 && latest !== null ? t`, at the latest on ${formatMonthDay(latest, 'long')}` : '';
  return [
    {
      part: 'early',
      seen: share_before > 0,
      sentence: t`before ${formatMonthDay(before, 'long')}, when the tree has hardly hardened: ${many(share_before, first)}.`,
    },
    {
      part: 'late',
      seen: share_after > 0,
      sentence: t`after ${formatMonthDay(after, 'long')}, when the tree may have begun to grow: ${many(share_after, last)}.`,
    },
  ];
}

/** A date's range in small print: `14 to 29 Nov`; open at its far end where so many winters may have none; `''` without one. */
export function dateRange({ date, low, high }: DateChance, which: 'first' | 'last'): string {
  if (low === null && high === null) return '';
  if (low !== null && high !== null) return low === high && low === date ? '' : formatMonthDays(low, high);
  return which === 'first' && low !== null
    ? t`${formatMonthDay(low)} or later`
    : high === null
      ? ''
      : t`${formatMonthDay(high)} or earlier`;
}

/** `Cold that takes its leaves and twigs`. */
export function levelCold(level: Level): string {
  return {
    fruit: t`Cold that takes its fruit`,
    leaf: t`Cold that takes its leaves and twigs`,
    wood: t`Cold that takes its major limbs`,
    kill: t`Cold that takes the tree`,
  }[level];
}

/** Name of a level's row: `Leaf`. */
export function levelName(level: Level): string {
  return LEVEL_WORDS[level].label;
}

/** Until when to pick: by a date, at leisure, or never in time. */
export function pickingSentence(harvest: HarvestYear, winters: number): string {
  const { pick_by, safe_to_the_end, lost_before_ripe, lost_before_end, lost_by_pick_by } = harvest;
  if (lost_before_end === null && lost_before_ripe === null && pick_by === null)
    return t`No winter on record is whole enough to tell how often the crop is lost.`;
  const short =
    winters < FEW_WINTERS
      ? winters === 1
        ? t`Told from one winter only.`
        : t`Told from ${winters} winters only.`
      : '';
  const by = lost_by_pick_by === null ? '' : ` (${lossWords(lost_by_pick_by)})`;
  if (safe_to_the_end) {
    const safe = harvest.always_exposed
      ? t`Fruit can hang through the winter: fewer than 1 crop in 10 is lost${by}.`
      : t`The crop can hang to the end of its season, ${formatMonthDay(harvest.to, 'long')}: fewer than 1 in 10 is lost before${by}.`;
    return sentences(safe, short);
  }
  return sentences(whenToPick(harvest, by), lossAtEnd(harvest), short);
}

function sentences(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(' ');
}

/** Where the crop is in danger before its season ends. `by` tells the loss until the last day to pick, in brackets. */
function whenToPick({ pick_by, always_exposed, lost_before_ripe, from }: HarvestYear, by: string): string {
  if (pick_by !== null)
    return t`Pick by ${formatMonthDay(pick_by, 'long')}: until then fewer than 1 crop in 10 is lost${by}.`;
  if (always_exposed)
    return t`Some fruit hangs in every cold month, so that picking can’t keep the loss under 1 in 10.`;
  if (lost_before_ripe === null)
    return t`Even the first ripe day is too late to keep the loss under 1 in 10.`;
  return t`Even the first ripe day is too late to keep the loss under 1 in 10: ${cropsLost(lost_before_ripe)} before ${formatMonthDay(from, 'long')}.`;
}

function lossAtEnd({ lost_before_end, always_exposed }: HarvestYear): string {
  if (lost_before_end === null) return '';
  const lost = cropsLost(lost_before_end);
  return always_exposed ? t`By the end of the winter ${lost}.` : t`Left to the end of its season, ${lost}.`;
}

/** `36% of crops are lost`; what always or never happened is told of the record, not of what may come. */
function cropsLost(share: number): string {
  if (share >= 1) return t`every crop on record is lost`;
  return share <= 0 ? t`no crop on record is lost` : t`${formatChance(share)} of crops are lost`;
}

/** `7%, range 3% to 14%`. */
function lossWords({ lost, low, high }: NonNullable<HarvestYear['lost_by_pick_by']>): string {
  return t`${formatChance(lost)}, range ${formatChance(low)} to ${formatChance(high)}`;
}

/** Whose months of ripeness these are. */
export function ripeWords(basis: Basis, calendar: HarvestCalendar, hemisphere: 'north' | 'south'): string {
  const source = basis === 'found' ? t`as published` : t`as general guides have them`;
  const region = calendar === 'california' ? t`California` : t`Florida and the Gulf coast`;
  return hemisphere === 'south'
    ? t`Months of ripeness ${source} for ${region}, half a year later.`
    : t`Months of ripeness ${source} for ${region}.`;
}

/** What picking early saves for the tree; `''` where nothing is known, or told from too few winters for a share. */
export function earlySentence(saves: PickingSaves | null, winters: number): string {
  if (winters < FEW_WINTERS) return '';
  if (saves === null || saves.ten_years_late === null || saves.ten_years_early === null) return '';
  const [late, early] = [saves.ten_years_late, saves.ten_years_early].map(formatShare);
  const either = ({ 0: t`none lived`, 1: t`every tree lived` } as Record<number, string>)[
    saves.ten_years_late
  ];
  if (late === early)
    return t`Picking in the first half month changes nothing that can be told for the tree itself: ${either ?? t`${late} live`} ten years either way.`;
  return t`A tree that carries fruit stands less cold. Picked in the first half month, ${early} of trees would live ten years; with the crop left to hang, ${late}.`;
}

/** What tree the levels are those of: `Levels of a mature, vigorous tree, in the open, without a cover.` */
export function treeSentence(tree: TreeState, standing: string, cover: string): string {
  const { before, after } = treeWords(tree);
  const where = standing === '' ? t`in the open` : t`on its spot (${standing})`;
  const whose = after.replace(/,$/, '');
  return cover === NO_COVER
    ? t`Its levels are those of a ${before} tree${whose}, ${where}, without a cover; freezes not named after a level are those of the open air.`
    : t`Its levels are those of a ${before} tree${whose}, ${where}, under ${cover}; freezes not named after a level are those of the open air.`;
}
