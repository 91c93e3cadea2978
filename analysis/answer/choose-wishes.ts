import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { WishMet, Wishes } from './choosing.ts';
import { tenthsText, toldTenths, type Offer } from './choose-offer.ts';

type Wish = WishMet['wish'];

/** Least and most that may be wished. */
export const WISH_LIMITS: Readonly<Record<Wish, { readonly least: number; readonly most: number }>> = {
  nightsToCover: { least: 0, most: 30 },
  lostCropsInTen: { least: 0, most: 10 },
  yearsToWait: { least: 1, most: 10 },
  livingInTen: { least: 0, most: 10 },
};

/**
 * By how much a wish may be missed for a type still to count as nearly meeting it (design choice): half again the nights and
 * no less than 1, one crop in ten, one year, one tree in ten.
 */
export const NEARLY = {
  nightsShare: 0.5,
  nightsAtLeast: 1,
  cropsInTen: 1,
  years: 1,
  treesInTen: 1,
} as const;

/** @throws InputError for a wish outside {@link WISH_LIMITS} */
export function checkWishes(wishes: Wishes): void {
  for (const [wish, { least, most }] of Object.entries(WISH_LIMITS)) {
    const value = wishes[wish as Wish];
    if (!(value >= least && value <= most))
      throw new InputError(t`The wish ${wish} must be from ${least} to ${most}, not ${value}.`);
  }
}

/** What the wishes are held against. */
export interface Judged extends Pick<
  Offer,
  'nightsToCover' | 'lostCropsInTen' | 'firstCropYear' | 'livingInTen'
> {
  /** Something is put on, or the tree brought in, on cold nights. */
  readonly nightWork: boolean;
}

/** Each wish against what is offered, in a fixed order, with its rule. The low end of the trees that live changes words only. */
export function judge(
  wishes: Wishes,
  offer: Judged,
  livingInTenLow: number | null = null,
): readonly WishMet[] {
  return [
    nightsMet(wishes.nightsToCover, offer),
    cropsMet(wishes.lostCropsInTen, offer.lostCropsInTen),
    waitMet(wishes.yearsToWait, offer.firstCropYear),
    livingMet(wishes.livingInTen, offer.livingInTen, livingInTenLow),
  ];
}

/** True when every wish is met. */
export function allMet(wishes: readonly WishMet[]): boolean {
  return wishes.every(({ met }) => met);
}

/** How far a wish is missed, in margins of {@link NEARLY}: 0 met, up to 1 nearly, Infinity where nothing is known. */
export function missed({ wish, wanted, offered, met }: WishMet): number {
  if (met) return 0;
  if (offered === null) return Infinity;
  // Tenths differ by hairs as binary fractions.
  return Math.round(Math.abs(offered - wanted) * 10) / 10 / marginOf(wish, wanted);
}

function marginOf(wish: Wish, wanted: number): number {
  switch (wish) {
    case 'nightsToCover':
      return Math.max(NEARLY.nightsAtLeast, wanted * NEARLY.nightsShare);
    case 'lostCropsInTen':
      return NEARLY.cropsInTen;
    case 'yearsToWait':
      return NEARLY.years;
    case 'livingInTen':
      return NEARLY.treesInTen;
  }
}

/** A way without work at night takes no nights. One with it is never told as none: a young tree needs it more often. */
function nightsMet(wanted: number, { nightsToCover, nightWork }: Judged): WishMet {
  const wish = 'nightsToCover';
  const willing =
    wanted === 0 ? t`you would cover none` : t`you would cover ${counted(wanted, t`night`, t`nights`)}`;
  if (!nightWork)
    return { wish, wanted, offered: 0, met: true, rule: t`Nothing to put on at night; ${willing}.` };
  if (nightsToCover === null)
    return unknown(wish, wanted, t`How many nights it would need covering is not known here; ${willing}.`);
  const offered = Math.max(0.1, toldTenths(nightsToCover));
  const rule =
    offered === 0.1
      ? t`Hardly ever to be covered once grown; ${willing}.`
      : t`To be covered on ${counted(offered, t`night`, t`nights`)} a winter once grown; ${willing}.`;
  return { wish, wanted, offered, met: offered <= wanted, rule };
}

function cropsMet(wanted: number, lost: number | null): WishMet {
  const wish = 'lostCropsInTen';
  const bear = t`you can bear ${tenthsText(wanted)}`;
  if (lost === null)
    return unknown(wish, wanted, t`How many crops it would lose is not known here; ${bear}.`);
  const offered = toldTenths(lost);
  const rule = t`Loses ${counted(offered, t`crop`, t`crops`)} in ten; ${bear}.`;
  return { wish, wanted, offered, met: offered <= wanted, rule };
}

function waitMet(wanted: number, year: number): WishMet {
  const rule = t`First crop in year ${year}; you would wait ${counted(wanted, t`year`, t`years`)}.`;
  return { wish: 'yearsToWait', wanted, offered: year, met: year <= wanted, rule };
}

function livingMet(wanted: number, livingInTen: number | null, lowInTen: number | null): WishMet {
  const wish = 'livingInTen';
  const want = t`you want ${tenthsText(wanted)}`;
  if (livingInTen === null)
    return unknown(wish, wanted, t`How many trees would live ten years is not known here; ${want}.`);
  const offered = toldTenths(livingInTen);
  const low = lowInTen === null ? null : Math.min(offered, toldTenths(lowInTen));
  const met = offered >= wanted;
  const doubtful = met && low !== null && low < wanted ? t` It could be as few as ${tenthsText(low)}.` : '';
  const range = low === null || low === offered || doubtful ? '' : t` (range from ${tenthsText(low)})`;
  const rule = t`${tenthsText(offered)} of ten trees would have lived ten years${range}; ${want}.${doubtful}`;
  return { wish, wanted, offered, met, rule };
}

function unknown(wish: Wish, wanted: number, rule: string): WishMet {
  return { wish, wanted, offered: null, met: false, rule };
}

function counted(told: number, one: string, many: string): string {
  return `${tenthsText(told)} ${told === 1 ? one : many}`;
}
