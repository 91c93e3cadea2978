import type { CoverId } from '../cover/cover-ids.ts';
import { lastOf } from '../math/steps.ts';
import { bearingOf } from '../tree/bearing.ts';
import { coverIndex } from '../tree/nights-to-cover.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import { harvestWindow } from '../tree/harvest.ts';
import { lifeRanges, type RangedTree } from '../tree/life/life-ranges.ts';
import { withRange } from '../tree/life/with-range.ts';
import { AGE_CLASS_FROM, isHit, LOSSES, marginIndex, type WinterMargins } from '../tree/winter-margins.ts';
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
import type { AgeShare, LifeReading } from './life.ts';
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
const TEN_YEARS = 10;
const BOUND_DRAWS = 200;
/** Courses that tell of a winter in which a tree old enough to bear gave a crop, and of those that count for nothing. */
const PICKED = 'cb';
const UNTOLD = '.?';

/** Offers of types at a place, each worked out when asked for: lives and ranges by the colder reading. */
export function offersAt(place: LifePlace, { tree, planting, spot }: OffersQuestion): OfferOf {
  const rings = ringsOf(place.subject);
  const { winters } = place.subject;
  const hemisphere = hemisphereOf(place.subject.place.lat);
  // Few draws: only the bound of a rare kill is read from these fits.
  const shelf = new FitShelf(place.subject, BOUND_DRAWS);
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
    return { tree, planting, spotGains: gainsUnder([]), gains: gainsUnder(way.covers) };
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
      const bounded = { ...tree, killAtMost: killAtMost(shelf, type, grown, READING) };
      ranged ??= withRange(reading, lastOf(lifeRanges(rings, [bounded]))[0]).living[TEN_YEARS - 1];
      return ranged;
    };
    const { share } = reading.living[TEN_YEARS - 1];
    return {
      nightsToCover: meanNights(nightsCovered(place, type, grown, READING), winters.complete),
      lostCropsInTen: lostInTen(reading),
      firstCropYear: reading.first_crop.age,
      livingInTen: tenfold(share ?? tenYears().share),
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

/** Of ten winters of living trees old enough to bear those without a crop, the killing one with them. */
function lostInTen({ plantings, first_crop }: LifeReading): number | null {
  let [bearing, picked] = [0, 0];
  for (const { course } of plantings) {
    for (const letter of course.slice(first_crop.age - 1)) {
      if (UNTOLD.includes(letter)) continue;
      bearing++;
      if (PICKED.includes(letter)) picked++;
    }
  }
  return bearing === 0 ? null : (10 * (bearing - picked)) / bearing;
}

function cropsOf({ complete, margins }: WinterMargins): Uint8Array {
  const fruit = LOSSES.indexOf('fruit');
  return Uint8Array.from(complete, (flag, w) => {
    if (!flag) return CROP.unknown;
    return isHit(margins[marginIndex(w, MATURE) + fruit]) ? CROP.lost : CROP.kept;
  });
}
