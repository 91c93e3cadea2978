import type { CoverId } from '../cover/cover-ids.ts';
import { worksAtNight } from '../cover/measures.ts';
import { lastOf } from '../math/steps.ts';
import { bearingOf, YEARS_TO_BEAR_AGAIN } from '../tree/bearing.ts';
import { coverIndex } from '../tree/nights-to-cover.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import { harvestWindow } from '../tree/harvest.ts';
import { lifeRanges, type RangedTree } from '../tree/life/life-ranges.ts';
import { withRange } from '../tree/life/with-range.ts';
import {
  AGE_CLASS_FROM,
  isHit,
  LOSSES,
  marginIndex,
  type Loss,
  type WinterMargins,
} from '../tree/winter-margins.ts';
import { hemisphereOf } from '../winter/winter-year.ts';
import { CROP, type Offer, type OfferOf } from './choose-offer.ts';
import type { Way } from './choosing.ts';
import {
  marginsOf,
  nightsCovered,
  readingAt,
  ringsOf,
  type GrownTrees,
  type LifePlace,
} from './life-place.ts';
import type { AgeShare } from './life.ts';
import { FitShelf } from './fit-book.ts';
import { killAtMost } from './kill-bound.ts';
import { gainsOnSpot } from './protection.ts';
import { standingSpot, type StandingSpot } from './standing-spot.ts';

/** What trees are grown like whatever is chosen, and the spot they stand on when no other is tried. */
export interface OffersQuestion extends Pick<GrownTrees, 'tree' | 'planting'> {
  readonly spot: StandingSpot;
}

/** The colder reading: what is offered must hold by it. */
const READING = 'night_by_night';
const MATURE = { reading: READING, ageClass: AGE_CLASS_FROM.length - 1, bearing: true } as const;

/** Offers of types at a place, each worked out when asked for: lives and ranges by the colder reading. */
export function offersAt(place: LifePlace, { tree, planting, spot }: OffersQuestion): OfferOf {
  const { winters } = place.subject;
  const rings = winters.complete.includes(1) ? ringsOf(place.subject) : null;
  const hemisphere = hemisphereOf(place.subject.place.lat);
  const shelf = new FitShelf(place.subject);
  const spots = new Map<string, StandingSpot>();

  function spotOf({ spotId }: Way): StandingSpot {
    if (spotId === null) return spot;
    let named = spots.get(spotId);
    if (!named) {
      named = standingSpot({
        spot: spotId,
        yard: null,
        measured: null,
        cover: null,
        hemisphere,
        container: tree.container,
      });
      spots.set(spotId, named);
    }
    return named;
  }

  function grownAs(way: Way): GrownTrees {
    const standing = spotOf(way);
    const gainsUnder = (ids: readonly CoverId[]) => gainsOnSpot(standing, ids);
    return {
      tree,
      planting,
      spotGains: gainsUnder([]),
      gains: gainsUnder(way.covers),
      nightWork: worksAtNight(way.covers),
    };
  }

  return (type: CitrusType, way: Way): Offer => {
    const grown = grownAs(way);
    const margins = marginsOf(place, type, grown);
    const { firstCropYear } = bearingOf(type);
    const reading = readingAt(place, type, grown, margins, READING);
    const tree: RangedTree = {
      margins,
      reading: READING,
      firstCropYear,
      startAgeYears: planting.startAgeYears,
    };
    let ranged: AgeShare | null = null;
    const tenYears = (): AgeShare => {
      if (rings === null) return reading.ten_years;
      const bounded = { ...tree, killAtMost: killAtMost(shelf, type, grown, READING) };
      ranged ??= withRange(reading, lastOf(lifeRanges(rings, [bounded]))[0]).ten_years;
      return ranged;
    };
    return {
      nightsToCover: meanNights(nightsCovered(place, type, grown, READING), winters.complete),
      lostCropsInTen: reading.crops_lost_in_ten,
      firstCropYear: reading.first_crop.age,
      livingInTen: tenfold(reading.ten_years.share),
      get livingInTenLow() {
        return tenfold(tenYears().low);
      },
      cropsByWinter: cropsOf(margins),
      harvest: harvestWindow(type, planting.calendar, hemisphere),
    };
  };
}

function tenfold(share: number | null): number | null {
  return share === null ? null : 10 * share;
}

/** Nights a complete winter over a mature tree and its crop; 0 without a cover. */
function meanNights(nights: Int16Array | null, complete: Uint8Array): number | null {
  if (nights === null) return 0;
  let [sum, winters] = [0, 0];
  complete.forEach((flag, w) => {
    if (!flag) return;
    sum += nights[coverIndex(w, MATURE.ageClass, MATURE.bearing)];
    winters++;
  });
  return winters === 0 ? null : sum / winters;
}

/** The crops of a mature tree; one that is killed counts as one that lost its wood, another in its place bearing no sooner. */
function cropsOf({ complete, margins }: WinterMargins): Uint8Array {
  const hit = (w: number, loss: Loss): boolean =>
    isHit(margins[marginIndex(w, MATURE) + LOSSES.indexOf(loss)]);
  let without = 0;
  return Uint8Array.from(complete, (flag, w) => {
    const lost = without > 0 || hit(w, 'fruit');
    without = Math.max(without - 1, 0);
    if (hit(w, 'leaf')) without = Math.max(without, YEARS_TO_BEAR_AGAIN.leaf);
    if (hit(w, 'wood') || hit(w, 'kill')) without = YEARS_TO_BEAR_AGAIN.wood;
    if (!flag) return CROP.unknown;
    return lost ? CROP.lost : CROP.kept;
  });
}
