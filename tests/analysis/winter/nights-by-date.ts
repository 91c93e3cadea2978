import { keptNights, type KeptNights } from '../../../analysis/records/kept-nights.ts';
import { SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import { parseIsoDay } from '../../../analysis/units/calendar.ts';
import { winterOf, type Hemisphere } from '../../../analysis/winter/winter-year.ts';

/** Calm nights of dates and levels in °C, all hours alike. */
export function nightsByDate(
  rows: readonly (readonly [date: string, levelC: number])[],
  hemisphere: Hemisphere = 'north',
): KeptNights {
  return keptNights(
    rows
      .map(([date, levelC]): [number, number] => [parseIsoDay(date)!, Math.round(100 * levelC)])
      .sort((a, b) => a[0] - b[0])
      .map(([day, level]) => [day, winterOf(day, hemisphere), 0, ...SUSTAINED_HOURS.map(() => level)]),
  );
}

/** Complete winters from one label to another. */
export function completeWinters(from: number, to: number) {
  const winter = Int16Array.from({ length: to - from + 1 }, (_, w) => from + w);
  return {
    winter,
    complete: new Uint8Array(winter.length).fill(1),
    reason: Array.from(winter, () => ''),
  };
}
