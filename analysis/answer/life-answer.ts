import type { Steps } from '../math/steps.ts';
import { bearingOf, YEARS_TO_BEAR_AGAIN } from '../tree/bearing.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import { meanHardeningOnColdNights } from '../tree/hardening-on-cold-nights.ts';
import { lifeRanges, type LifeRange, type RangedTree } from '../tree/life/life-ranges.ts';
import { firstCropWinter, HORIZON_YEARS } from '../tree/life/tree-years.ts';
import { withRange } from '../tree/life/with-range.ts';
import { READINGS, type Reading, type WinterMargins } from '../tree/winter-margins.ts';
import { FitShelf } from './fit-book.ts';
import { killAtMost } from './kill-bound.ts';
import { lifeNotes } from './life-notes.ts';
import { centreOf, marginsOf, readingAt, ringsOf, type LifePlace, type LifeQuestion } from './life-place.ts';
import type { LifeAnswer, LifeReading, TypeLife } from './life.ts';

/** A type's margins at a place, and what follows from them without ranges. */
interface LivedType {
  readonly type: CitrusType;
  readonly life: TypeLife;
  readonly margins: WinterMargins;
  readonly firstCropYear: number;
}

/** Share of the work done once the lives are told and only the ranges are left. */
const LIVES_SHARE = 0.2;

/** Trees planted in every winter of the place's history, without ranges: see {@link answerLife}. */
export function answerLifeWithoutRanges(place: LifePlace, question: LifeQuestion): LifeAnswer {
  return answerOf(
    place,
    question,
    question.types.map((type) => livedType(place, type, question).life),
  );
}

/**
 * Trees planted in every winter of the place's history in turn, followed through the winters that came (design 3.8), with
 * their ranges, of which there are none without a complete winter. Yields the share done.
 * @throws RangeError for a type whose hours aren't kept
 */
export function* answerLife(place: LifePlace, question: LifeQuestion): Steps<LifeAnswer> {
  const { types, planting } = question;
  if (!place.subject.winters.complete.includes(1)) return answerLifeWithoutRanges(place, question);
  const lived: LivedType[] = [];
  for (const type of types) {
    lived.push(livedType(place, type, question));
    yield (LIVES_SHARE * lived.length) / types.length;
  }
  const rings = ringsOf(place.subject);
  const shelf = new FitShelf(place.subject);
  const trees = lived.flatMap(({ type, margins, firstCropYear }): RangedTree[] =>
    READINGS.map((reading) => ({
      killAtMost: killAtMost(shelf, type, question, reading),
      margins,
      reading,
      firstCropYear,
      startAgeYears: planting.startAgeYears,
    })),
  );
  const steps = lifeRanges(rings, trees);
  let ranges: readonly LifeRange[] | null = null;
  while (ranges === null) {
    const step = steps.next();
    if (step.done) ranges = step.value;
    else yield LIVES_SHARE + (1 - LIVES_SHARE) * (step.value / rings.draws);
  }
  const ranged = lived.map(({ life }, i): TypeLife => {
    const of = (reading: Reading): LifeReading =>
      withRange(life[reading], ranges[READINGS.length * i + READINGS.indexOf(reading)]);
    return { ...life, night_by_night: of('night_by_night'), hardened: of('hardened') };
  });
  return answerOf(place, question, ranged);
}

function livedType(place: LifePlace, type: CitrusType, question: LifeQuestion): LivedType {
  const { tree, gains, planting } = question;
  const margins = marginsOf(place, type, question);
  const { firstCropYear, basis } = bearingOf(type);
  const of = (reading: Reading): LifeReading => readingAt(place, type, question, margins, reading);
  return {
    type,
    margins,
    firstCropYear,
    life: {
      id: type.id,
      name: type.name,
      first_crop_year: firstCropWinter({ startAgeYears: planting.startAgeYears, firstCropYear }),
      first_crop_basis: basis,
      years_to_bear_again: YEARS_TO_BEAR_AGAIN,
      hardening_on_cold_nights: meanHardeningOnColdNights(place.nights, place.state, {
        type,
        tree,
        gains: centreOf(gains),
      }),
      night_by_night: of('night_by_night'),
      hardened: of('hardened'),
    },
  };
}

function answerOf(
  { subject }: LifePlace,
  { planting }: LifeQuestion,
  types: readonly TypeLife[],
): LifeAnswer {
  const { winter, complete } = subject.winters;
  return {
    start_age_years: planting.startAgeYears,
    picking: planting.picking,
    calendar: planting.calendar,
    horizon_years: HORIZON_YEARS,
    winters: [...winter].filter((_, w) => complete[w] === 1),
    types,
    notes: lifeNotes(subject),
  };
}
