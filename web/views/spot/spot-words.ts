import type { Basis } from '../../../analysis/tree/catalogue.ts';
import type { GainSpread, Spread } from '../../../analysis/winter/gain-spread.ts';
import { differenceIn, figure, FIXED_SPACE, formatDifference } from '../../format/temperatures.ts';
import { unitSymbol, type TemperatureUnit } from '../../format/unit.ts';

/** Offsets smaller than this are none, °C. */
const NOTHING_C = 0.03;

/** `+4.5 °F (3.0 to 6.0)`, the range only where there is one; `nothing` for none. */
export function gainWords({ lowC, centreC, highC }: Spread, unit: TemperatureUnit): string {
  const isNone = [lowC, centreC, highC].every((value) => Math.abs(value) < NOTHING_C);
  if (isNone) return 'nothing';
  const centre = formatDifference(centreC, unit);
  return highC - lowC < NOTHING_C ? centre : `${centre} (${rangeFigures(lowC, highC, unit)})`;
}

/** `3.0 to 6.0`, signs where one end is below zero: `−1.0 to +0.5`. */
export function rangeFigures(lowC: number, highC: number, unit: TemperatureUnit): string {
  const [low, high] = [differenceIn(lowC, unit), differenceIn(highC, unit)];
  const plus = low < 0 && high > 0 ? '+' : '';
  return `${figure(low, 1)} to ${plus}${figure(high, 1)}`;
}

/** A signed figure without its unit, for columns: `+4.5`, `0`. */
export function signedFigure(offsetC: number, unit: TemperatureUnit): string {
  return formatDifference(offsetC, unit).split(FIXED_SPACE)[0];
}

/** What a spot does on calm and on windy nights, as the end of a sentence about it. */
export function spotDoes({ calm, windy }: GainSpread, unit: TemperatureUnit): string {
  const [onCalm, onWindy] = [gainWords(calm, unit), gainWords(windy, unit)];
  if (onCalm === 'nothing' && onWindy === 'nothing') return 'is as cold as the open ground';
  const told = (words: string): string => (words === 'nothing' ? 'nothing' : `about ${words}`);
  return `adds ${told(onCalm)} on calm, clear nights and ${told(onWindy)} on windy ones`;
}

/** How well a figure is known. */
export const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  found: 'found in a source',
  memory: 'recalled from a source, not looked up',
  inferred: 'worked out from sources',
  practice: 'common practice, no source',
};

/** Steps between two lines on the plan and two marks of its legend, °C, and how they are written. */
export function lineSteps(unit: TemperatureUnit): {
  readonly stepC: number;
  readonly write: (offsetC: number) => string;
} {
  return {
    stepC: unit === 'F' ? 10 / 9 : 1,
    write: (offsetC) => {
      const value = Math.round(differenceIn(offsetC, unit));
      return `${value > 0 ? '+' : ''}${figure(value, 0)}°`;
    },
  };
}

/** `°F against the open ground`. */
export function againstOpen(unit: TemperatureUnit): string {
  return `${unitSymbol(unit)} against the open ground`;
}
