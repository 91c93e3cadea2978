import type { FreezeDates, TypeYear } from '../../../analysis/answer/year.ts';
import { axisDay } from '../../charts/year-strip.ts';

/** Nights before `before` find a tree not yet hardened, those after `after` one that may grow again. */
export type EarlyLate = NonNullable<TypeYear['early_late']>;

/** Whether a date lies before midwinter's part of the year, in it, or after it. */
export function seasonPart(
  date: string,
  { before, after }: Pick<EarlyLate, 'before' | 'after'>,
  hemisphere: 'north' | 'south',
): 'early' | 'mid' | 'late' {
  const day = axisDay(date, hemisphere);
  if (day < axisDay(before, hemisphere)) return 'early';
  return day > axisDay(after, hemisphere) ? 'late' : 'mid';
}

/** Part of the year between two dates that a chance leaves for cold. */
export interface ChanceSpan {
  readonly chance: number;
  readonly from: string;
  readonly to: string;
}

/**
 * Spans by chance, widest first: in `chance` of the winters the first night has come by `from`, in as many one comes on `to` or
 * later. A chance without both dates, or whose last comes before its first, has no span.
 */
export function chanceSpans(dates: FreezeDates, hemisphere: 'north' | 'south'): readonly ChanceSpan[] {
  return dates.first.flatMap(({ chance, date: from }) => {
    const to = dates.last.find((entry) => entry.chance === chance)?.date ?? null;
    if (from === null || to === null) return [];
    return axisDay(from, hemisphere) <= axisDay(to, hemisphere) ? [{ chance, from, to }] : [];
  });
}

/** The span of 1 winter in 10, `null` where there is none. */
export function oneInTen(dates: FreezeDates, hemisphere: 'north' | 'south'): ChanceSpan | null {
  return chanceSpans(dates, hemisphere).find(({ chance }) => chance < 0.1 + 1e-9) ?? null;
}

/** The date of a chance, `null` where fewer winters than that have such a night. */
export function dateAt(list: FreezeDates['first'], chance: number): string | null {
  return list.find((entry) => Math.abs(entry.chance - chance) < 1e-9)?.date ?? null;
}

/** The parts of a span before and after midwinter's part of the year. */
export function outOfSeason(
  { from, to }: { readonly from: string; readonly to: string },
  { before, after }: Pick<EarlyLate, 'before' | 'after'>,
  hemisphere: 'north' | 'south',
): readonly { readonly from: string; readonly to: string }[] {
  const day = (date: string): number => axisDay(date, hemisphere);
  const [earlier, later] = [day(to) < day(before) ? to : before, day(from) > day(after) ? from : after];
  return [
    ...(day(from) < day(before) ? [{ from, to: earlier }] : []),
    ...(day(to) > day(after) ? [{ from: later, to }] : []),
  ];
}

/** Whether the first night of 1 winter in 10 is dated later than the last: so it may be where hardly more winters than that have one. */
export function firstAfterLast(dates: FreezeDates, hemisphere: 'north' | 'south'): boolean {
  const [first, last] = [dateAt(dates.first, 0.1), dateAt(dates.last, 0.1)];
  return first !== null && last !== null && axisDay(first, hemisphere) > axisDay(last, hemisphere);
}
