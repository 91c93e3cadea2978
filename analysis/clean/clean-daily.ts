import { t } from '../language/t.ts';
import type { DailySeries, DroppedValue, RawDailyReadings } from '../records/series.ts';
import { civilDate } from '../units/calendar.ts';
import { dropImpossible } from './bounds.ts';
import { dropInconsistent, dropZeroDays } from './consistency.ts';
import { dayTable } from './day-table.ts';
import { Findings } from './findings.ts';
import { judgeMinima, judgeWarmSide, type NeighbourCheck } from './outliers.ts';
import { mendReadingHours } from './reading-hour.ts';
import { isWrittenInFahrenheit, restoreFahrenheit } from './restore-fahrenheit.ts';
import { normalsOf } from './season-normals.ts';
import { dropFlagged } from './source-flags.ts';
import { dropStuck } from './streaks.ts';

/** A station's daily record after cleaning. */
export interface CleanedDaily {
  readonly series: DailySeries;
  /** Values taken out, each with its reason. */
  readonly dropped: readonly DroppedValue[];
  /** Values kept although something speaks against them. */
  readonly doubtful: readonly DroppedValue[];
  /** Sentences about the record as a whole. */
  readonly notes: readonly string[];
}

/** What cleaning may ask from outside the record. */
export interface CleaningHelp {
  readonly isSupportedByNeighbours?: NeighbourCheck;
}

/**
 * Cleans the daily readings of one station, from one file or several.
 *
 * @param raws at least one; the first one's station is the series' station.
 * @throws {InputError} when there is no reading at all.
 */
export function cleanDaily(raws: readonly RawDailyReadings[], help: CleaningHelp = {}): CleanedDaily {
  const { station } = raws[0]!;
  const findings = new Findings(station.id);
  const table = dayTable(raws, findings);
  dropFlagged(table, findings);
  dropImpossible(table, findings);
  const restored = restoreFahrenheit([table.tminC, table.tmaxC], monthsFrom(table.firstDay));
  if (restored > 0)
    findings.note(t`${restored} values were whole °F stored as tenths of °C; they were restored.`);
  dropZeroDays(table, findings, isWrittenInFahrenheit([table.tminC, table.tmaxC]));
  // Medians and spreads hardly move when a few values fall, so they are taken once.
  const normals = normalsOf(table);
  judgeWarmSide(table, normals, findings);
  judgeMinima(table, normals, findings, help.isSupportedByNeighbours ?? null);
  dropInconsistent(table, normals, findings);
  dropStuck(table, findings);
  mendReadingHours(table, findings);
  findings.settle();
  return {
    series: {
      station,
      firstDay: table.firstDay,
      tminC: table.tminC,
      tmaxC: table.tmaxC,
      windMs: table.windMs,
    },
    dropped: findings.dropped,
    doubtful: findings.doubtful,
    notes: findings.notes,
  };
}

/** Month of an entry, counted through the years; asked in order, so the calendar is looked at once a month only. */
function monthsFrom(firstDay: number): (entry: number) => number {
  let [month, next] = [-1, 0];
  return (entry) => {
    if (entry < next && entry >= next - 31 && month >= 0) return month;
    const date = civilDate(firstDay + entry);
    month = date.year * 12 + date.month;
    next = entry - date.day + 1 + daysOf(date.year, date.month);
    return month;
  };
}

function daysOf(year: number, month: number): number {
  return new Date(Date.UTC(2000 + (((year % 400) + 400) % 400), month, 0)).getUTCDate();
}
