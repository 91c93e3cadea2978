import { countedPeriod } from '../extremes/counted.ts';
import { recordLength, type RecordLength } from '../extremes/headline.ts';

/**
 * What is said of a type at a place, best first: no work, work, a pot, no. Our own four classes, and one between the last two where
 * nobody has counted nights yet: then a pot and "not here" can't be told apart.
 */
export const OPEN_ADVICE = ['plant-out', 'with-plan', 'in-pot', 'pot-or-not', 'not-here'] as const;
export type OpenAdvice = (typeof OPEN_ADVICE)[number];

/**
 * Leaves may be taken no more often than once in so many winters, by the short end of the range. Design choice: a tree that
 * loses its leaves bears nothing the year after (`YEARS_TO_BEAR_AGAIN`), so 1 in 5 costs two crops in ten, what a usual
 * buyer can bear.
 */
export const LEAF_ONCE_IN = 5;

/**
 * The tree may be killed no more often than once in so many winters, by the short end of the range. Design choice: at this
 * very end two trees in three still see their tenth year, and the best estimate lies far from the end.
 */
export const KILL_ONCE_IN = 25;

/**
 * Nights a winter, on average, on which a person will put a cover on and take it off again. Design choice: about two
 * weeks; a cover takes 15 to 20 minutes and two people, and what is forgotten once may cost the tree.
 */
export const COVER_NIGHTS_MOST = 15;

/** Nights a winter, on average, on which a pot is carried in and out. Design choice: a month; beyond it the tree lives indoors. */
export const POT_NIGHTS_MOST = 30;

/**
 * Fewer complete winters than this tell no class at all. Design choice: ten without a single loss show 1 in 4.7 (90 %, Wilson), which is
 * as good as {@link LEAF_ONCE_IN}; nine show 1 in 4.3.
 */
export const FEWEST_WINTERS_TO_ADVISE = 10;

/** Best class on a record of counts only (under 20 winters). Design choice: nothing is told to stand without a plan on so few. */
const SHORT_RECORD_BEST: OpenAdvice = 'with-plan';

/** The frequent end of how often a loss comes. */
export interface ShortEnd {
  /** Once in so many winters, 1 or more. */
  readonly winters: number;
  /** Only counted, and not once seen by any reading: then the record can't show more than `winters`, and that is enough. */
  readonly unseen: boolean;
}

/** Both losses that the classes look at. */
export interface ShortEnds {
  readonly leaf: ShortEnd;
  readonly kill: ShortEnd;
}

/** A cover that a person can realistically put on: see `PLAN_COVERS`. */
export interface PlanEnds {
  readonly ends: ShortEnds;
  /** Somebody must be at home to put it on, night by night. */
  readonly nightWork: boolean;
  /** Mean nights a winter on which it goes on; `null`: not counted. */
  readonly nights: number | null;
}

/** The tree in a pot, its roots as cold as the air. */
export interface PotEnds {
  /** Left out all winter. */
  readonly bare: ShortEnds;
  /** Mean nights a winter on which it must come in, to a room that stays above freezing; `null`: not counted. */
  readonly nights: number | null;
}

/** What a buyer can do. */
export interface Buyer {
  /** Somebody is there on cold nights. Without that nothing is put on at night, and no pot comes in. */
  readonly atHome: boolean;
  /** Where the tree may stand. */
  readonly stands: 'either' | 'ground' | 'pot';
}

export interface AdviceQuestion {
  /** Complete winters behind the figures. */
  readonly winters: number;
  readonly bare: ShortEnds;
  /** Least work first; one alone, the strongest, gives the same class. */
  readonly plans: readonly PlanEnds[];
  readonly pot: PotEnds;
  readonly buyer: Buyer;
}

export interface TypeAdvice {
  /** `null`: too few winters to say anything. */
  readonly advice: OpenAdvice | null;
  /** Index of the first plan that does; `null` where none is needed or none does. */
  readonly plan: number | null;
  readonly record: RecordLength;
}

/**
 * The class of a type at a place, by the short ends of its ranges alone: shorter ends, more nights or less help never get a
 * better one.
 *
 * - plant-out: in the ground, uncovered, leaves no oftener than 1 in {@link LEAF_ONCE_IN}, the tree 1 in {@link KILL_ONCE_IN}.
 * - with-plan: the same under a cover that a person can put on, on at most {@link COVER_NIGHTS_MOST} nights.
 * - in-pot: in a pot that comes in on at most {@link POT_NIGHTS_MOST} nights, or that may stay out by the rule for the ground.
 * - not-here: none of these.
 *
 * Nights that nobody has counted don't stand against a plan; between pot and "not here" they leave it open.
 */
export function adviseType({ winters, bare, plans, pot, buyer }: AdviceQuestion): TypeAdvice {
  const record = recordLength(winters);
  if (winters < FEWEST_WINTERS_TO_ADVISE) return { advice: null, plan: null, record };
  const inGround = buyer.stands !== 'pot';
  if (inGround && isRareEnough(bare, winters))
    return { advice: record === 'counts only' ? SHORT_RECORD_BEST : 'plant-out', plan: null, record };
  const plan = inGround ? plans.findIndex((one) => planDoes(one, winters, buyer)) : -1;
  if (plan >= 0) return { advice: 'with-plan', plan, record };
  return {
    advice: buyer.stands === 'ground' ? 'not-here' : adviseInPot(pot, winters, buyer),
    plan: null,
    record,
  };
}

/** Whether both losses are rare enough, as far as so many winters can show it. */
function isRareEnough({ leaf, kill }: ShortEnds, winters: number): boolean {
  return meets(leaf, LEAF_ONCE_IN, winters) && meets(kill, KILL_ONCE_IN, winters);
}

/** Whether a loss comes no oftener than once in so many winters; what was never seen need not be longer than a count can show. */
export function meets(end: ShortEnd, onceIn: number, winters: number): boolean {
  const needed = end.unseen ? Math.min(onceIn, countedPeriod(0, winters).low) : onceIn;
  // Both are the same sum, and may differ by a hair.
  return end.winters >= needed * (1 - 1e-9);
}

function planDoes({ ends, nightWork, nights }: PlanEnds, winters: number, { atHome }: Buyer): boolean {
  if (nightWork && (!atHome || (nights ?? 0) > COVER_NIGHTS_MOST)) return false;
  return isRareEnough(ends, winters);
}

function adviseInPot({ bare, nights }: PotEnds, winters: number, { atHome }: Buyer): OpenAdvice {
  if (isRareEnough(bare, winters)) return 'in-pot';
  if (!atHome) return 'not-here';
  if (nights === null) return 'pot-or-not';
  return nights > POT_NIGHTS_MOST ? 'not-here' : 'in-pot';
}
