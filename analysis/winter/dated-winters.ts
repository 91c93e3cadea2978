import type { KeptNights } from '../records/kept-nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { hitsByWinter, type HitLimit } from './hit-nights.ts';
import { seasonDayOf } from './season-day.ts';
import type { Hemisphere } from './winter-year.ts';

/** The winters whose first and last dates count. */
export interface DatedWinters {
  /** Labels, increasing. */
  readonly winters: readonly number[];
  readonly leftOut: readonly { readonly winter: number; readonly reason: string }[];
  /** Whether October and April (April and October in the south) were looked at too, or only the cold months. */
  readonly byShoulderMonths: boolean;
}

/** First and last day of the nights that hit in each dated winter, as {@link seasonDayOf} counts; NaN in one without. */
export interface WinterDates {
  readonly first: Float64Array;
  readonly last: Float64Array;
}

/** Complete winters, of those whose shoulder months are judged the ones that know them too. */
export function datedWinters(
  table: Pick<WinterTable, 'winter' | 'complete' | 'reason'> & { readonly datesWhole?: Uint8Array },
  hemisphere: Hemisphere,
): DatedWinters {
  const { winter, complete, reason, datesWhole } = table;
  const months = hemisphere === 'north' ? 'October or April' : 'April or October';
  const winters: number[] = [];
  const leftOut: { winter: number; reason: string }[] = [];
  winter.forEach((label, w) => {
    if (complete[w] !== 1) leftOut.push({ winter: label, reason: reason[w] });
    else if (datesWhole && datesWhole[w] !== 1)
      leftOut.push({ winter: label, reason: `${months} misses more than 3 nights` });
    else winters.push(label);
  });
  return { winters, leftOut, byShoulderMonths: datesWhole !== undefined };
}

/** When nights at or below a limit came in each of the winters. @throws RangeError for hours that aren't kept */
export function winterDates(
  nights: KeptNights,
  { winters }: Pick<DatedWinters, 'winters'>,
  limit: HitLimit,
  hemisphere: Hemisphere,
): WinterDates {
  const table = { winter: Int16Array.from(winters), complete: new Uint8Array(winters.length).fill(1) };
  const hits = new Map(hitsByWinter(nights, table, limit).map((hit) => [hit.winter, hit]));
  const dayOf = (winter: number, which: 'firstDay' | 'lastDay'): number => {
    const hit = hits.get(winter);
    return hit === undefined ? NaN : seasonDayOf(hit[which], hemisphere);
  };
  return {
    first: Float64Array.from(winters, (winter) => dayOf(winter, 'firstDay')),
    last: Float64Array.from(winters, (winter) => dayOf(winter, 'lastDay')),
  };
}
