import type { DayNumber } from '../units/calendar.ts';

/** Durations in hours for which sustained cold is kept; between them it is interpolated. */
export const SUSTAINED_HOURS = [0, 1, 2, 3, 4, 5, 6, 8, 10, 12, 18, 24] as const;
export const SUSTAINED_COUNT = SUSTAINED_HOURS.length;

/** Kind of night, stored as its index. */
export const NIGHT_KINDS = ['calm', 'windy', 'unclear'] as const;
export type NightKind = (typeof NIGHT_KINDS)[number];

/** How a night's sustained cold was found: hourly readings, daily extremes, or daily extremes with one filled in. */
export const NIGHT_BASES = ['hourly', 'daily', 'estimated'] as const;
export type NightBasis = (typeof NIGHT_BASES)[number];

/** Missing mark of all Int16 columns of hundredths of °C. */
export const MISSING_HUNDREDTHS = -32768;

/** Mark of unknown cool hours. */
export const COOL_HOURS_UNKNOWN = -1;

/** Nights with a minimum above this are not kept in a pack, °C. */
export const KEPT_NIGHT_MAX_C = 10;

/**
 * One station's nights, dense: entry `i` is the night (noon to noon, local solar time) dated by its morning
 * `firstNight + i`. Temperatures are hundredths of °C with {@link MISSING_HUNDREDTHS} for unknown.
 */
export interface NightTable {
  readonly firstNight: DayNumber;
  readonly count: number;
  /** Index into NIGHT_KINDS. */
  readonly kind: Uint8Array;
  /** Index into NIGHT_BASES. */
  readonly basis: Uint8Array;
  readonly tmin: Int16Array;
  readonly tmaxBefore: Int16Array;
  readonly tmaxAfter: Int16Array;
  /** `sustained[j][i]`: coldest level held for SUSTAINED_HOURS[j] hours in night i; non-decreasing in j. */
  readonly sustained: readonly Int16Array[];
  /** Hours at or below 10 °C in the 500 hours before the night's noon end, {@link COOL_HOURS_UNKNOWN} for unknown. */
  readonly coolHours: Int16Array;
}

/** Where `hours` lies between the kept durations: value = s[lower] + weight * (s[lower + 1] - s[lower]). */
export function durationWeights(hours: number): { lower: number; weight: number } {
  if (!(hours >= 0 && hours <= 24)) throw new RangeError(`duration ${hours} h is outside 0 to 24 h`);
  let lower = 0;
  while (lower + 1 < SUSTAINED_COUNT && SUSTAINED_HOURS[lower + 1] <= hours) lower++;
  if (lower + 1 === SUSTAINED_COUNT) return { lower, weight: 0 };
  const span = SUSTAINED_HOURS[lower + 1] - SUSTAINED_HOURS[lower];
  return { lower, weight: (hours - SUSTAINED_HOURS[lower]) / span };
}
