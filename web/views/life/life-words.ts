import type {
  AgeShare,
  CropCount,
  LifeAnswer,
  LifeReading,
  TypeLife,
} from '../../../analysis/answer/life.ts';
import { FEWEST_WINTERS_TO_FIT } from '../../../analysis/extremes/fit-winters.ts';
import { sayFigure } from '../../../analysis/language/figures.ts';
import { said, t } from '../../../analysis/language/t.ts';
import { READINGS, type Reading } from '../../../analysis/tree/winter-margins.ts';
import { errorWords } from '../../format/estimated.ts';
import { formatChance, formatPercent, formatPlain, plural } from '../../format/numbers.ts';
import { FIXED_SPACE } from '../../format/temperatures.ts';
import { shortTypeName } from '../../format/type-names.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

/** Trees with less of full hardening on cold nights than this are seldom hardened. */
const SELDOM_HARDENED = 0.5;

export const READING_WORDS: Readonly<Record<Reading, { readonly name: string; readonly short: string }>> = {
  night_by_night: { name: t`Hardening counted night by night`, short: t`Night by night` },
  hardened: { name: t`Hardened trees`, short: t`Hardened trees` },
};

/** Columns of a table with a row name and a cell for each reading. */
export const READING_COLUMNS: readonly string[] = [
  '',
  ...READINGS.map((reading) => READING_WORDS[reading].short),
];

/** Whether the record is long enough for shares and their ranges. */
export function hasShares({ winters }: Pick<LifeAnswer, 'winters'>): boolean {
  return winters.length >= FEWEST_WINTERS_TO_FIT;
}

/** A share as a percentage; its ends say `under 1%` and `over 99%`, since no record proves never or always. */
export function formatShare(share: number | null): string {
  if (share === null) return formatChance(null);
  if (share >= 1) return t`over ${formatPercent(99)}`;
  return share <= 0 ? t`under ${formatPercent(1)}` : formatChance(share);
}

/** `25% to 60%`, one figure where both ends read the same, `''` while there is none. */
export function rangeOfShare({ low, high }: Pick<AgeShare, 'low' | 'high'>): string {
  if (low === null || high === null) return '';
  const [from, to] = [formatShare(low), formatShare(high)];
  return from === to ? from : t`${from} to ${to}`;
}

/**
 * The share living at an age, without its range: `43%`. A share of 1 or 0 is told as what was seen and the end of its
 * range: `all 51 followed; at least 91%`.
 */
export function shareWords(age: AgeShare): string {
  const { share, low, high, followed, alive } = age;
  if (share === null) return t`not known`;
  if (share >= 1) {
    const seen =
      followed === 0
        ? t`no loss, going round these winters`
        : alive === followed
          ? t`all ${followed} followed`
          : t`none of ${followed} followed is known to have died`;
    if (low === null) return seen;
    return low > 0.99 ? t`${seen}; ${formatShare(low)} at least` : t`${seen}; at least ${formatShare(low)}`;
  }
  if (share <= 0) {
    const seen = followed === 0 ? t`none, going round these winters` : t`none of ${followed} followed`;
    if (high === null) return seen;
    return high < 0.01 ? t`${seen}; ${formatShare(high)} at most` : t`${seen}; at most ${formatShare(high)}`;
  }
  return formatShare(share);
}

/** The same with its range: `43% (25% to 60%)`. */
export function shareWithRange(age: AgeShare): string {
  const range = rangeOfShare(age);
  const certain = age.share === null || age.share >= 1 || age.share <= 0;
  return certain || range === '' ? shareWords(age) : `${shareWords(age)} (${range})`;
}

/** `22 of 51 lived`; `none followed that far`. */
export function followedWords({ followed, alive }: Pick<AgeShare, 'followed' | 'alive'>): string {
  return followed === 0 ? t`none followed that far` : t`${alive} of ${followed} lived`;
}

/** What the kill threshold's own range makes of a share: `kill figure’s range 20% to 60%`; `''` where it makes nothing. */
export function thresholdWords({ share, if_threshold: { low, high } }: AgeShare): string {
  if (low === null || high === null || share === null) return '';
  const [least, most] = [Math.min(low, high), Math.max(low, high)].map(formatShare);
  return least === most ? '' : t`kill figure’s range ${least} to ${most}`;
}

/** The first sentence: how many winters, how many could be followed ten years, how many lived by each reading. */
export function leadSentence(life: LifeAnswer, type: TypeLife, estimated: boolean): string {
  const short = shortTypeName(said(type.name));
  const name = short.includes(',') ? `${short},` : short;
  const { night_by_night: colder, hardened } = type;
  const winters = estimated
    ? plural(life.winters.length, t`estimated winter`, t`estimated winters`)
    : plural(life.winters.length, t`winter`, t`winters`);
  const age = life.start_age_years === 1 ? t`young` : t`${life.start_age_years}-year-old`;
  const { followed, alive } = colder.ten_years;
  if (followed === 0)
    return t`Of ${winters} in which you could have planted a ${age} ${name} here, none could be followed through ten winters: the record is too short.`;
  const lived = ofThoseTrees(alive, followed);
  if (hardened.ten_years.alive === alive)
    return t`Of ${winters} in which you could have planted a ${age} ${name} here, ${followed} could be followed through ten winters; ${lived} lived, with hardening counted night by night as with hardened trees.`;
  return t`Of ${winters} in which you could have planted a ${age} ${name} here, ${followed} could be followed through ten winters. With hardening counted night by night, ${lived} lived; had every tree been hardened, ${ofThem(hardened.ten_years.alive, followed)}.`;
}

function ofThoseTrees(count: number, followed: number): string {
  if (count === 0) return t`none of those trees`;
  return count === followed ? t`all ${count} of those trees` : t`${count} of those trees`;
}

function ofThem(count: number, followed: number): string {
  if (count === 0) return t`none of them`;
  return count === followed ? t`all ${count} of them` : t`${count} of them`;
}

/** How long half the trees live, in one sentence; the colder reading first. */
export function medianSentence({ night_by_night: colder, hardened }: TypeLife, horizon: number): string {
  const [first, second] = [colder.median_years, hardened.median_years];
  const reached = ({ years, low, high }: LifeReading['median_years']): string => {
    const winters = plural(years ?? 0, t`winter`, t`winters`);
    const most = high === null || high > horizon ? t`more than ${horizon}` : String(high);
    return low === null ? winters : `${winters} ${t`(range ${low} to ${most})`}`;
  };
  const orMore = ({ low }: LifeReading['median_years']): string =>
    low === null ? '' : ` ${t`(range ${low} or more)`}`;
  if (first.years === null) {
    const same = second.years === null && (second.low === null || second.low === first.low);
    if (same)
      return t`More than half of the trees planted outlive the ${horizon} winters told of${orMore(first)}, by either reading.`;
    return second.years === null
      ? t`More than half of the trees planted outlive the ${horizon} winters told of${orMore(first)}, and so do more than half of hardened trees${orMore(second)}.`
      : t`More than half of the trees planted outlive the ${horizon} winters told of${orMore(first)}; half of hardened trees reach ${reached(second)}.`;
  }
  if (second.years === null)
    return t`Half of the trees planted reach ${reached(first)}; of hardened trees more than half outlive the ${horizon} winters told of${orMore(second)}.`;
  return reached(first) === reached(second)
    ? t`Half of the trees planted reach ${reached(first)}, by either reading.`
    : t`Half of the trees planted reach ${reached(first)}; of hardened trees half reach ${reached(second)}.`;
}

/** How hardened trees here are when it matters; `''` where no night came near. */
export function hardeningSentence({ hardening_on_cold_nights: hardening }: TypeLife): string {
  if (hardening === null) return '';
  const degree = hardening >= 0.995 ? t`full` : t`${formatPercent(Math.round(hardening * 100))} of full`;
  return hardening < SELDOM_HARDENED
    ? t`Trees here are seldom fully hardened when the cold comes: on nights near the leaf limit they had ${degree} hardening on average.`
    : t`On nights near the leaf limit trees here had ${degree} hardening on average.`;
}

/** A count of crops: `6`, worst tenth `at most 2`, `none`. */
export function cropCells(count: CropCount | null): readonly [median: string, worst: string] {
  if (count === null) return ['–', '–'];
  return [
    count.median === 0 ? t`none` : formatPlain(count.median, 1),
    count.worst_tenth === 0 ? t`none` : t`at most${FIXED_SPACE}${formatPlain(count.worst_tenth, 1)}`,
  ];
}

/** Rows of the table of crops: a name, then a cell for each reading; nights only under a cover. */
export function cropRows(type: TypeLife): readonly (readonly string[])[] {
  const readings = READINGS.map((reading) => type[reading]);
  const row = (name: string, cell: (reading: LifeReading) => string): readonly string[] => [
    name,
    ...readings.map(cell),
  ];
  const rows = [
    row(t`Median of the plantings`, (reading) => cropCells(reading.crops_in_ten)[0]),
    row(t`The worst tenth`, (reading) => cropCells(reading.crops_in_ten)[1]),
    row(t`Median, with bloom or new growth lost`, (reading) => cropCells(reading.crops_in_ten_with_bloom)[0]),
    row(
      t`The worst tenth, with bloom or new growth lost`,
      (reading) => cropCells(reading.crops_in_ten_with_bloom)[1],
    ),
    row(t`Crops lost in ten winters of bearing age`, ({ crops_lost_in_ten: lost }) =>
      lost === null ? '–' : lost === 0 ? t`none` : sayFigure(lost, 1),
    ),
  ];
  if (readings.every(({ nights_covered: nights }) => nights === null)) return rows;
  return [
    ...rows,
    row(t`Nights a winter under the cover, mean`, ({ nights_covered: nights }) =>
      nights ? sayFigure(nights.mean, 1) : '–',
    ),
    row(t`Nights under the cover in the worst winter`, ({ nights_covered: nights }) =>
      nights === null ? '–' : String(nights.worst),
    ),
  ];
}

/** The crops of the first ten winters in one sentence. */
export function cropsSentence(type: TypeLife): string {
  const crops = type.night_by_night.crops_in_ten;
  if (crops === null) return t`No planting could be followed for ten winters, so crops are not counted.`;
  const most = Math.max(0, 11 - type.first_crop_year);
  const all = (count: number): boolean => most > 0 && count >= most;
  const plantings = plural(crops.plantings, t`planting`, t`plantings`);
  const gave = all(crops.worst_tenth)
    ? t`at least nine in ten of ${plantings} gave every one`
    : t`${halfGave(crops, all(crops.median), plantings)} and ${worstGave(crops)}`;
  return t`Of the ${most} crops a tree could give in its first ten winters, ${gave}, with hardening counted night by night.`;
}

function halfGave({ median }: CropCount, isAll: boolean, plantings: string): string {
  if (isAll) return t`at least half of ${plantings} gave every one`;
  if (median === 0) return t`half of ${plantings} gave none`;
  return t`half of ${plantings} gave ${formatPlain(median, 1)} or fewer`;
}

function worstGave({ worst_tenth: worst }: CropCount): string {
  if (worst === 0) return t`the worst tenth none`;
  return t`the worst tenth at most${FIXED_SPACE}${formatPlain(worst, 1)}`;
}

/** How good estimated winters are; that they are estimated is told by the answer's own notes. */
export function estimatedSentence(errorC: number, unit: TemperatureUnit, shares: boolean): string {
  return shares
    ? t`The level of these winters is good to about ${errorWords(errorC, unit)}. The ranges allow for that; single plantings may have gone better or worse.`
    : t`The level of these winters is good to about ${errorWords(errorC, unit)}. Single plantings may have gone better or worse.`;
}

/** What stands in for shares where the record is short; `''` where it is long enough. */
export function shortRecordSentence(life: Pick<LifeAnswer, 'winters'>): string {
  if (hasShares(life)) return '';
  return t`What is told here is counted: no share of trees is worked out from fewer than ${FEWEST_WINTERS_TO_FIT} winters.`;
}

/** An age for a list: its share with the range, or on a short record the bare count. */
export function countOrShare(age: AgeShare, shares: boolean): string {
  if (shares) return shareWithRange(age);
  return age.followed === 0 ? t`none followed` : t`${age.alive} of ${age.followed}`;
}

/** First crop, ten and twenty years as bare counts, for a short record. */
export function countRows(type: TypeLife): readonly (readonly string[])[] {
  const row = (name: string, key: 'first_crop' | 'ten_years' | 'twenty_years'): readonly string[] => [
    name,
    ...READINGS.map((reading) => countOrShare(type[reading][key], false)),
  ];
  return [
    row(t`First crop, winter ${type.first_crop_year}`, 'first_crop'),
    row(t`Ten years`, 'ten_years'),
    row(t`Twenty years`, 'twenty_years'),
  ];
}
