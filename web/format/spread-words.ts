import type { Spread } from '../../analysis/winter/gain-spread.ts';
import { differenceIn, figure, FIXED_SPACE, formatDifference } from './temperatures.ts';
import type { TemperatureUnit } from './unit.ts';

/** Offsets smaller than this are none, °C. */
const NOTHING_C = 0.03;

/** `+4.5 °F (3.0 to 6.0)`, the range only where there is one; `nothing` for none. */
export function spreadWords({ lowC, centreC, highC }: Spread, unit: TemperatureUnit): string {
  const isNone = [lowC, centreC, highC].every((value) => Math.abs(value) < NOTHING_C);
  if (isNone) return 'nothing';
  const centre = formatDifference(centreC, unit);
  return highC - lowC < NOTHING_C ? centre : `${centre} (${rangeFigures(lowC, highC, unit)})`;
}

/** `3.0 to 6.0`, signs where one end is below zero: `−1.0 to +0.5`. */
function rangeFigures(lowC: number, highC: number, unit: TemperatureUnit): string {
  const [low, high] = [differenceIn(lowC, unit), differenceIn(highC, unit)];
  const plus = low < 0 && high > 0 ? '+' : '';
  return `${figure(low, 1)} to ${plus}${figure(high, 1)}`;
}

/** A signed figure without its unit, for columns: `+4.5`, `0`. */
export function signedFigure(offsetC: number, unit: TemperatureUnit): string {
  return formatDifference(offsetC, unit).split(FIXED_SPACE)[0];
}
