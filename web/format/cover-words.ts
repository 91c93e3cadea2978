import type { MeasureId } from '../../analysis/cover/cover-ids.ts';
import { findMeasure } from '../../analysis/cover/measures.ts';

/** Names short enough for a narrow column. */
export const SHORT_NAMES: Readonly<Record<MeasureId, string>> = {
  'watered-soil': 'Watered soil',
  'bare-soil': 'Bare, moist soil',
  'cloth-light': 'Light frost cloth',
  'cloth-medium': 'Medium frost cloth',
  'cloth-heavy': 'Heavy frost cloth',
  sheet: 'Sheet or blanket',
  lights: 'Old-style lights',
  'soil-bank': 'Soil over the graft',
  'trunk-wrap': 'Trunk wrap',
  'sprinkler-low': 'Low sprinkler',
  'sprinkler-raised': 'Raised sprinkler',
  'wrap-sprinkler': 'Wrap and sprinkler',
  garage: 'Into the garage',
  'plastic-house': 'Glass or plastic house',
};

/** Words for a choice without a measure in it. */
export const NO_COVER = 'no cover';

/** A choice in words: `heavy frost cloth and watered soil, tied to the ground`; `no cover` for none. */
export function coverWords(ids: readonly string[]): string {
  const names = ids.flatMap((id) => (findMeasure(id) ? [lower(SHORT_NAMES[id as MeasureId])] : []));
  if (names.length === 0) return NO_COVER;
  const list = names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return ids.includes('tied') ? `${list}, tied to the ground` : list;
}

function lower(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1);
}
