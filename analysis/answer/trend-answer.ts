import { mannKendall, RECENT_WINTERS, senSlope } from '../extremes/trend.ts';
import type { WinterTable } from '../records/winters.ts';
import type { TrendAnswer } from './assessment.ts';
import type { HoursBook } from './fit-book.ts';

/** Fewer winters say nothing of a trend. */
const FEWEST_WINTERS = 10;

/** Trend of the complete winters' values; `null` with fewer than 10 winters with a cold night. */
export function answerTrend(winters: WinterTable, { valuesC }: HoursBook): TrendAnswer | null {
  const labels = [...winters.winter].filter((_, w) => winters.complete[w] === 1);
  const kept = labels.flatMap((winter, i) =>
    Number.isNaN(valuesC[i]) ? [] : [{ winter, value: valuesC[i] }],
  );
  if (kept.length < FEWEST_WINTERS) return null;
  const values = kept.map(({ value }) => value);
  const times = kept.map(({ winter }) => winter);
  const { z, p } = mannKendall(values);
  const recent = kept
    .filter(({ winter }) => winter > times.at(-1)! - RECENT_WINTERS)
    .map(({ value }) => value);
  return {
    mann_kendall_z: z,
    mann_kendall_p: p,
    sen_c_per_decade: 10 * senSlope(values, times),
    mean_all_c: mean(values),
    mean_last30_c: recent.length < kept.length ? mean(recent) : null,
    location_shift_c: null,
    location_shift_p: null,
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
