import {
  answerUnder,
  headlineUnder,
  leastCoverAt,
  type CoverSubject,
  type LeastCoverAnswer,
} from '../../analysis/answer/cover-answer.ts';
import { FitShelf } from '../../analysis/answer/fit-book.ts';
import { readProtection } from '../../analysis/answer/protection.ts';
import type { Subject } from '../../analysis/answer/subject.ts';
import type { CitrusType } from '../../analysis/tree/catalogue.ts';
import type { CoverPeriods, CoverPeriodsQuestion, LeastCoverQuestion } from '../state/ports.ts';

/** A place with the fits of its answers. */
export interface CoveredPlace {
  readonly subject: Subject;
  readonly shelf: FitShelf;
}

/** The covers tried are chosen by the curve itself, which needs no draws; a fit wants a few all the same. */
const SEARCH_DRAWS = 20;

interface Shelves {
  /** With all the draws, for the covers of the table: on the answer's own shelf they would crowd out the answer's. */
  readonly table: FitShelf;
  readonly search: FitShelf;
}

const shelves = new WeakMap<Subject, Shelves>();

function shelvesOf(subject: Subject): Shelves {
  let own = shelves.get(subject);
  if (!own) {
    own = { table: new FitShelf(subject), search: new FitShelf(subject, SEARCH_DRAWS) };
    shelves.set(subject, own);
  }
  return own;
}

function asked(
  { subject }: CoveredPlace,
  type: CitrusType,
  { level, tree, years, protection }: CoverPeriodsQuestion | LeastCoverQuestion,
): CoverSubject {
  return { subject, type, level, tree, years, spot: readProtection({ ...protection, cover: null }).spot };
}

/** The answer on the bare spot, and the headline under each cover; `null` when overtaken between two fits. */
export async function coverPeriods(
  place: CoveredPlace,
  type: CitrusType,
  question: CoverPeriodsQuestion,
  overtaken: () => Promise<boolean>,
): Promise<CoverPeriods | null> {
  const about = asked(place, type, question);
  const none = answerUnder(about, [], place.shelf);
  const headlines: CoverPeriods['headlines'][number][] = [];
  for (const ids of question.covers) {
    if (await overtaken()) return null;
    headlines.push(headlineUnder(about, ids, shelvesOf(place.subject).table));
  }
  return { none, headlines };
}

/** The least cover for a wish. */
export function leastCoverHere(
  place: CoveredPlace,
  type: CitrusType,
  question: LeastCoverQuestion,
): LeastCoverAnswer {
  const { table, search } = shelvesOf(place.subject);
  const about = asked(place, type, question);
  return leastCoverAt(about, question.candidates, question.onceIn, { search, shelf: table });
}
