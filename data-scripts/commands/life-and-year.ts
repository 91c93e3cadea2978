import { answerLife } from '../../analysis/answer/life-answer.ts';
import { lifePlace } from '../../analysis/answer/life-place.ts';
import type { LifeAnswer } from '../../analysis/answer/life.ts';
import { gainsOnSpot, type Protection } from '../../analysis/answer/protection.ts';
import type { Subject } from '../../analysis/answer/subject.ts';
import { pickingSaves } from '../../analysis/answer/picking-saves.ts';
import { answerYear } from '../../analysis/answer/year-answer.ts';
import type { YearAnswer } from '../../analysis/answer/year.ts';
import type { KeptNights } from '../../analysis/records/kept-nights.ts';
import { usualCalendar } from '../../analysis/tree/harvest.ts';
import { lastOf } from '../../analysis/math/steps.ts';
import type { AssessRequest } from './assess-options.ts';
import { lifeLines } from './life-text.ts';
import { yearLines } from './year-text.ts';

/** What `--life` and `--year` add to the answer. */
export interface LifeAndYear {
  readonly life?: LifeAnswer;
  readonly year?: YearAnswer;
}

/** @param readNights read only when one of them is asked for */
export async function lifeAndYear(
  { life, year, types, tree, startAgeYears, picking, calendar: chosen }: AssessRequest,
  { spot, gains, nightWork }: Protection,
  subject: Subject,
  readNights: () => Promise<KeptNights>,
): Promise<LifeAndYear> {
  if (!life && !year) return {};
  const nights = await readNights();
  const calendar = chosen ?? usualCalendar(subject.place.lat, subject.place.lon);
  const planting = { startAgeYears, picking, calendar };
  const spotGains = gainsOnSpot(spot, []);
  const question = { types, tree, gains, nightWork, spotGains, planting };
  const place = lifePlace(subject, nights, planting);
  return {
    ...(life && { life: lastOf(answerLife(place, question)) }),
    ...(year && {
      year: answerYear(subject, nights, {
        ...question,
        calendar,
        pickingSaves: (type) => pickingSaves(place, type, question),
      }),
    }),
  };
}

/** The same for a terminal. */
export function moreLines({ life, year }: LifeAndYear): string[] {
  return [...(life ? lifeLines(life) : []), ...(year ? yearLines(year) : [])];
}
