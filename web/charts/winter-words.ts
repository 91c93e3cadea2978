import { formatDay, formatWinter } from '../format/dates.ts';
import { formatHours } from '../format/numbers.ts';
import { formatDifference, formatTemperature } from '../format/temperatures.ts';
import type { TemperatureUnit } from '../format/unit.ts';
import { isHit, type WinterBar, type WinterNight } from './winter-bars.ts';

/** What the words about a winter need besides the winter. */
export interface WinterContext {
  readonly thresholdC: number;
  readonly hours: number;
  readonly unit: TemperatureUnit;
  readonly hemisphere: 'north' | 'south';
}

const KIND_WORDS = { calm: 'calm night', windy: 'windy night', unclear: 'wind not known' } as const;

/** `2.1 °F past the threshold`, `4.0 °F short of it`. */
function distanceWords(valueC: number, { thresholdC, unit }: WinterContext): string {
  const below = thresholdC - valueC;
  const size = formatDifference(Math.abs(below), unit).replace('+', '');
  return below >= 0 ? `${size} past the threshold` : `${size} short of the threshold`;
}

/** One sentence about a winter, for the readout and for screen readers. */
export function winterSentence(
  bar: WinterBar,
  night: WinterNight | undefined,
  context: WinterContext,
): string {
  const name = `Winter ${formatWinter(bar.winter, context.hemisphere)}`;
  const gap = bar.complete
    ? ''
    : ` Not complete${bar.reason ? ` (${bar.reason})` : ''}: listed, not counted.`;
  if (bar.valueC === null) return `${name}: no night cold enough to be kept, or no readings.${gap}`;
  const held = context.hours === 0 ? '' : ` for ${formatHours(context.hours)}`;
  const level = `${formatTemperature(bar.valueC, context.unit, 1)} or colder${held}`;
  const when = night ? `, ${formatDay(night.date)}, ${KIND_WORDS[night.kind]}` : '';
  const outcome = isHit(bar, context.thresholdC) ? 'Hit' : 'No hit';
  return `${name}: ${level}${when}. ${outcome}, ${distanceWords(bar.valueC, context)}.${gap}`;
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
    hit: bar.valueC === null ? '–' : isHit(bar, context.thresholdC) ? 'hit' : 'no',
    night: night ? formatDay(night.date, 'short') : '–',
    kind: night?.kind ?? '–',
    complete: bar.complete ? 'complete' : (bar.reason ?? 'not complete'),
  };
}
