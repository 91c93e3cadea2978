/** A return period in winters and its 90 % range. Infinity: never by the fit, or no bound. */
export interface PeriodRange {
  readonly period: number;
  readonly low: number;
  readonly high: number;
}
