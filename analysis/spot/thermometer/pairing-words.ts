import { t } from '../../language/t.ts';
import type { KeptNights } from '../../records/kept-nights.ts';
import { KEPT_NIGHT_MAX_C } from '../../records/nights.ts';
import { civilDate } from '../../units/calendar.ts';
import { NIGHTS_MIN } from './estimate-offset.ts';
import type { Pairing } from './pair-nights.ts';
import { sayDay, sayTemperature } from './say.ts';
import type { NightReading, ReadingUnit } from './spot-reading.ts';

/** What to say where readings find too few nights at the station. */
export interface PairingProblem {
  readonly id: 'record ends before' | 'record begins after' | 'warm season' | 'too few';
  readonly sentence: string;
}

/**
 * Why readings and record can't be compared, `null` where at least three nights are known on both sides.
 * @param from words for where the nights come from, such as `The pack’s record`.
 */
export function pairingProblem(
  readings: readonly NightReading[],
  nights: KeptNights,
  pairing: Pairing,
  { from, latDeg, unit }: { readonly from: string; readonly latDeg: number; readonly unit: ReadingUnit },
): PairingProblem | null {
  if (pairing.pairs.length >= NIGHTS_MIN) return null;
  const [first, last] = [readings[0]!, readings.at(-1)!];
  const [begins, ends] = [nights.day[0], nights.day.at(-1)];
  if (ends !== undefined && pairing.after > 0 && pairing.after >= readings.length - NIGHTS_MIN) {
    const span =
      first.day > ends
        ? t`begin on ${sayDay(first.day)}`
        : t`run from ${sayDay(first.day)} to ${sayDay(last.day)}`;
    return {
      id: 'record ends before',
      sentence: t`${from} ends on ${sayDay(ends)} and your readings ${span}, so ${count(pairing.pairs.length)} known on both sides. A file of the station for those months can be loaded in its place.`,
    };
  }
  if (begins !== undefined && pairing.before >= readings.length - NIGHTS_MIN && pairing.before > 0) {
    return {
      id: 'record begins after',
      sentence: t`${from} begins on ${sayDay(begins)}, after your readings of ${sayDay(first.day)} to ${sayDay(last.day)}.`,
    };
  }
  if (readings.every(({ day }) => isWarmSeason(day, latDeg))) {
    const { line, day, minimumC } = first;
    return {
      id: 'warm season',
      sentence: t`All ${readings.length} readings are from the warm months (line ${line}: ${sayDay(day)}, ${sayTemperature(minimumC, unit)}): only nights at or below ${sayTemperature(KEPT_NIGHT_MAX_C, unit)} at the station tell how the spot does in a freeze.`,
    };
  }
  return {
    id: 'too few',
    sentence: t`Of ${readings.length} readings (${sayDay(first.day)} to ${sayDay(last.day)}) ${count(pairing.pairs.length)} known on both sides, and ${NIGHTS_MIN} are needed: on the others the station was above ${sayTemperature(KEPT_NIGHT_MAX_C, unit)} or has no reading.`,
  };
}

function count(nights: number): string {
  if (nights === 0) return t`no night is`;
  return nights === 1 ? t`1 night is` : t`${nights} nights are`;
}

/** May to September north of the equator, November to March south of it. */
function isWarmSeason(day: number, latDeg: number): boolean {
  const { month } = civilDate(day);
  return latDeg < 0 ? month >= 11 || month <= 3 : month >= 5 && month <= 9;
}
