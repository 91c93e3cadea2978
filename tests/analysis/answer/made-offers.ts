import { CROP, type Offer, type OfferOf } from '../../../analysis/answer/choose-offer.ts';
import type { OnPage } from '../../../analysis/answer/choose-ways.ts';
import type { Choosing } from '../../../analysis/answer/choose.ts';
import type { Way, Wishes } from '../../../analysis/answer/choosing.ts';
import { coverGains } from '../../../analysis/cover/cover-gains.ts';
import { findNamedSpot } from '../../../analysis/spot/named-spots.ts';
import { CITRUS_TYPES, findType, type CitrusType } from '../../../analysis/tree/catalogue.ts';
import { harvestWindow } from '../../../analysis/tree/harvest.ts';

export const OPEN: OnPage = { spotId: null, covers: [], container: false };

/** Wishes that an easy type meets at once. */
export const WISHES: Wishes = {
  kinds: ['eating', 'cooking'],
  nightsToCover: 5,
  lostCropsInTen: 2,
  yearsToWait: 5,
  livingInTen: 8,
};

export function typesOf(...ids: string[]): CitrusType[] {
  return ids.map((id) => findType(id)!);
}

/** An offer that meets {@link WISHES}, but for what is changed. */
export function offer(change: Partial<Offer> = {}): Offer {
  return {
    nightsToCover: 3,
    lostCropsInTen: 1,
    firstCropYear: 3,
    livingInTen: 9,
    livingInTenLow: 8.5,
    cropsByWinter: Uint8Array.of(CROP.kept, CROP.lost, CROP.kept, CROP.unknown),
    harvest: harvestWindow(findType('satsuma_owari')!, 'gulf', 'north'),
    ...change,
  };
}

/** The question about some types in the open, with some wishes changed. */
export function asking(types: readonly CitrusType[], wishes: Partial<Wishes> = {}, page = OPEN): Choosing {
  return { types, wishes: { ...WISHES, ...wishes }, page, hemisphere: 'north' };
}

/** Notes which ways were asked for. */
export function recording(offerOf: OfferOf): { readonly offerOf: OfferOf; readonly asked: Way[] } {
  const asked: Way[] = [];
  return { asked, offerOf: (type, way) => (asked.push(way), offerOf(type, way)) };
}

/** Calm leaf gain of a way, °C: enough to tell strong ways from weak ones. */
export function gainOf({ spotId, covers }: Way): number {
  const spot = spotId === null ? 0 : findNamedSpot(spotId)!.gain.calm.centreC;
  return spot + coverGains(covers).leaf.calm.centreC;
}

/** Offers that grow with what a way gains, as the life engine's do; `tender` 0-1 says how much each type needs. */
export function growing(tender: readonly number[]): OfferOf {
  return (type, way) => {
    const need = tender[CITRUS_TYPES.indexOf(type) % tender.length];
    const short = Math.max(0, need - gainOf(way) / 8);
    return offer({
      nightsToCover: Math.max(0, need * 12 - (way.spotId === null ? 0 : 4)),
      lostCropsInTen: 6 * short,
      firstCropYear: 3 + (CITRUS_TYPES.indexOf(type) % 4),
      livingInTen: 10 - 8 * short,
      livingInTenLow: Math.max(0, 9 - 9 * short),
      harvest: harvestWindow(type, 'gulf', 'north'),
    });
  };
}
