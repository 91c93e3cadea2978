import { sayCount, sayFigureText } from '../../analysis/language/figures.ts';
import { t } from '../../analysis/language/t.ts';
import { plural } from './numbers.ts';

/** Two honest figures: 1.4, 12, 35, 130. Below 10 one digit behind the point unless it is a whole number. */
export function formatPeriodFigure(periodWinters: number): string {
  if (periodWinters < 9.95) return sayFigureText(String(Number(periodWinters.toFixed(1))));
  if (periodWinters < 100) return String(Math.round(periodWinters));
  const grain = 10 ** (Math.floor(Math.log10(periodWinters)) - 1);
  return sayCount(Math.round(periodWinters / grain) * grain);
}

/** Below this a winter without a hit is so rare that "1 in 1.02" would only puzzle. */
const NEARLY_EVERY = 1.06;

/** `about 1 winter in 12`, `nearly every winter`; `null` means no end: `rarer than can be told`. */
export function formatPeriod(periodWinters: number | null): string {
  if (periodWinters === null || !Number.isFinite(periodWinters)) return t`rarer than the record can tell`;
  if (periodWinters < 1.0005) return t`every winter`;
  if (periodWinters < NEARLY_EVERY) return t`nearly every winter`;
  return t`about 1 winter in ${formatPeriodFigure(periodWinters)}`;
}

/** The same at the end of a sentence: `in about 1 winter in 12`. */
export function formatPeriodAtEnd(periodWinters: number | null): string {
  const isTold = periodWinters !== null && Number.isFinite(periodWinters) && periodWinters >= NEARLY_EVERY;
  return isTold ? t`in about 1 winter in ${formatPeriodFigure(periodWinters)}` : formatPeriod(periodWinters);
}

/** `1 in 12`, `nearly every winter`, for tables and marks; `null`: `no end`. */
export function formatPeriodShort(periodWinters: number | null): string {
  if (periodWinters === null || !Number.isFinite(periodWinters)) return t`no end`;
  if (periodWinters < NEARLY_EVERY) return formatPeriod(periodWinters);
  return t`1 in ${formatPeriodFigure(periodWinters)}`;
}

/** `1 in 8 to 1 in 20`, `1 in 8 or rarer`. Both ends in winters, `low` the more frequent one. */
export function formatPeriodRange(low: number | null, high: number | null): string {
  if (low === null) return t`range not known`;
  if (high === null || !Number.isFinite(high)) return t`${formatPeriodShort(low)} or rarer`;
  const [a, b] = [formatPeriodShort(low), formatPeriodShort(high)];
  return a === b ? a : t`${a} to ${b}`;
}

/** Nothing is claimed beyond this many winters of a record of `winters` (design 3.5). */
export function longestTold(winters: number): number {
  return 2 * winters;
}

/** `1 in 12`; beyond twice the record `rarer than 1 in 138`. */
export function formatPeriodWithin(period: number | null, winters: number): string {
  const longest = longestTold(winters);
  if (period !== null && period <= longest) return formatPeriodShort(period);
  return t`rarer than ${formatPeriodShort(longest)}`;
}

/** The same with the word it counts: `1 winter in 12`. */
export function formatWinterWithin(period: number | null, winters: number): string {
  const longest = longestTold(winters);
  const told = (of: number): string =>
    of < 1.0005 ? t`every winter` : t`1 winter in ${formatPeriodFigure(of)}`;
  return period !== null && period <= longest ? told(period) : t`rarer than ${told(longest)}`;
}

/** As {@link formatPeriodRange}, its ends told no further than twice the record. */
export function formatRangeWithin(low: number | null, high: number | null, winters: number): string {
  const longest = longestTold(winters);
  if (low !== null && low > longest) return formatPeriodWithin(null, winters);
  return formatPeriodRange(low, high !== null && high > longest ? null : high);
}

/** The part of an assessment's headline that words need; see `analysis/answer/assessment.ts`. */
export interface HeadlineWords {
  readonly period: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly basis: 'fitted' | 'counted' | 'beyond' | 'not seen';
}

/**
 * One answer in words, without a full stop. `winters` is the number of complete winters used. A bound must not read like a
 * period: `1 in 90 or rarer` of a hardier tree may stand beside `about 1 winter in 110` of a tenderer one.
 */
export function formatHeadline(headline: HeadlineWords, winters: number): string {
  if (headline.basis === 'not seen') {
    const seen = t`not seen in ${plural(winters, t`winter`, t`winters`)}`;
    const limit = limitWords(headline);
    return limit === '' ? seen : `${seen}; ${limit}`;
  }
  if (headline.basis === 'beyond') {
    const bound = formatPeriodFigure(headline.low ?? headline.period ?? 2 * winters);
    return t`too rare to tell, 1 winter in ${bound} or rarer`;
  }
  return formatPeriod(headline.period);
}

/** What a hit that was not seen still may be: `could be as often as 1 in 40`; `''` where nothing bounds it. */
export function limitWords({ low }: Pick<HeadlineWords, 'low'>): string {
  return low === null ? '' : t`could be as often as ${formatPeriodShort(low)}`;
}

/** The same in a few characters, for marks: `1 in 12`, `1 in 60 or rarer`, `0 of 61`. */
export function formatHeadlineShort(headline: HeadlineWords, winters: number): string {
  if (headline.basis === 'not seen') return t`0 of ${winters}`;
  if (headline.basis === 'beyond') return t`${formatPeriodShort(headline.low ?? headline.period)} or rarer`;
  return formatPeriodShort(headline.period);
}
