import { SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import type { StationRecord } from '../../../data-scripts/demo/station-records.ts';

/** What the tests of the climate measure on one site's hourly curve; night `i` runs from noon of day `i` to noon of day `i + 1`. */
export interface MeasuredNights {
  readonly minC: Float64Array;
  /** Local hour (0-23) of the minimum. */
  readonly hour: Uint8Array;
  /** Coldest level held for four hours in each winter, °C, by winter. */
  readonly winterFourHourC: ReadonlyMap<number, number>;
  /** Lowest temperature of each winter, °C, by winter. */
  readonly winterMinC: ReadonlyMap<number, number>;
}

const WINDOW_H = SUSTAINED_HOURS[4];

/** Measures a site straight from its hours, with none of the project's own night code. */
export function measuredNights({ hours, weather }: StationRecord): MeasuredNights {
  const { tempC } = hours;
  const { days, winter } = weather.timeline;
  const minC = new Float64Array(days - 1);
  const hour = new Uint8Array(days - 1);
  const winterFourHourC = new Map<number, number>();
  const winterMinC = new Map<number, number>();
  for (let night = 0; night < days - 1; night++) {
    const noon = night * 24 + 12;
    let at = noon;
    let fourHourC = Infinity;
    for (let i = noon; i <= noon + 24 && i < tempC.length; i++) {
      if (tempC[i] < tempC[at]) at = i;
      if (i + WINDOW_H > noon + 24 || i + WINDOW_H >= tempC.length) continue;
      fourHourC = Math.min(fourHourC, Math.max(...tempC.subarray(i, i + WINDOW_H + 1)));
    }
    minC[night] = tempC[at];
    hour[night] = at % 24;
    const label = winter[night + 1];
    winterMinC.set(label, Math.min(winterMinC.get(label) ?? Infinity, tempC[at]));
    winterFourHourC.set(label, Math.min(winterFourHourC.get(label) ?? Infinity, fourHourC));
  }
  return { minC, hour, winterFourHourC, winterMinC };
}

/** Mean of numbers. */
export function meanOf(values: Iterable<number>): number {
  let sum = 0;
  let count = 0;
  for (const value of values) {
    sum += value;
    count++;
  }
  return sum / count;
}

/** Pearson's correlation of two equally long lists. */
export function correlation(a: readonly number[], b: readonly number[]): number {
  const [meanA, meanB] = [meanOf(a), meanOf(b)];
  let [ab, aa, bb] = [0, 0, 0];
  a.forEach((value, i) => {
    ab += (value - meanA) * (b[i] - meanB);
    aa += (value - meanA) ** 2;
    bb += (b[i] - meanB) ** 2;
  });
  return ab / Math.sqrt(aa * bb);
}

/** GEV shape in Hosking's sign of winter minima (negated), by the handbook's 7.8590 c + 2.9554 c^2 (M11). */
export function hoskingShape(minimaC: readonly number[]): number {
  const x = minimaC.map((value) => -value).sort((p, q) => p - q);
  const n = x.length;
  const [b0, b1, b2] = [
    meanOf(x),
    meanOf(x.map((value, i) => (value * i) / (n - 1))),
    meanOf(x.map((value, i) => (value * i * (i - 1)) / ((n - 1) * (n - 2)))),
  ];
  const c = 2 / (3 + (6 * b2 - 6 * b1 + b0) / (2 * b1 - b0)) - Math.log(2) / Math.log(3);
  return 7.859 * c + 2.9554 * c * c;
}
