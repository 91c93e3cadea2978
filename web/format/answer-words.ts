import type { LevelAnswer } from '../../analysis/answer/assessment.ts';
import { t } from '../../analysis/language/t.ts';
import { formatWinter } from './dates.ts';
import { countedWinters } from './estimated.ts';
import { plural } from './numbers.ts';
import {
  formatHeadline,
  formatHeadlineShort,
  formatPeriodAtEnd,
  formatPeriodFigure,
  formatPeriodRange,
  formatPeriodWithin,
  formatRangeWithin,
  formatWinterWithin,
  limitWords,
  longestTold,
} from './periods.ts';

/** Sum of the penalties, °C difference. */
export function penaltyC(level: LevelAnswer): number {
  return Object.values(level.penalties_c).reduce((sum, value) => sum + value, 0);
}

/** The level's threshold with its penalties, °C: what the air is compared with. */
export function reachedC(level: LevelAnswer): number {
  return level.threshold_c + penaltyC(level);
}

/** The period as a band from the two ends of the threshold's own range: always so for kill, whose figures are inferred. */
function killBand(level: LevelAnswer): string {
  const often = level.if_threshold.high.period;
  return formatRangeWithin(often, rareEnd(level), level.counted.winters);
}

/**
 * Period at the colder end of the threshold's range, `null` where only a bound is known: a colder threshold is reached
 * more rarely, so a shorter period there than at the centre can only be the bound of a "rarer than".
 */
export function rareEnd({ headline, if_threshold: { low } }: LevelAnswer): number | null {
  const isBound = low.period !== null && headline.period !== null && low.period < headline.period;
  return isBound ? null : low.period;
}

/** Kill is told as a band wherever there is a period to tell. */
function isBand({ level, headline, if_threshold: ends }: LevelAnswer): boolean {
  const told = headline.basis === 'fitted' || headline.basis === 'counted';
  return level === 'kill' && told && ends.high.period !== null;
}

/** One level's answer for rows and tables: `about 1 winter in 12`, `1 in 90 or rarer`; for kill a band. */
export function levelWords(level: LevelAnswer): string {
  const { headline, counted } = level;
  if (counted.winters === 0) return t`not known`;
  if (isBand(level)) return killBand(level);
  if (headline.basis === 'beyond') return formatHeadlineShort(headline, counted.winters);
  return formatHeadline(headline, counted.winters);
}

/** `in between 1 winter in 9 and 1 in 24`, `in 1 winter in 23, or more rarely`. */
function bandSentence(level: LevelAnswer): string {
  const { winters } = level.counted;
  const often = formatWinterWithin(level.if_threshold.high.period, winters);
  const rare = rareEnd(level);
  if (rare === null || rare > longestTold(winters)) return t`in ${often}, or more rarely`;
  return t`in between ${often} and ${formatPeriodWithin(rare, winters)}`;
}

/** The same as the end of "would have lost major limbs ...", in two parts: the answer, and what hangs on to it. */
export function sentenceEnd(level: LevelAnswer): { readonly main: string; readonly rest: string } {
  const { headline, counted } = level;
  if (counted.winters === 0)
    return { main: t`no one can say how often`, rest: t`no winter on record here is complete` };
  if (isBand(level)) return { main: bandSentence(level), rest: t`a band, since kill figures are inferred` };
  if (headline.basis === 'beyond') {
    const bound = formatPeriodFigure(headline.low ?? longestTold(counted.winters));
    return {
      main: t`too rarely for ${plural(counted.winters, t`winter`, t`winters`)} to tell`,
      rest: t`1 winter in ${bound} or rarer, the low end of the range`,
    };
  }
  if (headline.basis === 'not seen') {
    const main = t`not once in ${plural(counted.winters, t`winter`, t`winters`)}`;
    return { main, rest: limitWords(headline) };
  }
  return { main: formatPeriodAtEnd(headline.period), rest: '' };
}

/** The 90 % range in words, `''` where the headline already is a bound. */
export function rangeWords(level: LevelAnswer): string {
  const { basis, low, high } = level.headline;
  if (basis === 'not seen' || basis === 'beyond' || isBand(level)) return '';
  return t`range ${formatRangeWithin(low, high, level.counted.winters)}`;
}

/** `5 of 61 complete winters`; `5 of 61 estimated winters` where there is no station. */
export function countWords(level: LevelAnswer, estimated = false): string {
  return t`${level.counted.hits} of ${countedWinters(level.counted.winters, estimated)}`;
}

/** `last in 1989–90`, `''` when there was none. */
export function lastHitWords(level: LevelAnswer, hemisphere: 'north' | 'south'): string {
  const last = level.counted.hit_winters.at(-1);
  return last === undefined ? '' : t`last in ${formatWinter(last, hemisphere)}`;
}

/** What to say where curve and count don't meet; `''` where they do. */
export function disagreementWords(level: LevelAnswer): string {
  if (level.headline.agrees || !level.fitted) return '';
  const curve = formatPeriodWithin(level.fitted.period, level.counted.winters);
  const count = formatPeriodRange(level.counted.low, level.counted.high);
  return t`The curve says ${curve}, outside what the count allows (${count}): trust neither closely.`;
}

/** Period to sort rows by, rarest last; where only a bound is known it stands for the answer. */
export function sortPeriod(level: LevelAnswer): number {
  const { headline } = level;
  return headline.period ?? headline.low ?? Infinity;
}
