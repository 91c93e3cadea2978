import type { Headline, LevelAnswer } from '../../../analysis/answer/assessment.ts';
import type { Forgetting } from '../../../analysis/cover/forgetting.ts';
import type { Burden, CoverRecord } from '../../../analysis/cover/cover-nights.ts';
import { sayFigure } from '../../../analysis/language/figures.ts';
import { t } from '../../../analysis/language/t.ts';
import { levelWords, rangeWords } from '../../format/answer-words.ts';
import { formatWinter } from '../../format/dates.ts';
import { countedWinters } from '../../format/estimated.ts';
import { formatCount, plural } from '../../format/numbers.ts';
import {
  formatHeadline,
  formatHeadlineShort,
  formatPeriodFigure,
  formatPeriodWithin,
  longestTold,
} from '../../format/periods.ts';

/**
 * One answer inside a sentence: `about 1 winter in 9 (range 1 in 6 to 1 in 15)`. A bound is told to be one: the low end of a
 * range under a cover may be shorter than the period without.
 */
export function toldWithRange(level: LevelAnswer): string {
  if (level.headline.basis === 'beyond' && level.counted.winters > 0)
    return t`too rare to tell (${levelWords(level)})`;
  const range = rangeWords(level);
  return range === '' ? levelWords(level) : `${levelWords(level)} (${range})`;
}

/**
 * What the gain's own ends make of the answer; `''` where there is no range to it, or nothing to tell. On a spot its gain is
 * in it: the low end may lie below the answer without a cover.
 */
export function overTheGain(level: LevelAnswer, onSpot = false): string {
  const { low, high } = level.if_gain;
  const { winters } = level.counted;
  if (winters === 0) return '';
  const [least, most] = [low.headline, high.headline].map((end) => endWords(end, winters));
  if (least === most) return '';
  return onSpot
    ? t`Over what spot and cover together may gain: ${least} at its low end, ${most} at its high end.`
    : t`Over what the gain may be: ${least} at its low end, ${most} at its high end.`;
}

function endWords(headline: Headline, winters: number): string {
  if (headline.basis === 'fitted' || headline.basis === 'counted')
    return formatPeriodWithin(headline.period, winters);
  return headline.basis === 'beyond'
    ? formatHeadlineShort(headline, winters)
    : formatHeadline(headline, winters).replace(/;.*/, '');
}

/** A headline for a column: `1 in 31`, `1 in 54 or rarer`, `0 of 25`. */
export function headlineCell(headline: Headline, winters: number): string {
  if (winters === 0) return t`not known`;
  if (headline.basis === 'fitted' || headline.basis === 'counted')
    return formatPeriodWithin(headline.period, winters);
  return formatHeadlineShort(headline, winters);
}

/** The longest wish that a record allows, winters: twice its length, and no shorter than 2. */
export function longestWish(winters: number): number {
  return Math.max(2, longestTold(winters));
}

/** A mean count a winter: `3.4`, `0.34`, `0`. */
export function meanFigure({ total, perWinter }: Burden): string {
  if (perWinter === null) return '–';
  if (total === 0) return '0';
  return sayFigure(perWinter, perWinter >= 0.95 ? 1 : 2);
}

/** `12 in 1989–90`, `–` where there was none. */
export function worstWinter({ worst }: Burden, hemisphere: 'north' | 'south'): string {
  return worst === null ? '–' : t`${formatCount(worst.nights)} in ${formatWinter(worst.winter, hemisphere)}`;
}

/** The nights in one sentence. */
export function nightsSentence(record: CoverRecord, estimated: boolean): string {
  const { toCover, saved, lost, completeWinters } = record;
  if (completeWinters === 0) return t`No winter here is complete, so there is no mean to tell.`;
  const over = countedWinters(completeWinters, estimated);
  if (toCover.total === 0) return t`In ${over} the cover would never have had to go on.`;
  const rest = toCover.total - saved.total - lost.total;
  const nights = plural(toCover.total, t`night`, t`nights`);
  return t`Over ${over} it would have gone on ${nights}: ${formatCount(saved.total)} of them it would have saved, ${formatCount(lost.total)} would have been lost even so, and on ${formatCount(rest)} it would have come close without harm.`;
}

/** What forgetting one night in ten costs; `''` where there is nothing to forget. */
export function forgettingSentence({ bare, faithful, forgetting }: Forgetting): string {
  if (bare.hits === 0 || forgetting.hits - faithful.hits < 1e-9) return '';
  const of = ({ hits }: { readonly hits: number }): string => sayFigure(hits, Number.isInteger(hits) ? 0 : 1);
  const { winters } = bare;
  const period = formatPeriodFigure(forgetting.period);
  return faithful.hits === 0
    ? t`Of ${winters} winters, ${of(bare)} would have brought the loss without a cover and ${of(faithful)} with every night covered. Forget one of the nights in ten and it is ${of(forgetting)} on average: 1 in ${period} instead of none.`
    : t`Of ${winters} winters, ${of(bare)} would have brought the loss without a cover and ${of(faithful)} with every night covered. Forget one of the nights in ten and it is ${of(forgetting)} on average: 1 in ${period} instead of 1 in ${formatPeriodFigure(faithful.period)}.`;
}
