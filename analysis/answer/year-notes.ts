import { recordLength } from '../extremes/headline.ts';
import { sayMonth } from '../language/dates.ts';
import { t } from '../language/t.ts';
import type { TreeState } from '../tree/penalties.ts';
import type { DatedWinters } from '../winter/dated-winters.ts';
import type { Subject } from './subject.ts';

/** Sentences that must stand beside the year's dates. */
export function yearNotes(
  { place, notes }: Subject,
  { winters, byShoulderMonths }: DatedWinters,
  tree: TreeState,
): string[] {
  const estimated =
    place.basis === 'history'
      ? [
          t`These dates are estimated: the nights come from stations around the place. Their ranges are those of the winters alone, without what the nights may be off.`,
        ]
      : [];
  const [autumn, spring] = (place.lat < 0 ? [4, 10] : [10, 4]).map((month) => sayMonth(month));
  const shoulders = byShoulderMonths
    ? []
    : [
        t`Whether ${autumn} and ${spring} are on record isn't known here: a winter that misses nights in them may show its first freeze too late or its last too early.`,
      ];
  const hardened = tree.hardened
    ? [
        t`Dates of leaf, wood and kill are those of hardened trees: an early freeze, or one after a warm spell, finds them less hard and takes more than these dates say.`,
      ]
    : [];
  return [...notes, ...estimated, ...shoulders, ...lengthNotes(winters.length), ...hardened];
}

function lengthNotes(winters: number): string[] {
  if (winters === 0) return [t`No winter is whole enough for dates: none are told.`];
  return recordLength(winters) === 'enough'
    ? []
    : [t`Only ${winters} winters whose dates count: read every date as rough (30 make a sound record).`];
}
