import type { KeptNights } from '../records/kept-nights.ts';
import { COOL_HOURS_UNKNOWN } from '../records/nights.ts';

/** So many of the last 500 hours at or below 10 °C harden a tree in full: about the most seen in Alabama (S19). */
export const FULL_COOL_HOURS = 400;
/** A whole cool day hardens no more than its 24 hours do. */
export const HARDENING_A_DAY = 24 / FULL_COOL_HOURS;
/** What a warm night takes back: more than a day can give, since hardening is lost faster than gained (S23); number a design choice. */
export const LOST_A_WARM_NIGHT = 0.1;
/** Cool hours that aren't known are taken from the last night that knows them, so many days back at most. */
const CARRIED_DAYS = 10;

/**
 * How far trees are hardened on each night, 0 (not at all) to 1 (in full): as far as the cool hours of the weeks before would
 * carry them, gained day by day and lost with every warm night (minimum above 10 °C: a date that isn't kept). Nothing is
 * left over from the winter before. A design choice on S19 and S23. Where cool hours are long unknown it is 0, the colder
 * reading; once they are known again it goes on from where it stood. Dates missing from the record count as warm.
 */
export function hardeningOfNights({ day, winter, coolHours }: KeptNights): Float32Array {
  const hardening = new Float32Array(day.length);
  let reached = 0;
  let possible = 0;
  let knownDay = -Infinity;
  for (let i = 0; i < day.length; i++) {
    const sameWinter = i > 0 && winter[i] === winter[i - 1];
    const warmNights = sameWinter ? day[i] - day[i - 1] - 1 : 0;
    reached = sameWinter ? Math.max(0, reached - LOST_A_WARM_NIGHT * warmNights) : 0;
    if (coolHours[i] !== COOL_HOURS_UNKNOWN) {
      possible = Math.min(1, coolHours[i] / FULL_COOL_HOURS);
      knownDay = day[i];
    }
    if (day[i] - knownDay > CARRIED_DAYS) continue;
    reached = Math.min(possible, reached + HARDENING_A_DAY);
    hardening[i] = reached;
  }
  return hardening;
}
