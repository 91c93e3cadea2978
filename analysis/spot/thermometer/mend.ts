import { civilDate, dayNumber, isCivilDate } from '../../units/calendar.ts';
import type { NightReading, ReadingUnit } from './spot-reading.ts';

/** A change to readings that the reader accepted. */
export type Mend =
  /** Day and month of each date that allows it change places. */
  | { readonly kind: 'swap' }
  /** Every reading belongs to another morning. */
  | { readonly kind: 'shift'; readonly days: 1 | -1 }
  /** The values are in the other unit. */
  | { readonly kind: 'unit'; readonly unit: ReadingUnit }
  /** Readings of these lines don't count. */
  | { readonly kind: 'leave-out'; readonly lines: readonly number[] };

/**
 * Readings with the mends applied in order, by date; of two that land on one night the first line's stays. Mends of the
 * unit are for whoever turns values to °C.
 */
export function applyMends(readings: readonly NightReading[], mends: readonly Mend[]): NightReading[] {
  let mended = [...readings];
  for (const mend of mends) {
    if (mend.kind === 'swap') mended = mended.map((r) => ({ ...r, day: swapped(r.day) }));
    else if (mend.kind === 'shift') mended = mended.map((r) => ({ ...r, day: r.day + mend.days }));
    else if (mend.kind === 'leave-out') {
      const out = new Set(mend.lines);
      mended = mended.filter(({ line }) => !out.has(line));
    }
  }
  mended.sort((a, b) => a.day - b.day || a.line - b.line);
  return mended.filter((reading, i) => i === 0 || reading.day !== mended[i - 1]!.day);
}

/** The date with day and month exchanged, itself where that isn't one. */
export function swapped(day: number): number {
  const { year, month, day: ofMonth } = civilDate(day);
  return isCivilDate(year, ofMonth, month) ? dayNumber(year, ofMonth, month) : day;
}
