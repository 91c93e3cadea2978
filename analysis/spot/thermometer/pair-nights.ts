import type { KeptNights } from '../../records/kept-nights.ts';
import { MISSING_HUNDREDTHS, NIGHT_KINDS } from '../../records/nights.ts';
import type { PairedNight } from './paired-night.ts';
import type { NightReading } from './spot-reading.ts';

/** Readings beside the station's nights, and why the others have no partner. */
export interface Pairing {
  /** By date. */
  readonly pairs: readonly PairedNight[];
  /** Readings before the station's first and after its last kept night. */
  readonly before: number;
  readonly after: number;
  /** Readings within its record on nights that it doesn't have: above 10 °C there, or missing. */
  readonly unmatched: number;
}

/** Puts each reading beside the same night of the station, where that night is kept (at or below 10 °C). */
export function pairNights(readings: readonly NightReading[], nights: KeptNights): Pairing {
  const { day, kind, sustained } = nights;
  const [first, last] = [day[0] ?? Infinity, day.at(-1) ?? -Infinity];
  const pairs: PairedNight[] = [];
  let [before, after, unmatched] = [0, 0, 0];
  for (const reading of readings) {
    const row = rowOf(day, reading.day);
    const minimum = row === undefined ? MISSING_HUNDREDTHS : sustained[0]![row]!;
    if (row !== undefined && minimum !== MISSING_HUNDREDTHS) {
      const stationC = minimum / 100;
      pairs.push({
        day: reading.day,
        kind: NIGHT_KINDS[kind[row]!]!,
        stationC,
        readingC: reading.minimumC,
        differenceC: reading.minimumC - stationC,
        line: reading.line,
      });
    } else if (reading.day < first) before += 1;
    else if (reading.day > last) after += 1;
    else unmatched += 1;
  }
  return { pairs, before, after, unmatched };
}

/** Row of a day among increasing ones. */
function rowOf(days: Int32Array, day: number): number | undefined {
  let [low, high] = [0, days.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (days[middle]! < day) low = middle + 1;
    else high = middle;
  }
  return days[low] === day ? low : undefined;
}
