import { findMeasure, type Effort } from '../cover/measures.ts';
import type { CoverId } from '../cover/cover-ids.ts';
import { leastCover, type TriedCover } from '../cover/least-cover.ts';
import { headline, longestClaim, type Headline } from '../extremes/headline.ts';
import type { Level } from '../tree/levels.ts';
import { gainsAt } from '../winter/gain-spread.ts';
import type { LevelAnswer } from './assessment.ts';
import type { FitShelf, HoursBook } from './fit-book.ts';
import { answerLevel, countAt, fittedAt, limitC, type LevelQuestion } from './level-answer.ts';
import { gainsOnSpot } from './protection.ts';
import type { StandingSpot } from './standing-spot.ts';
import type { Subject } from './subject.ts';
import { DurationReadings } from './winter-values.ts';

/** One type and level on one spot, to be told of under several covers. */
export interface CoverSubject extends Omit<LevelQuestion, 'gain'> {
  readonly subject: Subject;
  readonly spot: StandingSpot;
}

/** A cover that was found, and how often the loss comes under it. */
export interface FoundCover {
  readonly ids: readonly CoverId[];
  readonly effort: Effort;
  readonly answer: LevelAnswer;
}

/** The least cover that makes a loss rarer than asked, and the best one tried. */
export interface LeastCoverAnswer {
  readonly onceIn: number;
  /** `null` where none does. Without ids: no cover is needed. */
  readonly least: FoundCover | null;
  /** Longest period of those tried. */
  readonly best: FoundCover;
  readonly tried: number;
  readonly monotone: boolean;
}

/** The full answer under a cover; no ids: the bare spot. @throws InputError for an unknown id */
export function answerUnder(asked: CoverSubject, ids: readonly string[], shelf: FitShelf): LevelAnswer {
  const { subject, spot, ...question } = asked;
  const gain = gainsOnSpot(spot, ids)[asked.level];
  const durations = new DurationReadings(subject.winters);
  return answerLevel({ ...question, gain }, subject.winters, shelf, durations, () => null);
}

/** The headline alone, at the centre of the gain. @throws InputError for an unknown id */
export function headlineUnder(asked: CoverSubject, ids: readonly string[], shelf: FitShelf): Headline {
  const { book, limit } = bookUnder(asked, ids, shelf);
  return headline(countAt(book, limit), fittedAt(book, limit), book.valuesC.length);
}

/**
 * The least cover by effort under which the loss is rarer than once in `onceIn` winters, by the best estimate that there is
 * (see {@link estimatedPeriod}), which needs no draws; what is found is then answered in full.
 * @param search fits for the covers tried, of a few draws; not the shelf of the answers, which would be crowded out
 */
export function leastCoverAt(
  asked: CoverSubject,
  candidates: readonly string[],
  onceIn: number,
  { search, shelf }: { readonly search: FitShelf; readonly shelf: FitShelf },
): LeastCoverAnswer {
  const { least, best, tried, monotone } = leastCover(
    candidates.filter((id) => gainsAtLevel(id, asked.level)),
    (_, ids) => {
      const { book, limit } = bookUnder(asked, ids, search);
      return estimatedPeriod(book, limit);
    },
    { onceIn, levels: [asked.level] },
  );
  const found = ({ ids, effort }: TriedCover): FoundCover => ({
    ids,
    effort,
    answer: answerUnder(asked, ids, shelf),
  });
  return { onceIn, least: least && found(least), best: found(best), tried, monotone };
}

/**
 * The best estimate of a period, to choose covers by: the curve's; where it goes beyond twice the record, no longer than
 * the count; without a curve the count, and the record's length where nothing was seen in it.
 */
export function estimatedPeriod(book: HoursBook, limit: number): number {
  const winters = book.valuesC.length;
  const counted = countAt(book, limit);
  const fitted = fittedAt(book, limit);
  const { basis, period } = headline(counted, fitted, winters);
  if (basis === 'not seen') return winters;
  if (basis === 'beyond' && fitted)
    return Math.max(Math.min(fitted.period, counted.period), period ?? longestClaim(winters));
  return period ?? winters;
}

/** A measure that gains nothing at the level is work for nothing: without it far fewer combinations are gone through. */
function gainsAtLevel(id: string, level: Level): boolean {
  const gain = findMeasure(id)?.gain[level];
  return gain === undefined || gain.calm.highC > 0 || gain.windy.highC > 0;
}

function bookUnder(
  { spot, type, level, tree }: CoverSubject,
  ids: readonly string[],
  shelf: FitShelf,
): { readonly book: HoursBook; readonly limit: number } {
  const gains = gainsAt(gainsOnSpot(spot, ids)[level], 'centreC');
  return {
    book: shelf.forGains(gains).forHours(type.thresholds[level].hours),
    limit: limitC({ type, level, tree }),
  };
}
