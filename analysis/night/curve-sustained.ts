import { SUSTAINED_COUNT, SUSTAINED_HOURS } from '../records/nights.ts';
import {
  curveTemperatureC,
  fallBeforeSunriseH,
  riseToH,
  SEGMENTS,
  segmentEnd,
  segmentStart,
  sunsetTemperatureC,
  type NightCurve,
} from './night-curve.ts';

/** Levels are found to this, well inside the stored grain of 0.01 °C. */
const TOLERANCE_C = 0.001;
/** A Newton step this short leaves an error far below the tolerance, away from the rim. */
const LAST_STEP_C = 0.03;
const GENTLE_BELOW_RIM_C = 0.5;
const PER_QUARTER_TURN = 2 / Math.PI;

/**
 * Sustained cold of the curve for each of SUSTAINED_HOURS, written to `out` in °C: the smallest, over all windows of
 * h hours whose midpoint lies between noon and noon (-12 to 12), of the windows' warmest values. `out[0]` is the night's
 * booked minimum.
 *
 * Almost every night is a valley between the two afternoons. There the coldest window has equal temperature at both
 * ends, and its level follows from the closed form of the valley's width. Where no such level below both afternoons is
 * wide enough, the lower afternoon is tried (the window then runs over it), and last a bisection over all runs.
 */
export function sustainedOnCurve(curve: NightCurve, out: Float64Array): void {
  const { tmin, tmaxBefore, tmaxAfter } = curve;
  out[0] = tmin;
  const rim = Math.min(tmaxBefore, tmaxAfter);
  const rimWidth = rim > tmin + TOLERANCE_C ? valleyWidthH(curve, rim) : 0;
  let level = tmin;
  for (let j = 1; j < SUSTAINED_COUNT; j++) {
    const hours = SUSTAINED_HOURS[j];
    if (rimWidth >= hours) level = valleyLevelC(curve, hours, level, rim);
    else if (rimWidth > 0 && holdsAt(curve, rim, hours)) level = rim;
    else level = bisect(curve, hours);
    if (rimWidth > 0 && level > noonGuardC(curve, hours)) level = bisect(curve, hours);
    out[j] = level;
  }
}

/** Hours the valley between the two afternoons stays at or below `level`, for tmin <= level <= both maxima. */
export function valleyWidthH(curve: NightCurve, level: number): number {
  return (
    fallBeforeSunriseH(curve, level, curve.tmaxBefore, curve.tmin) +
    riseToH(curve, level, curve.tmin, curve.tmaxAfter)
  );
}

/**
 * Level at which the valley is `hours` wide: Newton's steps from the level of a shorter duration, kept inside a
 * shrinking bracket. The width bends gently but for the last half degree under an afternoon's maximum, so elsewhere a
 * short step is the last.
 */
function valleyLevelC(curve: NightCurve, hours: number, floor: number, rim: number): number {
  const { tmin, tmaxBefore, tmaxAfter, nightLength } = curve;
  const atSunset = sunsetTemperatureC(tmaxBefore, tmin);
  const fall = atSunset - tmin;
  const evening = tmaxBefore - atSunset;
  const rise = tmaxAfter - tmin;
  const forenoon = (curve.warmest - curve.sunrise) * PER_QUARTER_TURN;
  const afternoon = (curve.sunset - curve.warmest) * PER_QUARTER_TURN;
  let low = floor;
  let high = rim;
  let level = floor;
  while (high - low > TOLERANCE_C) {
    const up = (level - tmin) / rise;
    let width = forenoon * Math.asin(up) - hours;
    let slope = forenoon / (rise * Math.sqrt(1 - up * up));
    if (level <= atSunset) {
      const left = (atSunset - level) / fall;
      width += nightLength * (1 - left * left);
      slope += (2 * nightLength * left) / fall;
    } else {
      const over = (level - atSunset) / evening;
      width += nightLength + afternoon * Math.asin(over);
      slope += afternoon / (evening * Math.sqrt(1 - over * over));
    }
    if (width < 0) low = level;
    else high = level;
    const next = level - width / slope;
    if (!(next > low && next < high)) {
      level = (low + high) / 2;
      continue;
    }
    const lastStepC = rim - next > GENTLE_BELOW_RIM_C ? LAST_STEP_C : TOLERANCE_C;
    if (Math.abs(next - level) < lastStepC) return next;
    level = next;
  }
  return high;
}

/**
 * A valley level is the answer only while no window beside the valley is colder. Such windows have their midpoint near
 * one of the two noons and stay on the slope of one afternoon's maximum, so they are warmer than the noon itself.
 */
function noonGuardC(curve: NightCurve, hours: number): number {
  const before = 12 + hours / 2 < curve.warmest ? curveTemperatureC(curve, -12) : Infinity;
  const after = curve.warmest < 12 ? curveTemperatureC(curve, 12) : Infinity;
  return Math.min(before, after);
}

/** Whether the curve stays at or below `level` through some window of `hours` hours with its midpoint in the night. */
function holdsAt(curve: NightCurve, level: number, hours: number): boolean {
  const latestStart = 12 - hours / 2;
  const earliestEnd = hours / 2 - 12;
  let runStart = Infinity;
  let runEnd = -Infinity;
  for (let segment = 0; segment < SEGMENTS; segment++) {
    const start = segmentStart(curve, segment, level);
    const end = segmentEnd(curve, segment, level);
    if (end < start) continue;
    if (start > runEnd + 1e-9) runStart = start;
    runEnd = end;
    if (runEnd - runStart >= hours && runStart <= latestStart && runEnd >= earliestEnd) return true;
  }
  return false;
}

function bisect(curve: NightCurve, hours: number): number {
  const { tmaxTwoBefore, tminBefore, tmaxBefore, tmin, tmaxAfter, tminAfter } = curve;
  let low = Math.min(tmaxTwoBefore, tminBefore, tmaxBefore, tmin, tmaxAfter, tminAfter);
  let high = Math.max(tmaxTwoBefore, tminBefore, tmaxBefore, tmin, tmaxAfter, tminAfter);
  while (high - low > TOLERANCE_C) {
    const middle = (low + high) / 2;
    if (holdsAt(curve, middle, hours)) high = middle;
    else low = middle;
  }
  return high;
}
