import { curveHoursAtOrBelow, type NightCurve } from './night-curve.ts';
import { COOL_HOURS_UNKNOWN } from '../records/nights.ts';

/** Hours at or below this harden citrus (satsuma study, S19), °C. */
export const COOL_LEVEL_C = 10;
/** Hours before a night's end over which they are counted (S19). */
export const COOL_WINDOW_H = 500;
/** Hours of the window that may be unknown; the count is then scaled up. */
export const COOL_UNKNOWN_MAX_H = 48;

/** 500 h are the 20 nights that end last and the last 20 h of the night before them. */
const WHOLE_NIGHTS = Math.floor(COOL_WINDOW_H / 24);
const REST_H = COOL_WINDOW_H - 24 * WHOLE_NIGHTS;

/** Cool hours of each night from noon to noon, and of its last 20 h; NaN unknown. */
export interface NightlyCoolHours {
  readonly whole: Float32Array;
  readonly end: Float32Array;
}

/** Writes the cool hours of the curve's night as entry `i`. */
export function curveCoolHours(curve: NightCurve, cool: NightlyCoolHours, i: number): void {
  cool.whole[i] = curveHoursAtOrBelow(curve, COOL_LEVEL_C, -12, 12);
  cool.end[i] = curveHoursAtOrBelow(curve, COOL_LEVEL_C, 12 - REST_H, 12);
}

/** Cool hours in the 500 h before each night's noon end, by a running sum, written to `out`. */
export function coolHoursOfNights(cool: NightlyCoolHours, out: Int16Array): void {
  let hours = 0;
  let known = 0;
  for (let i = 0; i < out.length; i++) {
    if (!Number.isNaN(cool.whole[i])) {
      hours += cool.whole[i];
      known += 24;
    }
    const left = i - WHOLE_NIGHTS;
    if (left < 0) continue;
    if (!Number.isNaN(cool.whole[left])) {
      hours -= cool.whole[left];
      known -= 24;
    }
    const rest = cool.end[left];
    const restKnown = !Number.isNaN(rest);
    out[i] = scaledCoolHours(hours + (restKnown ? rest : 0), known + (restKnown ? REST_H : 0));
  }
}

/** Whole cool hours of a full window from those of its known part, {@link COOL_HOURS_UNKNOWN} when too little is known. */
export function scaledCoolHours(hours: number, knownHours: number): number {
  if (knownHours < COOL_WINDOW_H - COOL_UNKNOWN_MAX_H) return COOL_HOURS_UNKNOWN;
  return Math.min(COOL_WINDOW_H, Math.max(0, Math.round((hours * COOL_WINDOW_H) / knownHours)));
}
