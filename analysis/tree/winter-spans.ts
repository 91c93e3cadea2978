import type { KeptNights } from '../records/kept-nights.ts';
import type { WinterTable } from '../records/winters.ts';
import type { Hemisphere } from '../winter/winter-year.ts';
import { dayInWinter } from './day-in-winter.ts';

/** Where each winter's nights stand: from `from` to before `to`, the crop hanging before `picked`. All 0 for none. */
export interface WinterSpans {
  readonly from: Int32Array;
  readonly picked: Int32Array;
  readonly to: Int32Array;
}

/**
 * The nights of each winter of a table; those of other winters belong to none.
 * @param hangsUntil last day a crop hangs, as `seasonDayOf` counts; `null`: always
 */
export function winterSpans(
  { day, winter: labels }: KeptNights,
  { winter }: Pick<WinterTable, 'winter'>,
  hangsUntil: number | null,
  hemisphere: Hemisphere,
): WinterSpans {
  const count = winter.length;
  const [from, picked, to] = [new Int32Array(count), new Int32Array(count), new Int32Array(count)];
  let i = 0;
  for (let w = 0; w < count; w++) {
    while (i < labels.length && labels[i] < winter[w]) i++;
    if (labels[i] !== winter[w]) continue;
    const lastDay = hangsUntil === null ? Infinity : dayInWinter(winter[w], hangsUntil, hemisphere);
    from[w] = i;
    while (labels[i] === winter[w] && day[i] <= lastDay) i++;
    picked[w] = i;
    while (labels[i] === winter[w]) i++;
    to[w] = i;
  }
  return { from, picked, to };
}
