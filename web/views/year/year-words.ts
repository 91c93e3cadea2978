import type { DateChance, FreezeDates, HarvestYear, PickingSaves } from '../../../analysis/answer/year.ts';
import type { Level } from '../../../analysis/tree/levels.ts';
import type { TreeState } from '../../../analysis/tree/penalties.ts';
import { countedNoun } from '../../format/estimated.ts';
import { LEVEL_WORDS } from '../../format/level-words.ts';
import { formatMonthDay, formatMonthDays } from '../../format/month-day.ts';
import { formatChance, formatHours, plural } from '../../format/numbers.ts';
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
  return `${countWith(dates)} of ${plural(dates.winters, countedNoun(estimated))}`;
}

/** `24 °F`, `26.1 °F`. */
export function formatLimit({ limit_c }: FreezeDates, unit: TemperatureUnit): string {
  return formatTemperature(limit_c, unit, 1).replace(/\.0(?=\u00a0)/, '');
}

/** What a limit is: `24 °F for 4 h`, `32 °F at any moment`. */
export function limitWords(dates: FreezeDates, unit: TemperatureUnit): string {
  const level = formatLimit(dates, unit);
  return dates.hours === 0 ? `${level} at any moment` : `${level} for ${formatHours(dates.hours)}`;
}

/** When such nights come, in a sentence for the strip and the headline. `what` begins it: `Cold that takes its leaves`. */
export function datesSentence(
  what: string,
  dates: FreezeDates,
  hemisphere: 'north' | 'south',
  estimated: boolean,
): string {
  const { share_without } = dates;
  if (share_without === null) return 'No winter on record is whole enough to tell.';
  if (share_without >= 1 || dates.earliest === null || dates.latest === null)
    return `${what} came in none of the ${plural(dates.winters, countedNoun(estimated))}, which is not the same as never.`;
  const span = oneInTen(dates, hemisphere);
  if (span === null) {
    const rare = 1 - share_without < 0.1 ? ', fewer than 1 in 10' : '';
    return (
      `${what} came in ${wintersWith(dates, estimated)}${rare}: ` +
      `at the earliest on ${formatMonthDay(dates.earliest, 'long')}, at the latest on ${formatMonthDay(dates.latest, 'long')}.`
    );
  }
  const without =
    share_without <= 0 ? 'No winter was without.' : `${formatChance(share_without)} of the winters had none.`;
  return (
    `${what} has come by ${formatMonthDay(span.from, 'long')} in 1 winter in 10, and in 1 winter in 10 ` +
    `it still comes on ${formatMonthDay(span.to, 'long')} or later. ${without}`
  );
}

/** Early and late cold, told apart since it hurts more than in midwinter: a sentence each. */
export function earlyAndLate(
  { share_before, share_after, before, after }: EarlyLate,
  { winters, earliest, latest }: FreezeDates,
  estimated: boolean,
): readonly { readonly part: 'early' | 'late'; readonly seen: boolean; readonly sentence: string }[] {
  const counted = countedNoun(estimated);
  const many = (share: number): string => {
    const count = Math.round(share * winters);
    return count === 0
      ? `in none of the ${plural(winters, counted)}`
      : `in ${count} of ${plural(winters, counted)}`;
  };
  const early = `before ${formatMonthDay(before, 'long')}, when the tree has hardly hardened: ${many(share_before)}`;
  const late = `after ${formatMonthDay(after, 'long')}, when the tree may have begun to grow: ${many(share_after)}`;
  return [
    {
      part: 'early',
      seen: share_before > 0,
      sentence: `${early}${share_before > 0 && earliest !== null ? `, at the earliest on ${formatMonthDay(earliest, 'long')}` : ''}.`,
    },
    {
      part: 'late',
      seen: share_after > 0,
      sentence: `${late}${share_after > 0 && latest !== null ? `, at the latest on ${formatMonthDay(latest, 'long')}` : ''}.`,
    },
  ];
}

/** A date's range in small print: `14 to 29 Nov`; open at its far end where so many winters may have none; `''` without one. */
export function dateRange({ date, low, high }: DateChance, which: 'first' | 'last'): string {
  if (low === null && high === null) return '';
  if (low !== null && high !== null) return low === high && low === date ? '' : formatMonthDays(low, high);
  return which === 'first' && low !== null
    ? `${formatMonthDay(low)} or later`
    : high === null
      ? ''
      : `${formatMonthDay(high)} or earlier`;
}

/** `Cold that takes its leaves and twigs`. */
export function levelCold(level: Level): string {
  const took = {
    fruit: 'its fruit',
    leaf: 'its leaves and twigs',
    wood: 'its major limbs',
    kill: 'the tree',
  };
  return `Cold that takes ${took[level]}`;
}

/** Name of a level's row: `Leaf`. */
export function levelName(level: Level): string {
  return LEVEL_WORDS[level].label;
}

/** Until when to pick: by a date, at leisure, or never in time. */
export function pickingSentence(harvest: HarvestYear, winters: number): string {
  const { pick_by, safe_to_the_end, lost_before_ripe, lost_before_end, lost_by_pick_by } = harvest;
  if (lost_before_end === null && lost_before_ripe === null && pick_by === null)
    return 'No winter on record is whole enough to tell how often the crop is lost.';
  const when = harvest.always_exposed ? 'By the end of the winter' : 'Left to the end of its season,';
  const end = lost_before_end === null ? '' : ` ${when} ${cropsLost(lost_before_end)}.`;
  const short =
    winters < FEW_WINTERS ? ` Told from ${winters === 1 ? 'one winter' : `${winters} winters`} only.` : '';
  const by = lost_by_pick_by === null ? '' : ` (${lossWords(lost_by_pick_by)})`;
  if (safe_to_the_end)
    return harvest.always_exposed
      ? `Fruit can hang through the winter: fewer than 1 crop in 10 is lost${by}.${short}`
      : `The crop can hang to the end of its season, ${formatMonthDay(harvest.to, 'long')}: fewer than 1 in 10 is lost before${by}.${short}`;
  if (pick_by !== null)
    return `Pick by ${formatMonthDay(pick_by, 'long')}: until then fewer than 1 crop in 10 is lost${by}.${end}${short}`;
  if (harvest.always_exposed)
    return `Some fruit hangs in every cold month, so that picking can’t keep the loss under 1 in 10.${end}${short}`;
  const before =
    lost_before_ripe === null
      ? ''
      : `: ${cropsLost(lost_before_ripe)} before ${formatMonthDay(harvest.from, 'long')}`;
  return `Even the first ripe day is too late to keep the loss under 1 in 10${before}.${end}${short}`;
}

/** `36% of crops are lost`; what always or never happened is told of the record, not of what may come. */
function cropsLost(share: number): string {
  if (share >= 1) return 'every crop on record is lost';
  return share <= 0 ? 'no crop on record is lost' : `${formatChance(share)} of crops are lost`;
}

/** `7%, range 3% to 14%`. */
function lossWords({ lost, low, high }: NonNullable<HarvestYear['lost_by_pick_by']>): string {
  return `${formatChance(lost)}, range ${formatChance(low)} to ${formatChance(high)}`;
}

/** What picking early saves for the tree; `''` where nothing is known, or told from too few winters for a share. */
export function earlySentence(saves: PickingSaves | null, winters: number): string {
  if (winters < FEW_WINTERS) return '';
  if (saves === null || saves.ten_years_late === null || saves.ten_years_early === null) return '';
  const [late, early] = [saves.ten_years_late, saves.ten_years_early].map(formatShare);
  const either = ({ 0: 'none lived', 1: 'every tree lived' } as Record<number, string>)[saves.ten_years_late];
  if (late === early)
    return `Picking in the first half month changes nothing that can be told for the tree itself: ${either ?? `${late} live`} ten years either way.`;
  return `A tree that carries fruit stands less cold. Picked in the first half month, ${early} of trees would live ten years; with the crop left to hang, ${late}.`;
}

/** What tree the levels are those of: `Levels of a mature, vigorous tree, in the open, without a cover.` */
export function treeSentence(tree: TreeState, standing: string, cover: string): string {
  const { before, after } = treeWords(tree);
  const where = standing === '' ? 'in the open' : `on its spot (${standing})`;
  const under = cover === NO_COVER ? 'without a cover' : `under ${cover}`;
  return `Its levels are those of a ${before} tree${after.replace(/,$/, '')}, ${where}, ${under}; freezes not named after a level are those of the open air.`;
}
