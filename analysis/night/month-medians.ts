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
  const size = new Int32Array(12);
  for (const month of months) size[month]++;
  const byMonth = Array.from(size, (count) => new Float64Array(count));
  const known = new Int32Array(12);
  for (let i = 0; i < months.length; i++) {
    const v = value(i);
    if (!Number.isNaN(v)) byMonth[months[i]][known[months[i]]++] = v;
  }
  const values = byMonth.map((all, month) => all.subarray(0, known[month]));
  const result = Float64Array.from(values, median);
  if (known.includes(0)) {
    const whole = median(Float64Array.from(values.flatMap((part) => [...part])));
    for (let month = 0; month < 12; month++) if (known[month] === 0) result[month] = whole;
  }
  return result;
}

/** Sorts `values` in place. */
function median(values: Float64Array): number {
  values.sort();
  const n = values.length;
  if (n === 0) return NaN;
  return n % 2 === 1 ? values[n >> 1] : (values[n / 2 - 1] + values[n / 2]) / 2;
}
