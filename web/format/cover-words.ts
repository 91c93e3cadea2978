import { sayList } from '../../analysis/language/lists.ts';
import { t } from '../../analysis/language/t.ts';
import type { MeasureId } from '../../analysis/cover/cover-ids.ts';
import { findMeasure } from '../../analysis/cover/measures.ts';

/** Names short enough for a narrow column. */
export const SHORT_NAMES: Readonly<Record<MeasureId, string>> = {
  'watered-soil': t`Watered soil`,
  'bare-soil': t`Bare, moist soil`,
  'cloth-light': t`Light frost cloth`,
  'cloth-medium': t`Medium frost cloth`,
  'cloth-heavy': t`Heavy frost cloth`,
  sheet: t`Sheet or blanket`,
  lights: t`Old-style lights`,
  'soil-bank': t`Soil over the graft`,
  'trunk-wrap': t`Trunk wrap`,
  'sprinkler-low': t`Low sprinkler`,
  'sprinkler-raised': t`Raised sprinkler`,
  'wrap-sprinkler': t`Wrap and sprinkler`,
  garage: t`Into the garage`,
  'plastic-house': t`Glass or plastic house`,
};

/** Words for a choice without a measure in it. */
export const NO_COVER = t`no cover`;

/** A choice in words: `heavy frost cloth and watered soil, tied to the ground`; `no cover` for none. */
export function coverWords(ids: readonly string[]): string {
  const names = ids.flatMap((id) => (findMeasure(id) ? [lower(SHORT_NAMES[id as MeasureId])] : []));
  if (names.length === 0) return NO_COVER;
  const list = sayList(names);
  return ids.includes('tied') ? t`${list}, tied to the ground` : list;
}

function lower(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1);
}
