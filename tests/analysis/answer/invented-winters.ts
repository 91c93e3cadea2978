import { MISSING_HUNDREDTHS, NIGHT_KINDS, SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import type { WinterTable } from '../../../analysis/records/winters.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';

/**
 * Made-up winters: minimum drawn from a Gumbel-like law around `middleC`, each longer duration a little warmer; two
 * winters in three have their coldest night calm, the rest windy. NaN in `fixed` is a winter without a cold night.
 */
export function inventedWinters(
  count: number,
  middleC: number,
  seed = 1,
  fixed: readonly number[] = [],
): WinterTable {
  const random = seededRandom(seed);
  const minimaC = Array.from(
    { length: count },
    (_, w) => fixed[w] ?? middleC + 2.2 * Math.log(-Math.log(random.uniform())),
  );
  const level = (k: number, j: number, w: number) => {
    const minimum = minimaC[w];
    if (Number.isNaN(minimum) || k === 2) return MISSING_HUNDREDTHS;
    const own = (w % 3 === 0 ? 1 : 0) === k ? 0 : 1.7;
    return Math.round(100 * (minimum + own + 0.25 * SUSTAINED_HOURS[j]));
  };
  const table = <T>(make: (k: number, j: number) => T) =>
    NIGHT_KINDS.map((_, k) => SUSTAINED_HOURS.map((__, j) => make(k, j)));
  return {
    winter: Int16Array.from({ length: count }, (_, w) => 1960 + w),
    complete: new Uint8Array(count).fill(1),
    reason: new Array<string>(count).fill(''),
    coldest: table((k, j) => Int16Array.from({ length: count }, (_, w) => level(k, j, w))),
    coldestDay: table(() => new Int32Array(count).fill(3000)),
  };
}
