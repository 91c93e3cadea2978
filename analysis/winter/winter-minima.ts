import { durationWeights, MISSING_HUNDREDTHS, NIGHT_KINDS } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { toHundredths } from '../units/temperature.ts';

/** Degrees that a spot and a cover add to the air, °C, by kind of night. */
export interface Gains {
  readonly calmC: number;
  readonly windyC: number;
}

export const NO_GAINS: Gains = { calmC: 0, windyC: 0 };

/** Gain on each kind of night, in the order of NIGHT_KINDS; an unclear night gets the smaller of the two. */
export function gainsByKindC(gains: Gains): readonly number[] {
  return NIGHT_KINDS.map((kind) =>
    kind === 'calm' ? gains.calmC : kind === 'windy' ? gains.windyC : Math.min(gains.calmC, gains.windyC),
  );
}

/**
 * Each winter's value with the gains chosen: the smallest of coldest `S_hours` + gain over the kinds of night,
 * hundredths of °C, MISSING_HUNDREDTHS for a winter without a night at or below 10 °C.
 * Between the kept durations the level is interpolated in hours.
 */
export function winterMinima(winters: WinterTable, hours: number, gains: Gains): Int16Array {
  const { lower, weight } = durationWeights(hours);
  const byKind = gainsByKindC(gains).map(toHundredths);
  const count = winters.winter.length;
  const minima = new Int16Array(count).fill(MISSING_HUNDREDTHS);
  for (let kind = 0; kind < byKind.length; kind++) {
    const a = winters.coldest[kind][lower];
    const b = winters.coldest[kind][weight === 0 ? lower : lower + 1];
    for (let w = 0; w < count; w++) {
      if (a[w] === MISSING_HUNDREDTHS || b[w] === MISSING_HUNDREDTHS) continue;
      const value = Math.round(a[w] + weight * (b[w] - a[w])) + byKind[kind];
      if (minima[w] === MISSING_HUNDREDTHS || value < minima[w]) minima[w] = value;
    }
  }
  return minima;
}

/** The night of a winter's lowest minimum over all kinds of night, `null` when no night was at or below 10 °C. */
export function coldestNight(winters: WinterTable, w: number): number | null {
  let night: number | null = null;
  let lowest = Infinity;
  for (let kind = 0; kind < NIGHT_KINDS.length; kind++) {
    const level = winters.coldest[kind][0][w];
    if (level === MISSING_HUNDREDTHS || level >= lowest) continue;
    lowest = level;
    night = winters.coldestDay[kind][0][w];
  }
  return night;
}
