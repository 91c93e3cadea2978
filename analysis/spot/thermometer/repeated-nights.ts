import type { DayNumber } from '../../units/calendar.ts';
import { nightLikeness } from './pair-noise.ts';

/**
 * How much wider the range of a mean over these nights is than if each told something new: nights close together repeat
 * each other, and also look more alike than they are, so that their own scatter understates both. The square root of
 * (1'R1 / n) / (1 - mean correlation of two nights), R the correlations of `nightLikeness`.
 * @returns 1 for a single night; about 1.3 for 15 nights of two winters, 1.5 of one, 2.5 for 15 in a row.
 */
export function stretchOf(days: readonly DayNumber[]): number {
  const n = days.length;
  if (n < 2) return 1;
  let between = 0;
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) between += nightLikeness(days[j]! - days[i]!);
  const mean = Math.min((2 * between) / (n * (n - 1)), 0.9);
  return Math.sqrt((1 + (n - 1) * mean) / (1 - mean));
}
