import { scaleLog } from 'd3-scale';
import type { Headline } from '../../analysis/answer/assessment.ts';

/** The axis ends here unless told otherwise; rarer answers run into the open end. */
export const PERIOD_MAX_WINTERS = 200;

/** Shares of the width kept free at both ends: room for marks at "every winter" and for the arrows of the open end. */
const LEFT_MARGIN = 0.015;
const OPEN_END = 0.055;

const TICKS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/**
 * Place of a return period on the axis as a share of its width, 0-1, logarithmic from every winter (left) to
 * `maxPeriod` (right). `null` and anything rarer than `maxPeriod` lie at the open end, 1.
 */
export function periodPosition(period: number | null, maxPeriod = PERIOD_MAX_WINTERS): number {
  if (period === null || Number.isNaN(period) || period > maxPeriod) return 1;
  return scaleLog([1, maxPeriod], [LEFT_MARGIN, 1 - OPEN_END]).clamp(true)(period);
}

/** Marks of the axis with their place; the first is "every winter". */
export function periodTicks(maxPeriod = PERIOD_MAX_WINTERS): { period: number; at: number; label: string }[] {
  return TICKS.filter((period) => period <= maxPeriod).map((period) => ({
    period,
    at: periodPosition(period, maxPeriod),
    label: period === 1 ? 'every' : String(period),
  }));
}

/** What a row draws, in shares of the width. */
export interface PeriodMarks {
  /** Centre of the mark; `null` where only a bound is known. */
  readonly point: number | null;
  /** The 90 % range, or from the bound to the open end. */
  readonly from: number;
  readonly to: number;
  /** The range runs out of the axis: an arrow instead of a stop. */
  readonly open: boolean;
  readonly kind: 'estimate' | 'beyond' | 'not seen';
}

/** Geometry of one answer on the axis. */
export function periodMarks(
  headline: Pick<Headline, 'period' | 'low' | 'high' | 'basis'>,
  maxPeriod = PERIOD_MAX_WINTERS,
): PeriodMarks {
  const { basis, period, low, high } = headline;
  if (basis === 'beyond' || basis === 'not seen') {
    const from = periodPosition(low ?? period, maxPeriod);
    return { point: null, from, to: 1, open: true, kind: basis };
  }
  const point = periodPosition(period, maxPeriod);
  const from = periodPosition(low ?? period, maxPeriod);
  const to = periodPosition(high, maxPeriod);
  return { point, from: Math.min(from, point), to: Math.max(to, point), open: to === 1, kind: 'estimate' };
}
