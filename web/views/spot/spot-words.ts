import type { GainSpread } from '../../../analysis/winter/gain-spread.ts';
import { spreadWords } from '../../format/spread-words.ts';
import { differenceIn, figure } from '../../format/temperatures.ts';
import { unitSymbol, type TemperatureUnit } from '../../format/unit.ts';

/** What a spot does on calm and on windy nights, as the end of a sentence about it. */
export function spotDoes({ calm, windy }: GainSpread, unit: TemperatureUnit): string {
  const [onCalm, onWindy] = [spreadWords(calm, unit), spreadWords(windy, unit)];
  if (onCalm === 'nothing' && onWindy === 'nothing') return 'is as cold as the open ground';
  const told = (words: string): string => (words === 'nothing' ? 'nothing' : `about ${words}`);
  return `adds ${told(onCalm)} on calm, clear nights and ${told(onWindy)} on windy ones`;
}

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
