import { gainsAsMuch } from '../cover/combinations.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import type { Way, WishMet, Wishes } from './choosing.ts';
import type { Offer, OfferOf } from './choose-offer.ts';
import type { CoverTried } from './choose-ways.ts';
import { allMet, judge, missed, type Judged } from './choose-wishes.ts';

/** One way that was tried. */
export interface Tried {
  readonly way: Way;
  readonly offer: Offer;
  readonly nightWork: boolean;
  /** Without ranges: see {@link wishesTold}. */
  readonly wishes: readonly WishMet[];
}

/** Asks what a type offers and holds it against the wishes. */
export function tryWay(
  type: CitrusType,
  spotId: string | null,
  { ids, nightWork }: CoverTried,
  wishes: Wishes,
  offerOf: OfferOf,
): Tried {
  const way = { spotId, covers: ids };
  const offer = offerOf(type, way);
  return { way, offer, nightWork, wishes: judge(wishes, judged(offer, nightWork)) };
}

/** The wishes as they are told in the end, with the range of the trees that live. */
export function wishesTold({ offer, nightWork }: Tried, wishes: Wishes): readonly WishMet[] {
  return judge(wishes, judged(offer, nightWork), offer.livingInTenLow);
}

/** What one spot came to. */
export interface SpotTried {
  /** Those tried, in order of preference. */
  readonly tried: readonly Tried[];
  /** The first of them that meets all wishes. */
  readonly meets: Tried | null;
}

/**
 * Tries covers on a spot, in order of preference, until one meets all wishes. The strongest, which stands last, is looked at
 * right after the first, so that a hopeless type costs few offers. Passed over, since they could neither meet the wishes nor
 * nearly do: covers weaker than one under which too few live or too many crops are lost by more than the margin, all night
 * covers where one asks for far too many nights, and all others where the first crop comes far too late.
 */
export function trySpot(
  type: CitrusType,
  spotId: string | null,
  covers: readonly CoverTried[],
  wishes: Wishes,
  offerOf: OfferOf,
): SpotTried {
  const found = new Map<CoverTried, Tried>();
  const [first, ...rest] = covers;
  const strongest = rest.at(-1);
  for (const cover of new Set([first, ...(strongest ? [strongest] : []), ...rest])) {
    if ([...found].some(([before, { wishes: told }]) => rulesOut(before, told, cover))) continue;
    const one = tryWay(type, spotId, cover, wishes, offerOf);
    found.set(cover, one);
    if (allMet(one.wishes) && cover !== strongest) break;
  }
  const tried = covers.flatMap((cover) => found.get(cover) ?? []);
  return { tried, meets: tried.find((one) => allMet(one.wishes)) ?? null };
}

/** The one with the fewest wishes missed, then missed by least; the preferred of equals. */
export function bestOf(tried: readonly Tried[]): Tried {
  const score = ({ wishes }: Tried): readonly [number, number] => {
    const misses = wishes.map(missed);
    return [misses.filter((miss) => miss > 0).length, misses.reduce((sum, miss) => sum + miss, 0)];
  };
  return tried.reduce((best, one) => {
    const [[count, sum], [bestCount, bestSum]] = [score(one), score(best)];
    return count < bestCount || (count === bestCount && sum < bestSum) ? one : best;
  });
}

/** Without the low end of the range, which may be work to read. */
function judged(
  { nightsToCover, lostCropsInTen, firstCropYear, livingInTen }: Offer,
  nightWork: boolean,
): Judged {
  return { nightsToCover, lostCropsInTen, firstCropYear, livingInTen, nightWork };
}

/** True when what came of covers that were tried leaves no hope for others on the same spot. */
function rulesOut(before: CoverTried, told: readonly WishMet[], other: CoverTried): boolean {
  return told.some((wish) => {
    if (missed(wish) <= 1) return false;
    if (wish.wish === 'yearsToWait') return true;
    return wish.wish === 'nightsToCover' ? other.nightWork : gainsAsMuch(before.gains, other.gains);
  });
}
