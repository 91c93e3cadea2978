import { t } from '../language/t.ts';
import type { DayTable } from './day-table.ts';
import { shown, type Findings } from './findings.ts';

/** A run this much longer than chance allows is dropped, a run chance hardly allows is doubtful. */
const BEYOND_CHANCE_DAYS = 3;
const LEAST_STUCK_DAYS = 8;
const LEAST_COPIED_DAYS = 4;
/** Accepted chance that a whole record holds one run as long by accident. */
const ACCIDENT = 1e-4;

/**
 * Finds runs of one and the same minimum that are longer than this record's own rate of repeats explains, and runs of
 * days with both the same minimum and the same maximum. All days of such a run but the first are dropped.
 */
export function dropStuck(table: DayTable, findings: Findings): void {
  const same = (values: Float64Array, at: number): boolean => Math.abs(values[at]! - values[at - 1]!) < 0.01;
  const { tminC, tmaxC } = table;
  dropRuns(
    table,
    findings,
    ['tmin', 'tmax'],
    'copied days',
    LEAST_COPIED_DAYS,
    0,
    (at) => same(tminC, at) && same(tmaxC, at),
  );
  dropRuns(table, findings, ['tmin'], 'stuck value', LEAST_STUCK_DAYS, BEYOND_CHANCE_DAYS, (at) =>
    same(tminC, at),
  );
  dropRuns(table, findings, ['tmax'], 'stuck value', LEAST_STUCK_DAYS, BEYOND_CHANCE_DAYS, (at) =>
    same(tmaxC, at),
  );
}

function dropRuns(
  table: DayTable,
  findings: Findings,
  elements: readonly ('tmin' | 'tmax')[],
  reason: string,
  leastDays: number,
  beyond: number,
  repeats: (at: number) => boolean,
): void {
  const longest = longestByChance(table, elements[0]!, repeats);
  for (let start = 0; start < table.length;) {
    let end = start + 1;
    while (end < table.length && repeats(end)) end += 1;
    const days = end - start;
    const certain = days >= Math.max(leastDays, longest + beyond);
    const doubtful = !certain && days >= Math.max(leastDays, longest);
    if (certain || doubtful) {
      for (let at = start + 1; at < end; at += 1) {
        for (const element of elements) {
          const values = element === 'tmin' ? table.tminC : table.tmaxC;
          const day = table.firstDay + at;
          const detail = t`${element} ${shown(values[at]!, day)} is the same on ${days} days in a row; chance explains ${longest}.`;
          if (certain) findings.drop(day, element, values[at]!, reason, detail);
          else findings.doubt(day, element, values[at]!, reason, detail);
        }
      }
      if (certain) {
        for (const element of elements)
          (element === 'tmin' ? table.tminC : table.tmaxC).fill(NaN, start + 1, end);
      }
    }
    start = end;
  }
}

/** Longest run, days, that repeats at the record's own rate produce by chance. */
function longestByChance(
  table: DayTable,
  element: 'tmin' | 'tmax',
  repeats: (at: number) => boolean,
): number {
  const values = element === 'tmin' ? table.tminC : table.tmaxC;
  let [pairs, equal] = [0, 0];
  for (let at = 1; at < table.length; at += 1) {
    if (Number.isNaN(values[at]! - values[at - 1]!)) continue;
    pairs += 1;
    if (repeats(at)) equal += 1;
  }
  // A little more than counted: repeats are commoner in calm seasons than over the year.
  const rate = Math.min(0.6, Math.max(0.002, (1.5 * equal) / Math.max(1, pairs)));
  return 1 + Math.ceil(Math.log(Math.max(pairs, 1) / ACCIDENT) / -Math.log(rate));
}
