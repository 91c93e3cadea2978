import { t } from '../../language/t.ts';
import type { KeptNights } from '../../records/kept-nights.ts';
import { matchOf, type Fault, type Match } from './fault.ts';
import { applyMends, swapped } from './mend.ts';
import { sayDay, sayDifference } from './say.ts';
import type { NightReading, ReadingUnit } from './spot-reading.ts';

/** Nights that must match for a wrong date to be told. */
const NIGHTS_NEEDED = 5;
/**
 * A mended match must be off by less than this share of the present one; the first where nights are few. At real pairs of
 * stations 0.75 tells 95 % (Spain), 83 % (Trentino) and all (Georgia) of dates a day off, and cries wolf in 0 to 2 % of winters.
 */
const MUCH_BETTER = { few: 0.6, many: 0.75 };
const MANY_NIGHTS = 15;
/** A match that is off by more than this on average, °C, is none. */
const NO_MATCH_C = 3;

/** Dates whose day and month are exchanged, or that are a day off, told by how much better the mended ones match. */
export function dateFaults(
  readings: readonly NightReading[],
  nights: KeptNights,
  unit: ReadingUnit,
): Fault[] {
  return swapFault(readings, nights, unit) ?? shiftFault(readings, nights, unit) ?? [];
}

function swapFault(readings: readonly NightReading[], nights: KeptNights, unit: ReadingUnit): [Fault] | null {
  // Only dates that could be meant the other way round can tell.
  const open = readings.filter(({ day }) => swapped(day) !== day);
  if (open.length < NIGHTS_NEEDED) return null;
  const now = matchOf(open, nights);
  const then = matchOf(applyMends(open, [{ kind: 'swap' }]), nights);
  if (!isMuchBetter(now, then)) return null;
  const first = open[0]!;
  const nowWords =
    now.nights < NIGHTS_NEEDED
      ? t`as read only ${now.nights} of ${open.length} fall on nights of the record`
      : t`as read their differences to the station vary by ${sayDifference(now.distanceC, unit)}`;
  return [
    {
      id: 'swapped',
      sentence: t`Day and month seem to be exchanged in ${open.length} dates (line ${first.line}: ${sayDay(first.day)}): ${nowWords}, exchanged they match ${then.nights} nights and vary by ${sayDifference(then.distanceC, unit)}.`,
      mend: { label: t`Exchange day and month`, mend: { kind: 'swap' } },
    },
  ];
}

function shiftFault(
  readings: readonly NightReading[],
  nights: KeptNights,
  unit: ReadingUnit,
): [Fault] | null {
  const now = matchOf(readings, nights);
  const tried = ([1, -1] as const).map((days) => ({
    days,
    match: matchOf(applyMends(readings, [{ kind: 'shift', days }]), nights),
  }));
  const best = tried.reduce((a, b) => (b.match.distanceC < a.match.distanceC ? b : a));
  if (!isMuchBetter(now, best.match)) return null;
  const isLater = best.days === 1;
  const [mended, present] = [best.match, now].map(({ distanceC }) => sayDifference(distanceC, unit));
  return [
    {
      id: 'shifted',
      sentence: isLater
        ? t`The dates seem to be a day off: moved one day later, the differences to the station vary by ${mended} in place of ${present}. A night is dated by its morning.`
        : t`The dates seem to be a day off: moved one day earlier, the differences to the station vary by ${mended} in place of ${present}. A night is dated by its morning.`,
      mend: {
        label: isLater ? t`Move all dates one day later` : t`Move all dates one day earlier`,
        mend: { kind: 'shift', days: best.days },
      },
    },
  ];
}

function isMuchBetter(now: Match, then: Match): boolean {
  if (then.nights < NIGHTS_NEEDED || !(then.distanceC < NO_MATCH_C)) return false;
  if (now.nights < NIGHTS_NEEDED) return then.nights >= 2 * now.nights;
  const share = Math.min(now.nights, then.nights) < MANY_NIGHTS ? MUCH_BETTER.few : MUCH_BETTER.many;
  return then.nights >= 0.7 * now.nights && then.distanceC < share * now.distanceC;
}
