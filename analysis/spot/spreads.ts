import type { Spread } from '../winter/gain-spread.ts';

/** `share` times a spread; a negative share turns it over, so that the low end stays the lower one. */
export function scaledSpread({ lowC, centreC, highC }: Spread, share: number): Spread {
  return share < 0
    ? { lowC: highC * share, centreC: centreC * share, highC: lowC * share }
    : { lowC: lowC * share, centreC: centreC * share, highC: highC * share };
}
