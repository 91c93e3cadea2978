import { CONDITIONS_OF_COVER, type MeasureId } from '../../../analysis/cover/cover-ids.ts';
import { findMeasure, type Measure } from '../../../analysis/cover/measures.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import type { GainSpread } from '../../../analysis/winter/gain-spread.ts';
import { signedFigure } from '../spot/spot-words.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

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

/** `+7.0 / +2.5`, `+7.0 / 0`; an en dash where it gains nothing at this level at all. */
export function shortGain({ calm, windy }: GainSpread, unit: TemperatureUnit): string {
  if (calm.highC === 0 && windy.highC === 0) return '–';
  return `${signedFigure(calm.centreC, unit)} / ${signedFigure(windy.centreC, unit)}`;
}

/** Levels at which a measure gains something, when not all: `the graft only`, `limbs and graft only`; else `''`. */
export function savesOnly({ gain }: Measure): string {
  const saved = LEVELS.filter((level) => gain[level].calm.highC > 0);
  if (saved.length === LEVELS.length) return '';
  return saved.includes('wood') ? 'limbs and graft only' : 'the graft only';
}

/** The work of one tree: `15 min each cold night`, `30 min a season, 20 min each cold night`. */
export function effortWords(seasonMinutes: number, nightMinutes: number): string {
  const parts = [
    seasonMinutes > 0 ? `${timeWords(seasonMinutes)} a season` : '',
    nightMinutes > 0 ? `${timeWords(nightMinutes)} each cold night` : '',
  ].filter(Boolean);
  return parts.length === 0 ? 'none' : parts.join(', ');
}

function timeWords(minutes: number): string {
  return minutes < 120 ? `${minutes} min` : `${Number((minutes / 60).toFixed(1))} h`;
}

/** Words for a choice without a measure in it. */
export const NO_COVER = 'no cover';

/** A choice in words: `heavy frost cloth and watered soil, tied to the ground`; `no cover` for none. */
export function coverWords(ids: readonly string[]): string {
  const names = ids.flatMap((id) => (findMeasure(id) ? [lower(SHORT_NAMES[id as MeasureId])] : []));
  if (names.length === 0) return NO_COVER;
  const list = names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return ids.includes('tied') ? `${list}, tied to the ground` : list;
}

/** What the reader is asked to confirm. */
export function conditionOf(id: 'tied' | 'lights-confirmed'): (typeof CONDITIONS_OF_COVER)[number] {
  return CONDITIONS_OF_COVER.find((condition) => condition.id === id)!;
}

/** Each caution once, with the short names of the measures it goes with. */
export function cautionsOf(
  ids: readonly string[],
): readonly { readonly caution: string; readonly of: readonly string[] }[] {
  const byText = new Map<string, string[]>();
  for (const id of ids)
    for (const caution of findMeasure(id)?.cautions ?? [])
      byText.set(caution, [...(byText.get(caution) ?? []), SHORT_NAMES[id as MeasureId]]);
  return [...byText].map(([caution, of]) => ({ caution, of }));
}

function lower(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1);
}
