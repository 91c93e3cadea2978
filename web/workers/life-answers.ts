import { choosing } from '../../analysis/answer/choose.ts';
import type { Chosen } from '../../analysis/answer/choosing.ts';
import { answerLife, answerLifeWithoutRanges } from '../../analysis/answer/life-answer.ts';
import { lifePlace, type GrownTrees, type LifePlace } from '../../analysis/answer/life-place.ts';
import type { LifeAnswer } from '../../analysis/answer/life.ts';
import { offersAt } from '../../analysis/answer/offers.ts';
import { pickingSaves } from '../../analysis/answer/picking-saves.ts';
import { gainsOnSpot, readProtection, type Protection } from '../../analysis/answer/protection.ts';
import { IN_THE_OPEN } from '../../analysis/answer/standing-spot.ts';
import type { Subject } from '../../analysis/answer/subject.ts';
import { answerYear } from '../../analysis/answer/year-answer.ts';
import type { YearAnswer } from '../../analysis/answer/year.ts';
import { isCoverId, writtenCovers } from '../../analysis/cover/cover-ids.ts';
import type { Steps } from '../../analysis/math/steps.ts';
import { countingIds } from '../../analysis/cover/refusals.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../analysis/tree/level-gains.ts';
import { CITRUS_TYPES } from '../../analysis/tree/catalogue.ts';
import { hemisphereOf } from '../../analysis/winter/winter-year.ts';
import type { ChooseQuestion, LifeQuestion } from '../state/ports.ts';

/** Every type, without ranges. */
export function* lives(subject: Subject, question: LifeQuestion): Steps<LifeAnswer> {
  const place = placeOf(subject, question);
  return answerLifeWithoutRanges(place, { ...grownTrees(question), types: CITRUS_TYPES });
}

/** Every type with its ranges. */
export function livesWithRanges(subject: Subject, question: LifeQuestion): Steps<LifeAnswer> {
  return answerLife(placeOf(subject, question), { ...grownTrees(question), types: CITRUS_TYPES });
}

export function* yearHere(subject: Subject, question: LifeQuestion): Steps<YearAnswer> {
  const place = placeOf(subject, question);
  const grown = grownTrees(question);
  const { calendar } = grown.planting;
  return answerYear(subject, question.nights, {
    ...grown,
    types: CITRUS_TYPES,
    calendar,
    pickingSaves: (type) => pickingSaves(place, type, grown),
  });
}

/** Types that meet the wishes, on the spot of the page and on others. */
export function chosenTypes(subject: Subject, question: ChooseQuestion): Steps<Chosen> {
  const { tree, planting, wishes, protection } = question;
  const offers = offersAt(placeOf(subject, question), {
    tree,
    planting,
    spot: protectionOf(question)?.spot ?? IN_THE_OPEN,
  });
  const { container } = tree;
  const spotId = protection?.spot ?? null;
  const page = {
    spotId: spotId?.startsWith('yard:') ? null : spotId,
    covers: countingIds(writtenCovers(protection?.cover ?? null).filter(isCoverId), { container }),
    container,
  };
  const hemisphere = hemisphereOf(subject.place.lat);
  return choosing({ types: CITRUS_TYPES, wishes, page, hemisphere }, offers);
}

function placeOf(subject: Subject, { nights, planting }: LifeQuestion): LifePlace {
  return lifePlace(subject, nights, planting);
}

function grownTrees(question: LifeQuestion): GrownTrees {
  const { tree, planting } = question;
  const protection = protectionOf(question);
  return {
    tree,
    planting,
    gains: protection?.gains ?? NO_LEVEL_GAIN_SPREADS,
    nightWork: protection?.nightWork ?? false,
    spotGains: protection ? gainsOnSpot(protection.spot, []) : NO_LEVEL_GAIN_SPREADS,
  };
}

function protectionOf({ protection }: LifeQuestion): Protection | null {
  return protection && readProtection(protection);
}
