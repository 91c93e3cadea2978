import { NIGHT_KINDS, SUSTAINED_HOURS } from '../../analysis/records/nights.ts';
import {
  celsiusDifferenceToFahrenheit,
  fahrenheitToCelsius,
  toHundredths,
} from '../../analysis/units/temperature.ts';
import { civilDate } from '../../analysis/units/calendar.ts';
import type { JudgedNight } from './left-out.ts';

/** Mean absolute error and mean error (estimated less observed) of S_h, °F, by duration in hours. */
export interface ErrorRow {
  readonly nights: number;
  readonly maeF: Readonly<Record<string, number>>;
  readonly biasF: Readonly<Record<string, number>>;
}

export type Estimate = (night: JudgedNight) => Float64Array;

/** Nights of a winter in December and January that it needs before its coldest night is looked for. */
const MIDWINTER_DAYS_MIN = 15;

export function errorRow(nights: readonly JudgedNight[], estimate: Estimate): ErrorRow {
  const maeF: Record<string, number> = {};
  const biasF: Record<string, number> = {};
  SUSTAINED_HOURS.forEach((hours, j) => {
    const errors = nights.map((night) =>
      celsiusDifferenceToFahrenheit(estimate(night)[j] - night.observed[j]),
    );
    maeF[hours] = rounded(mean(errors.map(Math.abs)));
    biasF[hours] = rounded(mean(errors));
  });
  return { nights: nights.length, maeF, biasF };
}

/** Nights whose observed minimum is at or below 0 °C. */
export function frostNights(nights: readonly JudgedNight[]): JudgedNight[] {
  return nights.filter(({ observed }) => observed[0] <= 0);
}

/** Nights whose booked minimum, all a daily record knows, is at or below 0 °C: some of these minima came the evening after. */
export function bookedFrostNights(nights: readonly JudgedNight[]): JudgedNight[] {
  return nights.filter(({ curve }) => curve[0] <= 0);
}

export function errorsByAirport(
  nights: readonly JudgedNight[],
  estimate: Estimate,
): Record<string, ErrorRow> {
  const names = [...new Set(nights.map(({ airport }) => airport))];
  return Object.fromEntries(
    names.map((name) => [
      name,
      errorRow(
        nights.filter(({ airport }) => airport === name),
        estimate,
      ),
    ]),
  );
}

/** By kind as a daily record tells it. */
export function errorsByKind(nights: readonly JudgedNight[], estimate: Estimate): Record<string, ErrorRow> {
  return Object.fromEntries(
    NIGHT_KINDS.map((name, kind) => [
      name,
      errorRow(
        nights.filter((night) => night.kind === kind),
        estimate,
      ),
    ]),
  );
}

/** Each airport's nights winter by winter; with `whole` only winters seen through December and January. */
export function wintersOf(nights: readonly JudgedNight[], whole: boolean): JudgedNight[][] {
  const winters = new Map<string, JudgedNight[]>();
  for (const night of nights) {
    const key = `${night.airport} ${night.winter}`;
    const list = winters.get(key);
    if (list) list.push(night);
    else winters.set(key, [night]);
  }
  const inMonth = (list: JudgedNight[], month: number): number =>
    list.filter(({ day }) => civilDate(day).month === month).length;
  return [...winters.values()].filter((list) => {
    if (Math.min(...list.map(({ observed }) => observed[0])) > 0) return false;
    return !whole || Math.min(inMonth(list, 12), inMonth(list, 1)) > MIDWINTER_DAYS_MIN;
  });
}

/** The night with the lowest observed minimum of each winter. */
export function coldestNights(winters: readonly JudgedNight[][]): JudgedNight[] {
  return winters.map((list) => list.reduce((a, b) => (b.observed[0] < a.observed[0] ? b : a)));
}

/** Errors of the winter's coldest S_h, the number that counts hits: the coldest estimated against the coldest observed. */
export function winterMinimumErrors(winters: readonly JudgedNight[][], estimate: Estimate): ErrorRow {
  const minima = winters.map((list) => {
    const lowest = (of: (night: JudgedNight) => Float64Array): Float64Array =>
      Float64Array.from(SUSTAINED_HOURS, (_, j) => Math.min(...list.map((night) => of(night)[j])));
    return { ...list[0], observed: lowest((night) => night.observed), estimated: lowest(estimate) };
  });
  return errorRow(minima, (night) => night.estimated);
}

/** Nights held at or below a level for four hours: observed and estimated, per winter. */
export function hitsAtFourHours(
  winters: readonly JudgedNight[][],
  estimate: Estimate,
): Record<string, object> {
  const j = SUSTAINED_HOURS.indexOf(4);
  const nights = winters.flat();
  return Object.fromEntries(
    [28, 26, 24].map((levelF) => {
      const level = toHundredths(fahrenheitToCelsius(levelF));
      const count = (of: (night: JudgedNight) => Float64Array): number =>
        nights.filter((night) => toHundredths(of(night)[j]) <= level).length;
      const observed = count((night) => night.observed);
      const estimated = count(estimate);
      return [
        levelF,
        {
          observedPerWinter: rounded(observed / winters.length),
          estimatedPerWinter: rounded(estimated / winters.length),
          excess: rounded(estimated / observed - 1),
        },
      ];
    }),
  );
}

/** Mean distance of `S_h - S_0` from its own median: what is left when only the minimum is known. */
export function spreadOverMinimum(nights: readonly JudgedNight[]): Record<string, number> {
  return Object.fromEntries(
    SUSTAINED_HOURS.map((hours, j) => {
      const above = nights
        .map(({ observed }) => celsiusDifferenceToFahrenheit(observed[j] - observed[0]))
        .sort((a, b) => a - b);
      const middle = above[above.length >> 1];
      return [hours, rounded(mean(above.map((value) => Math.abs(value - middle))))];
    }),
  );
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

export function rounded(value: number): number {
  return Number.isFinite(value) ? Math.round(value * 1000) / 1000 : value;
}
