import type { GainSpread } from '../../../analysis/winter/gain-spread.ts';

/** A gain without ends, °C. */
export function certainly(calmC: number, windyC: number): GainSpread {
  const exactly = (value: number) => ({ lowC: value, centreC: value, highC: value });
  return { calm: exactly(calmC), windy: exactly(windyC) };
}
