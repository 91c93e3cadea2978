import { fitMovingGev } from '../extremes/gev-moving-location.ts';
import { mannKendall, RECENT_WINTERS, senSlope } from '../extremes/trend.ts';
import { negateMinima } from '../extremes/winter-minimum.ts';
import type { WinterTable } from '../records/winters.ts';
import type { TrendAnswer } from './assessment.ts';
import type { HoursBook } from './fit-book.ts';

/** Fewer winters say nothing of a trend. */
const FEWEST_WINTERS = 10;

/** Trend of the complete winters' values; `null` with fewer than 10 winters with a cold night, or all alike. */
export function answerTrend(winters: WinterTable, { valuesC }: HoursBook): TrendAnswer | null {
  const labels = [...winters.winter].filter((_, w) => winters.complete[w] === 1);
  const kept = labels.flatMap((winter, i) =>
    Number.isNaN(valuesC[i]) ? [] : [{ winter, value: valuesC[i] }],
  );
  const values = kept.map(({ value }) => value);
  if (kept.length < FEWEST_WINTERS || new Set(values).size === 1) return null;
  const times = kept.map(({ winter }) => winter);
  const { z, p } = mannKendall(values);
  const moving = fitMovingGev(negateMinima(values), times);
  const recent = kept
    .filter(({ winter }) => winter > times.at(-1)! - RECENT_WINTERS)
    .map(({ value }) => value);
  return {
    mann_kendall_z: z,
    mann_kendall_p: p,
    sen_c_per_decade: 10 * senSlope(values, times),
    mean_all_c: mean(values),
    mean_last30_c: recent.length < kept.length ? mean(recent) : null,
    location_shift_c: -moving.slope * (times.at(-1)! - moving.originWinter),
    location_shift_p: moving.p,
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
