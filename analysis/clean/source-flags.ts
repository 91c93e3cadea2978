import { t } from '../language/t.ts';
import { shown, type Findings } from './findings.ts';
import type { DayTable } from './day-table.ts';

/** Quality flags of GHCN-Daily (readme, section III, QFLAG1) and of hourly order files (`s`). */
const MEANINGS: Readonly<Record<string, string>> = {
  D: 'duplicate check',
  G: 'gap check',
  I: 'internal consistency',
  K: 'streak or frequent value',
  L: 'length of a multiday period',
  M: 'megaconsistency',
  N: 'naught check',
  O: 'climatological outlier',
  R: 'lagged range',
  S: 'spatial consistency',
  T: 'temporal consistency',
  W: 'too warm for snow',
  X: 'bounds',
  Z: 'official investigation',
  s: 'marked suspect',
};

/** The reason under which a flagged value is counted, such as `source flag I (internal consistency)`. */
export function flagReason(code: number): string {
  const flag = String.fromCharCode(code);
  const meaning = MEANINGS[flag];
  return meaning ? `source flag ${flag} (${meaning})` : `source flag ${flag}`;
}

/** Drops what the source itself flagged as failed. */
export function dropFlagged(table: DayTable, findings: Findings): void {
  for (let at = 0; at < table.length; at += 1) {
    const day = table.firstDay + at;
    for (const element of ['tmin', 'tmax'] as const) {
      const flag = element === 'tmin' ? table.tminFlag[at]! : table.tmaxFlag[at]!;
      if (flag === 0) continue;
      const values = element === 'tmin' ? table.tminC : table.tmaxC;
      const value = values[at]!;
      if (Number.isNaN(value)) continue;
      findings.drop(
        day,
        element,
        value,
        flagReason(flag),
        t`${element} ${shown(value, day)} was flagged by its source.`,
      );
      values[at] = NaN;
    }
  }
}
