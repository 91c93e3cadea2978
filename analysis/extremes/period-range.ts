/** A return period in winters and its 90 % range. Infinity: never by the fit, or no bound. */
export interface PeriodRange {
  readonly period: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Makes periods monotone by taking the shorter one. `ranges` run from the case that should be rarest (coldest
 * threshold, longest hours, largest gain) to the one that should come most often; no entry may then be rarer than one
 * before it. Separately estimated curves can cross, and the answer that says "more often" is kept.
 */
export function makeMonotone(ranges: readonly PeriodRange[]): PeriodRange[] {
  let period = Infinity;
  let low = Infinity;
  let high = Infinity;
  return ranges.map((range) => {
    period = Math.min(period, range.period);
    low = Math.min(low, range.low);
    high = Math.min(high, range.high);
    return { period, low, high };
  });
}
