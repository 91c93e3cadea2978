import { t } from '../../analysis/language/t.ts';
import type { Spread } from '../../analysis/winter/gain-spread.ts';
import { differenceIn, figure, formatDifference } from './temperatures.ts';
import type { TemperatureUnit } from './unit.ts';

/** Offsets smaller than this are none, °C. */
const NOTHING_C = 0.03;

/** `+4.5 °F (3.0 to 6.0)`, the range only where there is one; `nothing` for none. */
export function spreadWords({ lowC, centreC, highC }: Spread, unit: TemperatureUnit): string {
  const isNone = [lowC, centreC, highC].every((value) => Math.abs(value) < NOTHING_C);
  if (isNone) return t`nothing`;
  const centre = formatDifference(centreC, unit);
  return highC - lowC < NOTHING_C ? centre : `${centre} (${rangeFigures(lowC, highC, unit)})`;
}

/** `3.0 to 6.0`, signs where one end is below zero: `−1.0 to +0.5`. */
function rangeFigures(lowC: number, highC: number, unit: TemperatureUnit): string {
  const [low, high] = [differenceIn(lowC, unit), differenceIn(highC, unit)];
  const plus = low < 0 && high > 0 ? '+' : '';
  return t`${figure(low, 1)} to ${plus + figure(high, 1)}`;
}
