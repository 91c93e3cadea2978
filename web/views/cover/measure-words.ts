import { CONDITIONS_OF_COVER, type MeasureId } from '../../../analysis/cover/cover-ids.ts';
import { findMeasure, type Measure } from '../../../analysis/cover/measures.ts';
import { t } from '../../../analysis/language/t.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import type { GainSpread } from '../../../analysis/winter/gain-spread.ts';
import { formatPlain } from '../../format/numbers.ts';
import { signedFigure } from '../../format/temperatures.ts';
import { SHORT_NAMES } from '../../format/cover-words.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

/** `+7.0 / +2.5`, `+7.0 / 0`; an en dash where it gains nothing at this level at all. */
export function shortGain({ calm, windy }: GainSpread, unit: TemperatureUnit): string {
  if (calm.highC === 0 && windy.highC === 0) return '–';
  return `${signedFigure(calm.centreC, unit)} / ${signedFigure(windy.centreC, unit)}`;
}

/** Levels at which a measure gains something, when not all: `the graft only`, `limbs and graft only`; else `''`. */
export function savesOnly({ gain }: Measure): string {
  const saved = LEVELS.filter((level) => gain[level].calm.highC > 0);
  if (saved.length === LEVELS.length) return '';
  return saved.includes('wood') ? t`limbs and graft only` : t`the graft only`;
}

/** The work of one tree: `15 min each cold night`, `30 min a season, 20 min each cold night`. */
export function effortWords(seasonMinutes: number, nightMinutes: number): string {
  const parts = [
    seasonMinutes > 0 ? t`${timeWords(seasonMinutes)} a season` : '',
    nightMinutes > 0 ? t`${timeWords(nightMinutes)} each cold night` : '',
  ].filter(Boolean);
  return parts.length === 0 ? t`none` : parts.join(', ');
}

function timeWords(minutes: number): string {
  return minutes < 120 ? `${minutes} min` : `${formatPlain(minutes / 60, 1)} h`;
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
