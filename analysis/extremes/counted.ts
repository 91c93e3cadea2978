import { toHundredths } from '../units/temperature.ts';
import { wilsonInterval } from './wilson.ts';

/** k of n winters with a hit, as a return period with its Wilson 90 % range. */
export interface Counted {
  readonly hits: number;
  readonly winters: number;
  /** Winters / hits, Infinity where none hit. */
  readonly period: number;
  /** Shortest period in the range. With no hit: "could be as often as 1 in `low`". */
  readonly low: number;
  /** Longest period in the range, Infinity where none hit. */
  readonly high: number;
}

/**
 * The count as a return period. No winter at all says nothing: a range from 1 to Infinity.
 * @throws RangeError when `hits` is outside 0 to `winters`.
 */
export function countedPeriod(hits: number, winters: number, level = 0.9): Counted {
  if (winters === 0 && hits === 0) return { hits, winters, period: Infinity, low: 1, high: Infinity };
  const share = wilsonInterval(hits, winters, level);
  return { hits, winters, period: winters / hits, low: 1 / share.high, high: 1 / share.low };
}

/**
 * Number of winter values at or below a threshold, compared in whole hundredths of °C as sustained cold is stored.
 * A NaN value (a complete winter without a cold night) is no hit.
 */
export function countHits(valuesC: ArrayLike<number>, thresholdC: number): number {
  const threshold = toHundredths(thresholdC);
  let hits = 0;
  for (let i = 0; i < valuesC.length; i++) if (toHundredths(valuesC[i]!) <= threshold) hits++;
  return hits;
}
