import { FEWEST_WINTERS_TO_FIT } from '../extremes/fit-winters.ts';
import { t } from '../language/t.ts';
import type { Subject } from './subject.ts';

/** More winters than one in so many without a whole record are said: a design choice. */
const NOT_WHOLE_TOLD = 10;

/** Sentences that must stand beside the lives of trees. */
export function lifeNotes({
  winters: { complete },
  interpolation,
}: Pick<Subject, 'winters' | 'interpolation'>): string[] {
  const estimated = interpolation
    ? [t`No thermometer stood here: nights, winters and lives are estimated from the stations around.`]
    : [];
  const first = complete.indexOf(1);
  if (first < 0)
    return [...estimated, t`No winter on record is complete, so no tree could be planted and followed.`];
  const lived = complete.subarray(first);
  const whole = lived.reduce((sum, flag) => sum + flag, 0);
  return [...estimated, ...shortNotes(whole), ...gapNotes(lived.length - whole, lived.length)];
}

function shortNotes(planted: number): string[] {
  if (planted >= FEWEST_WINTERS_TO_FIT) return [];
  const winters = planted === 1 ? t`1 complete winter` : t`${planted} complete winters`;
  return [t`Only ${winters} to plant in: counts of trees are what there is, a share of so few says little.`];
}

/** Counts of trees take an unseen winter for a harmless one; shares leave it out. */
function gapNotes(gaps: number, winters: number): string[] {
  if (gaps * NOT_WHOLE_TOLD <= winters) return [];
  return [
    t`${gaps} of the ${winters} winters are not complete: trees are taken to live through those unless a loss was seen, so counts of living trees may be too high. Shares leave such winters out.`,
  ];
}
