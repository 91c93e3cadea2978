import type { Gains } from './winter-minima.ts';

/** Degrees with their low and high end, °C differences; `lowC <= centreC <= highC`. */
export interface Spread {
  readonly lowC: number;
  readonly centreC: number;
  readonly highC: number;
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
