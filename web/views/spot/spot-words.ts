import { t } from '../../../analysis/language/t.ts';
import type { GainSpread } from '../../../analysis/winter/gain-spread.ts';
import { spreadWords } from '../../format/spread-words.ts';
import { differenceIn, figure, signedFigure } from '../../format/temperatures.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

/** What a spot does on calm and on windy nights, as the end of a sentence about it. */
export function spotDoes({ calm, windy }: GainSpread, unit: TemperatureUnit): string {
  const [onCalm, onWindy] = [spreadWords(calm, unit), spreadWords(windy, unit)];
  const nothing = t`nothing`;
  if (onCalm === nothing && onWindy === nothing) return t`is as cold as the open ground`;
  if (onCalm === nothing) return t`adds nothing on calm, clear nights and about ${onWindy} on windy ones`;
  if (onWindy === nothing) return t`adds about ${onCalm} on calm, clear nights and nothing on windy ones`;
  return t`adds about ${onCalm} on calm, clear nights and about ${onWindy} on windy ones`;
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

/** The middle of both gains: `+4.5 calm, +1.5 windy`. */
export function calmAndWindy({ calm, windy }: GainSpread, unit: TemperatureUnit): string {
  return t`${signedFigure(calm.centreC, unit)} calm, ${signedFigure(windy.centreC, unit)} windy`;
}
