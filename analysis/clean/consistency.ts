import type { DayTable } from './day-table.ts';
import { shown, type Findings } from './findings.ts';
import { normalsOf } from './season-normals.ts';

/** A minimum may lie above its maximum by this much, °C: two roundings. */
const ROUNDING_C = 0.6;
/** The value this many times further off its neighbours than the other is the wrong one. */
const CLEARLY_FURTHER = 2;

/** Drops what can't be true of one day: a minimum above the maximum, and zero for both where the days around differ. */
export function dropInconsistent(table: DayTable, findings: Findings): void {
  const normals = normalsOf(table);
  const { tminC, tmaxC, firstDay } = table;
  for (let at = 0; at < table.length; at += 1) {
    const [tmin, tmax] = [tminC[at]!, tmaxC[at]!];
    const day = firstDay + at;
    if (tmin === 0 && tmax === 0) {
      const off = Math.abs(tmax - besideMean(tmaxC, at));
      const detail = `tmin and tmax are both zero on ${shown(0, day).slice(-10)}.`;
      for (const element of ['tmin', 'tmax'] as const) {
        if (off > 4) findings.drop(day, element, 0, 'zero for missing', detail);
        else findings.doubt(day, element, 0, 'zero for missing', detail);
      }
      if (off > 4) tminC[at] = tmaxC[at] = NaN;
      continue;
    }
    if (!(tmin > tmax + ROUNDING_C)) continue;
    const offMin = Math.abs(tmin - besideMean(tminC, at)) / normals.tminChange.of(day).spreadAbove;
    const offMax = Math.abs(tmax - besideMean(tmaxC, at)) / normals.tmaxChange.of(day).spreadAbove;
    const detail = `tmin ${shown(tmin, day)} lies above tmax ${tmax.toFixed(1)} °C of the same day.`;
    const minIsRight = offMax > CLEARLY_FURTHER * offMin;
    const maxIsRight = offMin > CLEARLY_FURTHER * offMax;
    if (!minIsRight) {
      findings.drop(day, 'tmin', tmin, 'minimum above maximum', detail);
      tminC[at] = NaN;
    }
    if (!maxIsRight) {
      findings.drop(day, 'tmax', tmax, 'minimum above maximum', detail);
      tmaxC[at] = NaN;
    }
  }
}

function besideMean(values: Float64Array, at: number): number {
  const beside = [values[at - 1], values[at + 1]].filter(
    (v): v is number => v !== undefined && !Number.isNaN(v),
  );
  return beside.length === 0 ? NaN : beside.reduce((sum, v) => sum + v, 0) / beside.length;
}
