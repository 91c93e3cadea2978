import { fahrenheitDifferenceToCelsius } from '../units/temperature.ts';
import type { Spread } from '../winter/gain-spread.ts';

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

/** `share` times a spread; a negative share turns it over, so that the low end stays the lower one. */
export function scaledSpread({ lowC, centreC, highC }: Spread, share: number): Spread {
  return share < 0
    ? { lowC: highC * share, centreC: centreC * share, highC: lowC * share }
    : { lowC: lowC * share, centreC: centreC * share, highC: highC * share };
}
