import { t } from '../../analysis/language/t.ts';
import type { Headline } from '../../analysis/answer/assessment.ts';
import { longestTold } from '../format/periods.ts';

/** The axis ends here unless told otherwise; rarer answers run into the open end. */
export const PERIOD_MAX_WINTERS = 200;

/** Shares of the width kept free at both ends: room for marks at "every winter" and for the arrows of the open end. */
const LEFT_MARGIN = 0.015;
const OPEN_END = 0.055;
/** Where a line that leaves the axis ends, so that its arrow still has room. */
const LAST_END = 0.965;

const TICKS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/**
 * Place of a return period on the axis as a share of its width, 0-1, logarithmic from every winter (left) to
 * `maxPeriod` (right). `null` and anything rarer than `maxPeriod` lie at the open end, 1.
 */
export function periodPosition(period: number | null, maxPeriod = PERIOD_MAX_WINTERS): number {
  if (period === null || Number.isNaN(period) || period > maxPeriod) return 1;
  const share = Math.log(Math.max(1, period)) / Math.log(maxPeriod);
  return LEFT_MARGIN + share * (1 - OPEN_END - LEFT_MARGIN);
}

/** Marks of the axis with their place; the first is "every winter". */
export function periodTicks(maxPeriod = PERIOD_MAX_WINTERS): { period: number; at: number; label: string }[] {
  return TICKS.filter((period) => period <= maxPeriod).map((period) => ({
    period,
    at: periodPosition(period, maxPeriod),
    label: period === 1 ? t`every` : String(period),
  }));
}

/** What a row draws, in shares of the width. */
export interface PeriodMarks {
  /** Centre of the mark; `null` where only a bound is known. */
  readonly point: number | null;
  /** The 90 % range, its rare end no farther than twice the record; where only a bound is known, from it to that end. */
  readonly from: number;
  readonly to: number;
  /** The range goes on beyond what is claimed, or beyond the axis: an arrow instead of a stop. */
  readonly open: boolean;
  readonly kind: 'estimate' | 'beyond' | 'not seen';
}

/**
 * Geometry of one answer on the axis. Nothing is drawn beyond twice the record, as nothing is said there: a longer range
 * ends open.
 * @param winters complete winters behind the answer.
 */
export function periodMarks(
  headline: Pick<Headline, 'period' | 'low' | 'high' | 'basis'>,
  winters: number,
  maxPeriod = PERIOD_MAX_WINTERS,
): PeriodMarks {
  const { basis, period, low, high } = headline;
  const longest = longestTold(winters);
  const farthest = Math.min(LAST_END, periodPosition(longest, maxPeriod));
  const from = Math.min(farthest, periodPosition(low ?? period, maxPeriod));
  if (basis === 'beyond' || basis === 'not seen')
    return { point: null, from, to: farthest, open: true, kind: basis };
  const point = Math.min(farthest, periodPosition(period, maxPeriod));
  const open = high === null || high > Math.min(longest, maxPeriod);
  const to = open ? farthest : periodPosition(high, maxPeriod);
  return { point, from: Math.min(from, point), to: Math.max(to, point), open, kind: 'estimate' };
}
