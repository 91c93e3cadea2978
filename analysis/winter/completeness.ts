import { formatIsoDay, type DayNumber } from '../units/calendar.ts';
import type { WinterTable } from '../records/winters.ts';
import { coldMonths, shoulderMonths, type Hemisphere, type MonthSpan } from './winter-year.ts';

/** Share of the cold season's nights that a complete winter has (design 3.3). */
export const MIN_SHARE_PRESENT = 0.95;
/** Nights a month of the cold season may miss. */
export const MAX_MISSING_A_MONTH = 3;
/** Fewer neighbours than this can't show where a regional freeze was. */
export const MIN_NEIGHBOURS = 3;

/**
 * Why a winter is not complete, '' when it is.
 *
 * Complete: November to March (May to September in the south) has at least 95 % of its nights, no month misses more
 * than 3, and the missing nights don't hold the coldest night of the winter of half or more of the neighbours
 * (judged with at least three neighbours).
 *
 * @param isPresent whether the station knows the sustained cold of a night
 * @param neighbourColdest the night of the winter's lowest minimum at each neighbour with a record of that winter
 */
export function incompleteReason(
  winter: number,
  hemisphere: Hemisphere,
  isPresent: (night: DayNumber) => boolean,
  neighbourColdest: readonly DayNumber[] = [],
): string {
  let nights = 0;
  let present = 0;
  let worstMonth = { name: '', missing: 0 };
  for (const month of coldMonths(winter, hemisphere)) {
    const missing = missingNights(month, isPresent);
    nights += month.end - month.first;
    present += month.end - month.first - missing;
    if (missing > worstMonth.missing) worstMonth = { name: month.name, missing };
  }
  if (present < MIN_SHARE_PRESENT * nights) return `only ${present} of ${nights} nights`;
  if (worstMonth.missing > MAX_MISSING_A_MONTH)
    return `${worstMonth.name} misses ${worstMonth.missing} nights`;
  if (neighbourColdest.length >= MIN_NEIGHBOURS) {
    const unseen = neighbourColdest.filter((night) => !isPresent(night));
    if (2 * unseen.length >= neighbourColdest.length) {
      return `misses ${formatIsoDay(mostFrequent(unseen))}, the coldest night at ${unseen.length} of ${neighbourColdest.length} neighbours`;
    }
  }
  return '';
}

/**
 * Judges every winter of a station.
 * @param known the nights the station knows
 * @param neighbourColdest nights of the neighbours' lowest minimum of a winter
 */
export function judgeCompleteness(
  winters: Int16Array,
  hemisphere: Hemisphere,
  known: { has(night: DayNumber): boolean },
  neighbourColdest: (winter: number) => readonly DayNumber[] = () => [],
): Pick<WinterTable, 'complete' | 'reason' | 'datesWhole'> {
  const reason = Array.from(winters, (winter) =>
    incompleteReason(winter, hemisphere, (night) => known.has(night), neighbourColdest(winter)),
  );
  const isPresent = (night: DayNumber): boolean => known.has(night);
  return {
    reason,
    complete: Uint8Array.from(reason, (text) => (text === '' ? 1 : 0)),
    datesWhole: Uint8Array.from(winters, (winter, w) =>
      reason[w] === '' && hasWholeShoulders(winter, hemisphere, isPresent) ? 1 : 0,
    ),
  };
}

/** Whether October and April miss no more nights than a month of the cold season may. */
function hasWholeShoulders(
  winter: number,
  hemisphere: Hemisphere,
  isPresent: (night: DayNumber) => boolean,
): boolean {
  return shoulderMonths(winter, hemisphere).every(
    (month) => missingNights(month, isPresent) <= MAX_MISSING_A_MONTH,
  );
}

function missingNights({ first, end }: MonthSpan, isPresent: (night: DayNumber) => boolean): number {
  let missing = 0;
  for (let night = first; night < end; night++) if (!isPresent(night)) missing++;
  return missing;
}

function mostFrequent(nights: readonly DayNumber[]): DayNumber {
  const counts = new Map<DayNumber, number>();
  for (const night of nights) counts.set(night, (counts.get(night) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0][0];
}
