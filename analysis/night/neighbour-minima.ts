import type { DailySeries } from '../records/series.ts';

/** A minimum that is missing is taken to lie this far from the month's median towards the night's own. */
const PERSISTENCE = 0.5;

/**
 * Minimum of day `i`, °C. Where the record has none, it is judged from the minimum of night `beside`, which must be known, and the
 * station's median of that night's month.
 */
export type MinimumOf = (i: number, beside: number) => number;

/** `months` are those of the days, `medianTmin` the station's median minimum by month, °C. */
export function neighbourMinima(
  { tminC }: DailySeries,
  months: Uint8Array,
  medianTmin: Float64Array,
): MinimumOf {
  return (i, beside) => {
    const known = i >= 0 && i < tminC.length ? tminC[i] : NaN;
    if (!Number.isNaN(known)) return known;
    const middle = medianTmin[months[beside]];
    return middle + PERSISTENCE * (tminC[beside] - middle);
  };
}
