import { sayFigure } from '../language/figures.ts';
import { t } from '../language/t.ts';
import type { DayTable } from './day-table.ts';
import { shown, type Findings } from './findings.ts';
import { formatIsoDay } from '../units/calendar.ts';
import type { Normals } from './season-normals.ts';

/** A minimum may lie above its maximum by this much, °C: two roundings. */
const ROUNDING_C = 0.6;
/**
 * Services whose minimum and maximum cover different hours (a night's minimum, a day's maximum) truly have days with
 * the minimum above the maximum, by up to about this much, °C.
 */
const DIFFERENT_HOURS_C = 8;
/** One of the two is plainly wrong when it is this many spreads of a daily change off its neighbours, and this many times further than the other. */
const PLAINLY_OFF = 3;
const CLEARLY_FURTHER = 2;
/** Days with zero for both this far (°C) off the days around them hold zeros for missing. */
const ZEROS_OFF_C = 4;
/** How far the days around are looked for, past further days of zeros. */
const AROUND_DAYS = 15;

/**
 * Drops minima above the maximum of their day where one of the two is plainly wrong or the difference too large; small
 * differences are doubtful.
 */
export function dropInconsistent(table: DayTable, normals: Normals, findings: Findings): void {
  const { tminC, tmaxC, firstDay } = table;
  for (let at = 0; at < table.length; at += 1) {
    const [tmin, tmax] = [tminC[at]!, tmaxC[at]!];
    if (!(tmin > tmax + ROUNDING_C)) continue;
    const day = firstDay + at;
    const offMin = Math.abs(tmin - besideMean(tminC, at)) / normals.tminChange.of(day).spreadAbove;
    const offMax = Math.abs(tmax - besideMean(tmaxC, at)) / normals.tmaxChange.of(day).spreadAbove;
    const detail = t`tmin ${shown(tmin, day)} lies above tmax ${sayFigure(tmax, 1)} °C of the same day.`;
    const maxIsWrong = offMax > PLAINLY_OFF && offMax > CLEARLY_FURTHER * offMin;
    const minIsWrong = offMin > PLAINLY_OFF && offMin > CLEARLY_FURTHER * offMax;
    const both = !maxIsWrong && !minIsWrong && tmin - tmax > DIFFERENT_HOURS_C;
    for (const [element, values, value, wrong] of [
      ['tmin', tminC, tmin, minIsWrong],
      ['tmax', tmaxC, tmax, maxIsWrong],
    ] as const) {
      if (wrong || both) {
        findings.drop(day, element, value, 'minimum above maximum', detail);
        values[at] = NaN;
      } else if (!maxIsWrong && !minIsWrong)
        findings.doubt(day, element, value, 'minimum above maximum', detail);
    }
  }
}

/**
 * Drops days with zero for both, where the days around are plainly different; other such days are doubtful.
 *
 * @param isFahrenheit whether the record was written in °F: there zero for both °C is 32 °F, no mark of missing values.
 */
export function dropZeroDays(table: DayTable, findings: Findings, isFahrenheit: boolean): void {
  if (isFahrenheit) return;
  const { tminC, tmaxC, firstDay } = table;
  const isZero = (at: number): boolean => tminC[at] === 0 && tmaxC[at] === 0;
  const zeros = Array.from({ length: table.length }, (_, at) => at).filter(isZero);
  const around = (at: number, step: number): number => {
    for (let near = at + step; Math.abs(near - at) <= AROUND_DAYS; near += step) {
      const value = tmaxC[near];
      if (value !== undefined && !Number.isNaN(value) && !isZero(near)) return value;
    }
    return NaN;
  };
  const verdicts = zeros.map((at) => {
    const known = [around(at, -1), around(at, 1)].filter((value) => !Number.isNaN(value));
    const off =
      known.length === 0 ? 0 : Math.abs(known.reduce((sum, value) => sum + value, 0) / known.length);
    return { at, drop: off > ZEROS_OFF_C };
  });
  for (const { at, drop } of verdicts) {
    const day = firstDay + at;
    const detail = t`tmin and tmax are both zero on ${formatIsoDay(day)}.`;
    for (const element of ['tmin', 'tmax'] as const) {
      if (drop) findings.drop(day, element, 0, 'zero for missing', detail);
      else findings.doubt(day, element, 0, 'zero for missing', detail);
    }
    if (drop) tminC[at] = tmaxC[at] = NaN;
  }
}

function besideMean(values: Float64Array, at: number): number {
  const beside = [values[at - 1], values[at + 1]].filter(
    (v): v is number => v !== undefined && !Number.isNaN(v),
  );
  return beside.length === 0 ? NaN : beside.reduce((sum, v) => sum + v, 0) / beside.length;
}
