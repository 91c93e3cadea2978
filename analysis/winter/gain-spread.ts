import { fahrenheitDifferenceToCelsius } from '../units/temperature.ts';
import type { Gains } from './winter-minima.ts';

/** Degrees with their low and high end, °C differences; `lowC <= centreC <= highC`. */
export interface Spread {
  readonly lowC: number;
  readonly centreC: number;
  readonly highC: number;
}

/** Low end, centre and high end of a figure in °F differences, as the handbook's tables give them. */
export type SpreadF = readonly [lowF: number, centreF: number, highF: number];

/** A spread in °F differences to °C differences. */
export function spreadOfF([lowF, centreF, highF]: SpreadF): Spread {
  return {
    lowC: fahrenheitDifferenceToCelsius(lowF),
    centreC: fahrenheitDifferenceToCelsius(centreF),
    highC: fahrenheitDifferenceToCelsius(highF),
  };
}

/** What a spot or a cover adds to the air, by kind of night. */
export interface GainSpread {
  readonly calm: Spread;
  readonly windy: Spread;
}

const NOTHING: Spread = { lowC: 0, centreC: 0, highC: 0 };

export const NO_GAIN_SPREAD: GainSpread = { calm: NOTHING, windy: NOTHING };

/** One end of a gain, or its centre, on both kinds of night. */
export function gainsAt({ calm, windy }: GainSpread, end: keyof Spread): Gains {
  return { calmC: calm[end], windyC: windy[end] };
}
