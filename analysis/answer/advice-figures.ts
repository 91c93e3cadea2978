import { headline, longestClaim, type Headline } from '../extremes/headline.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import type { LevelGainSpreads } from '../tree/level-gains.ts';
import type { TreeState } from '../tree/penalties.ts';
import { gainsAt, type GainSpread } from '../winter/gain-spread.ts';
import type { ShortEnd, ShortEnds } from './advice.ts';
import type { FitShelf, HoursBook } from './fit-book.ts';
import { countAt, fittedAt, limitC } from './level-answer.ts';

/** The losses that a class looks at. */
export type AdvisedLevel = 'leaf' | 'kill';

/** How often a loss comes: what is said first, and both ends of the range. */
export interface LossFigure {
  readonly headline: Headline;
  /** Hits and complete winters behind it. */
  readonly hits: number;
  readonly winters: number;
  readonly short: ShortEnd;
  /** Winters between losses at the rare end, `null` where nothing bounds it. */
  readonly long: number | null;
}

export type LossFigures = Readonly<Record<AdvisedLevel, LossFigure>>;

/** Fits to look figures up in: of a place, with the draws that ranges need, and with few for what only asks the curve. */
export interface AdviceShelves {
  readonly ranged: FitShelf;
  readonly plain: FitShelf;
}

/** A tree, and what it gains where it stands under what is put over it. */
export interface AdvisedTree {
  readonly type: CitrusType;
  readonly tree: TreeState;
  readonly gains: LevelGainSpreads;
}

/** Leaf and kill of one tree. */
export function lossFigures(advised: AdvisedTree, shelves: AdviceShelves): LossFigures {
  return { leaf: lossFigure(advised, 'leaf', shelves), kill: lossFigure(advised, 'kill', shelves) };
}

/** What {@link adviseType} needs of them. */
export function shortEnds({ leaf, kill }: LossFigures): ShortEnds {
  return { leaf: leaf.short, kill: kill.short };
}

/**
 * One loss with its range. The ends are those of whatever moves it most of what isn't known exactly, each taken alone: the
 * winters (90 % range, and never rarer than the count), for kill the type's own threshold, whose figures are a band, and
 * what spot and cover gain. Of one curve a warmer limit never gets a longer short end. A colder place doesn't either, but for
 * a rare exception: where the milder one has too few cold nights for a curve and counts alone, its end is the shorter of two
 * ways to say little.
 */
export function lossFigure(
  { type, tree, gains }: AdvisedTree,
  level: AdvisedLevel,
  { ranged, plain }: AdviceShelves,
): LossFigure {
  const { hours, lowC, highC } = type.thresholds[level];
  const about = { type, level, tree };
  const gain = gains[level];
  const book = ranged.forGains(gainsAt(gain, 'centreC')).forHours(hours);
  const limit = limitC(about);
  const winters = book.valuesC.length;
  const counted = countAt(book, limit);
  const told = headline(counted, fittedAt(book, limit), winters);
  const often = [fromWinters(told, counted.period, winters)];
  const rare = [told.high];
  if (level === 'kill') {
    often.push(likely(book, limitC(about, highC)));
    rare.push(endOf(likely(book, limitC(about, lowC)), winters));
  }
  if (isSpread(gain)) {
    const at = (end: 'lowC' | 'highC'): HoursBook => plain.forGains(gainsAt(gain, end)).forHours(hours);
    often.push(likely(at('lowC'), limit));
    rare.push(endOf(likely(at('highC'), limit), winters));
  }
  return {
    headline: told,
    hits: counted.hits,
    winters,
    short: {
      winters: Math.min(...often.map((end) => end.winters)),
      unseen: often.every(({ unseen }) => unseen),
    },
    long: rare.reduce((a, b) => (a === null || b === null ? null : Math.max(a, b)), told.high),
  };
}

/** The short end that the winters themselves leave open. */
function fromWinters({ low, basis }: Headline, countedPeriod: number, winters: number): ShortEnd {
  if (winters === 0) return { winters: 1, unseen: false };
  return { winters: Math.min(low ?? 1, countedPeriod, longestClaim(winters)), unseen: basis === 'not seen' };
}

/**
 * The best estimate at a limit as an end: the curve's period, never rarer than the count nor twice the record, so that it
 * never grows with a colder limit.
 */
function likely(book: HoursBook, limit: number): ShortEnd {
  const winters = book.valuesC.length;
  const counted = countAt(book, limit);
  const fitted = fittedAt(book, limit);
  if (headline(counted, fitted, winters).basis === 'not seen') return { winters: counted.low, unseen: true };
  const period = Math.min(fitted?.period ?? Infinity, counted.period, longestClaim(winters));
  return { winters: Math.max(1, period), unseen: false };
}

/** An end as the rare one: `null` where it is only a bound. */
function endOf({ winters, unseen }: ShortEnd, complete: number): number | null {
  return unseen || winters >= longestClaim(complete) ? null : winters;
}

function isSpread({ calm, windy }: GainSpread): boolean {
  return calm.lowC < calm.highC || windy.lowC < windy.highC;
}
