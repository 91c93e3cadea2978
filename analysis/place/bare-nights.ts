import { COOL_HOURS_UNKNOWN, MISSING_HUNDREDTHS, NIGHT_KINDS } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { winterBounds, type Hemisphere } from '../winter/winter-year.ts';

/** One winter's nights, by date; hundredths of °C by duration. */
export interface WinterNights {
  readonly days: Int32Array;
  readonly kinds: Uint8Array;
  readonly sustained: readonly Int16Array[];
  /** -1 unknown. */
  readonly coolHours: Int16Array;
}

/** From the start of a winter (July; south January) to its middle, days. */
const MIDDLE = { north: 198, south: 195 };

/**
 * Adds a night for each kind that the winter has there though no station kept such a night that it could be: a mountain
 * among mild shores, one night with two names. It has the winter's levels, and the date of the winter's table, else the
 * middle of the winter.
 * @param w index into the winters
 */
export function withBareNights(
  nights: WinterNights,
  winters: WinterTable,
  w: number,
  hemisphere: Hemisphere,
): WinterNights {
  const days = [...nights.days];
  const kinds = [...nights.kinds];
  const levels = nights.sustained.map((own) => [...own]);
  NIGHT_KINDS.forEach((_, kind) => {
    const byHours = winters.coldest[kind].map((own) => own[w]);
    if (byHours[0] === MISSING_HUNDREDTHS || kinds.includes(kind)) return;
    let day = winters.coldestDay[kind][0][w];
    if (day === 0) day = winterBounds(winters.winter[w], hemisphere).first + MIDDLE[hemisphere];
    while (days.includes(day)) day++;
    days.push(day);
    kinds.push(kind);
    byHours.forEach((level, j) => levels[j].push(level));
  });
  const order = [...days.keys()].sort((a, b) => days[a] - days[b]);
  return {
    days: Int32Array.from(order, (t) => days[t]),
    kinds: Uint8Array.from(order, (t) => kinds[t]),
    sustained: levels.map((own) => Int16Array.from(order, (t) => own[t])),
    coolHours: Int16Array.from(order, (t) => nights.coolHours[t] ?? COOL_HOURS_UNKNOWN),
  };
}
