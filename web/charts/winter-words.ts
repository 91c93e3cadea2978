import { t } from '../../analysis/language/t.ts';
import { formatDay, formatWinter } from '../format/dates.ts';
import { incompleteWords } from '../format/incomplete-words.ts';
import { KIND_NAMES } from '../format/night-kinds.ts';
import { formatHours } from '../format/numbers.ts';
import { formatSize, formatTemperature } from '../format/temperatures.ts';
import type { TemperatureUnit } from '../format/unit.ts';
import { isHit, type WinterBar, type WinterNight } from './winter-bars.ts';

/** What the words about a winter need besides the winter. */
export interface WinterContext {
  readonly thresholdC: number;
  readonly hours: number;
  readonly unit: TemperatureUnit;
  readonly hemisphere: 'north' | 'south';
}

const KIND_WORDS = { calm: t`calm night`, windy: t`windy night`, unclear: t`wind not known` } as const;

/** `Hit, 2.1 °F past the threshold.` */
function outcomeWords(hit: boolean, valueC: number, { thresholdC, unit }: WinterContext): string {
  const size = formatSize(thresholdC - valueC, unit);
  return hit ? t`Hit, ${size} past the threshold.` : t`No hit, ${size} short of the threshold.`;
}

/** One sentence about a winter, for the readout and for screen readers. */
export function winterSentence(
  bar: WinterBar,
  night: WinterNight | undefined,
  context: WinterContext,
): string {
  return [...levelSentences(bar, night, context), gapWords(bar)].filter((part) => part !== '').join(' ');
}

function levelSentences(
  bar: WinterBar,
  night: WinterNight | undefined,
  context: WinterContext,
): readonly string[] {
  const winter = formatWinter(bar.winter, context.hemisphere);
  if (bar.valueC === null) return [t`Winter ${winter}: no night cold enough to be kept, or no readings.`];
  const temperature = formatTemperature(bar.valueC, context.unit, 1);
  const level =
    context.hours === 0
      ? t`${temperature} or colder`
      : t`${temperature} or colder for ${formatHours(context.hours)}`;
  const told = night ? [level, formatDay(night.date), KIND_WORDS[night.kind]].join(', ') : level;
  return [t`Winter ${winter}: ${told}.`, outcomeWords(isHit(bar, context.thresholdC), bar.valueC, context)];
}

function gapWords({ complete, reason }: WinterBar): string {
  if (complete) return '';
  return reason
    ? t`Not complete (${incompleteWords(reason)}): listed, not counted.`
    : t`Not complete: listed, not counted.`;
}

/** The same as cells of the table twin. */
export function winterCells(
  bar: WinterBar,
  night: WinterNight | undefined,
  context: WinterContext,
): Record<string, string> {
  return {
    winter: formatWinter(bar.winter, context.hemisphere),
    level: formatTemperature(bar.valueC, context.unit, 1),
    hit: bar.valueC === null ? '–' : isHit(bar, context.thresholdC) ? t`hit` : t`no`,
    night: night ? formatDay(night.date, 'short') : '–',
    kind: night ? KIND_NAMES[night.kind] : '–',
    complete: bar.complete ? t`complete` : bar.reason ? incompleteWords(bar.reason) : t`not complete`,
  };
}
