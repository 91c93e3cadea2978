import {
  BATCH_DRAWS,
  type BatchLevel,
  type BatchPeriod,
  type BatchRow,
} from '../../../../analysis/answer/batch.ts';
import type { BatchEntries } from './batch-entries.ts';
import type { BatchShare } from '../../../../analysis/answer/batch-share.ts';
import { rowsWithoutHeight } from '../../../../analysis/answer/batch-table.ts';
import { t } from '../../../../analysis/language/t.ts';
import { formatChance, formatCount, plural } from '../../../format/numbers.ts';
import {
  formatHeadlineShort,
  formatPeriodFigure,
  formatRangeWithin,
  limitWords,
} from '../../../format/periods.ts';

export const LEVEL_TITLES: Readonly<Record<BatchLevel, string>> = {
  fruit: t`Fruit`,
  leaf: t`Leaf`,
  kill: t`Life`,
};

/** What must stand beside the figures of a batch. */
export const BATCH_NOTES: readonly string[] = [
  t`Below each figure stands its 90% range, from ${BATCH_DRAWS} draws instead of the 1,000 of a single answer: half of the ends of ranges lie within 4% of the full ones, nine in ten within 8%. A bound far beyond the record (“or rarer”) moves most: in the worst case tried it was 59% off, so read it as rare, not as a figure.`,
  t`Spot and cover count at the middle of what they gain. Nights are not counted, so a pot that must come in and “not here” stay one class, and a plan may ask for more nights than anybody will cover.`,
  t`Kill figures are mostly inferred; their own range is in the class, not in the range shown. Look a customer’s place up by itself before a tree is sold, and put a forecast or a warning in force before any figure here.`,
];

/** What must be said of rows whose height nobody knows; nothing where there are none. */
export function heightsMissing({ rows, answers }: Pick<BatchEntries, 'rows' | 'answers'>): readonly string[] {
  const count = rowsWithoutHeight(rows, answers);
  return count === 0
    ? []
    : [
        t`The height of ${plural(count, t`row`, t`rows`)} isn’t known, so the mean height of the stations stands in for it, and the answer can be far off: a column “elevation_m” or “elevation_ft” gives it.`,
      ];
}

/** A period in a table: the answer, and its range or bound below. */
export function periodCell(
  told: BatchPeriod,
  winters: number,
): { readonly main: string; readonly rest: string } {
  if (winters === 0) return { main: t`not known`, rest: '' };
  const main = formatHeadlineShort(told, winters);
  if (told.basis === 'not seen') return { main, rest: limitWords(told) };
  if (told.basis === 'beyond') return { main, rest: '' };
  return { main, rest: formatRangeWithin(told.low, told.high, winters) };
}

/** `SC 101 Sallowmere`, or the line where a row has no name. */
export function rowName({ line, label, postcode }: BatchRow): string {
  return `${postcode} ${label}`.trim() || t`line ${line}`;
}

/** The share in a sentence. */
export function shareSentence(
  share: BatchShare,
  type: string,
  level: BatchLevel,
  periodWinters: number,
): string {
  const { rows, surely, likely, not, perhaps } = share;
  const n = formatPeriodFigure(periodWinters);
  const of = plural(rows, t`row with an answer`, t`rows with an answer`);
  const part = (count: number): string => `${formatCount(count)} (${formatChance(count / rows)})`;
  if (rows === 0) return t`No row has an answer.`;
  const ranges = t`With the ranges: surely for ${part(surely)}, perhaps for ${part(perhaps)}, not for ${part(not)}.`;
  return `${byEstimate(level, type, of, part(likely), n)} ${ranges}`;
}

function byEstimate(level: BatchLevel, type: string, of: string, part: string, n: string): string {
  switch (level) {
    case 'fruit':
      return t`${type}: of ${of}, ${part} would lose the fruit more rarely than 1 winter in ${n} by the best estimate.`;
    case 'leaf':
      return t`${type}: of ${of}, ${part} would lose the leaves more rarely than 1 winter in ${n} by the best estimate.`;
    case 'kill':
      return t`${type}: of ${of}, ${part} would lose the tree more rarely than 1 winter in ${n} by the best estimate.`;
  }
}

/** `4 minutes left`, `20 seconds left`. */
export function timeLeft(seconds: number | null): string {
  if (seconds === null) return '';
  if (seconds >= 90) {
    const minutes = Math.round(seconds / 60);
    return t`about ${plural(minutes, t`minute`, t`minutes`)} left`;
  }
  return t`about ${plural(Math.max(1, Math.ceil(seconds)), t`second`, t`seconds`)} left`;
}
