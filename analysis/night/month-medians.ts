import type { DailySeries } from '../records/series.ts';
import { civilDate, dayNumber, type DayNumber } from '../units/calendar.ts';

/** Medians of a station's own record by calendar month, °C; NaN for a month without data. */
export interface MonthMedians {
  readonly tmin: Float64Array;
  /** Maximum less minimum of the same day. */
  readonly range: Float64Array;
}

/** Month 0-11 of each day of a dense series. */
export function monthsOf(firstDay: DayNumber, count: number): Uint8Array {
  const months = new Uint8Array(count);
  let i = 0;
  while (i < count) {
    const { year, month } = civilDate(firstDay + i);
    const nextMonth = month === 12 ? dayNumber(year + 1, 1, 1) : dayNumber(year, month + 1, 1);
    const end = Math.min(count, nextMonth - firstDay);
    months.fill(month - 1, i, end);
    i = end;
  }
  return months;
}

/** Medians by month; a month without a value takes the median of all months. */
export function monthMedians(series: DailySeries, months: Uint8Array): MonthMedians {
  const { tminC, tmaxC } = series;
  return {
    tmin: medians(months, (i) => tminC[i]),
    range: medians(months, (i) => tmaxC[i] - tminC[i]),
  };
}

function medians(months: Uint8Array, value: (i: number) => number): Float64Array {
  const byMonth: number[][] = Array.from({ length: 12 }, () => []);
  for (let i = 0; i < months.length; i++) {
    const v = value(i);
    if (!Number.isNaN(v)) byMonth[months[i]].push(v);
  }
  const whole = median(byMonth.flat());
  return Float64Array.from(byMonth, (values) => (values.length > 0 ? median(values) : whole));
}

function median(values: number[]): number {
  const sorted = Float64Array.from(values).sort();
  const n = sorted.length;
  if (n === 0) return NaN;
  return n % 2 === 1 ? sorted[n >> 1] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
}
