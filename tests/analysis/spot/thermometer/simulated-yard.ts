import { cholesky } from '../../../../analysis/math/positive-definite.ts';
import type { SeededRandom } from '../../../../analysis/math/seeded-random.ts';
import { nightLikeness, PAIR_NOISE } from '../../../../analysis/spot/thermometer/pair-noise.ts';
import type { PairedNight } from '../../../../analysis/spot/thermometer/paired-night.ts';

/** Mornings of `count` nights, increasing. */
export type Calendar = (count: number, random: SeededRandom) => number[];

/** Nights strewn over the 150 of a winter, in winters that follow each other, as even as can be. */
export function strewn(winters: number): Calendar {
  return (count, random) => {
    const days = new Set<number>();
    while (days.size < count) days.add((days.size % winters) * 365 + random.index(150));
    return [...days].sort((a, b) => a - b);
  };
}

/** One night after another. */
export const inARow: Calendar = (count) => Array.from({ length: count }, (_, i) => i);

/**
 * Calm nights at a spot whose true offset is known, °C. The noise is that of `PAIR_NOISE`: Student's t, nights near each
 * other alike as in pairs of real stations, or, with `independent`, each told apart.
 */
export function simulateYard(
  offsetC: number,
  days: readonly number[],
  random: SeededRandom,
  independent = false,
): PairedNight[] {
  const n = days.length;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++)
      matrix[i * n + j] = independent ? Number(i === j) : nightLikeness(days[i]! - days[j]!);
  }
  const factor = new Float64Array(n * n);
  if (!cholesky(matrix, n, factor)) throw new Error('The correlations are not those of any nights.');
  const plain = days.map(() => random.normal());
  const { scaleC, degreesOfFreedom } = PAIR_NOISE.calm;
  return days.map((day, i) => {
    let alike = 0;
    for (let j = 0; j <= i; j++) alike += factor[i * n + j]! * plain[j]!;
    let squares = 0;
    for (let k = 0; k < degreesOfFreedom; k++) squares += random.normal() ** 2;
    const noiseC = scaleC * alike * Math.sqrt(degreesOfFreedom / squares);
    const stationC = -2 + 3 * random.normal();
    const differenceC = offsetC + noiseC;
    return { day, kind: 'calm', stationC, readingC: stationC + differenceC, differenceC, line: i + 1 };
  });
}
