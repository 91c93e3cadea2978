import fc from 'fast-check';

import { curveTemperatureC, NightCurve } from '../../../analysis/night/night-curve.ts';
import { SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';

export interface CurveFigures {
  readonly dayLength: number;
  readonly tmaxTwoBefore: number;
  readonly tminBefore: number;
  readonly tmaxBefore: number;
  readonly tmin: number;
  readonly tmaxAfter: number;
  readonly tminAfter: number;
}

export function curveOf(figures: CurveFigures): NightCurve {
  const curve = new NightCurve();
  curve.setDayLength(figures.dayLength);
  const { tmaxTwoBefore, tminBefore, tmaxBefore, tmin, tmaxAfter, tminAfter } = figures;
  return Object.assign(curve, { tmaxTwoBefore, tminBefore, tmaxBefore, tmin, tmaxAfter, tminAfter });
}

/** Temperatures come in hundredths, as records have them at the finest. */
const hundredths = (fromC: number, toC: number): fc.Arbitrary<number> =>
  fc.integer({ min: fromC * 100, max: toC * 100 }).map((value) => value / 100);

/** Days whose maximum is not below their minimum, from calm to fronts of any kind, in both hemispheres and polar light. */
export const anyCurve: fc.Arbitrary<CurveFigures> = fc
  .record({
    dayLength: fc.double({ min: 0, max: 24, noNaN: true }),
    evening: hundredths(-20, 20),
    minima: fc.array(hundredths(-20, 12), { minLength: 3, maxLength: 3 }),
    ranges: fc.array(fc.oneof(fc.constant(0), hundredths(0, 18)), {
      minLength: 2,
      maxLength: 2,
    }),
  })
  .map(({ dayLength, evening, minima: [before, tmin, after], ranges }) => ({
    dayLength,
    tmaxTwoBefore: evening,
    tminBefore: before,
    tmaxBefore: before + ranges[0],
    tmin,
    tmaxAfter: tmin + ranges[1],
    tminAfter: after,
  }));

/** Sustained cold of the curve by trying every window on a fine grid, for each of SUSTAINED_HOURS above 0. */
export function bruteSustained(curve: NightCurve, step: number): number[] {
  const grid: number[] = [];
  for (let k = 0; k <= 48 / step; k++) grid.push(curveTemperatureC(curve, k * step - 24));
  return SUSTAINED_HOURS.slice(1).map((hours) => {
    const width = Math.round(hours / step);
    const from = Math.round((12 - hours / 2) / step);
    const to = Math.round((36 - hours / 2) / step);
    let coldest = Infinity;
    for (let start = from; start <= to; start++) {
      let warmest = -Infinity;
      for (let k = start; k <= start + width && warmest < coldest; k++) warmest = Math.max(warmest, grid[k]);
      coldest = Math.min(coldest, warmest);
    }
    return coldest;
  });
}

/** Steepest change of the curve on the grid, °C a step: the grid's own error is at most that. */
export function steepestStepC(curve: NightCurve, step: number): number {
  let steepest = 0;
  for (let k = 1; k <= 48 / step; k++) {
    const change = curveTemperatureC(curve, k * step - 24) - curveTemperatureC(curve, (k - 1) * step - 24);
    steepest = Math.max(steepest, Math.abs(change));
  }
  return steepest;
}
