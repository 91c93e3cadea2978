import { YOUNG_YEARS_MAX, type TreeState } from '../tree/penalties.ts';
import type { Buyer } from './advice.ts';

/**
 * What a counter doesn't know of a buyer, with the answers that can be given; the first is what is taken for granted while
 * nobody has asked.
 */
export const CUSTOMER_ANSWERS = {
  /** Somebody is at home on cold nights. */
  home: ['yes', 'no'],
  /** It would stand at a wall of a heated house ({@link WALL_SPOT}). */
  wall: ['no', 'yes'],
  /** It is planted young ({@link YOUNG_YEARS}). */
  young: ['no', 'yes'],
  /** Where it may stand. */
  stands: ['either', 'ground', 'pot'],
  /** Fruit is left to hang into the cold. */
  fruit: ['no', 'yes'],
} as const;
export type Unknown = keyof typeof CUSTOMER_ANSWERS;
export const UNKNOWNS = Object.keys(CUSTOMER_ANSWERS) as readonly Unknown[];

/** Answers a buyer gave; what was not asked is left out. */
export type CustomerAnswers = { readonly [K in Unknown]?: (typeof CUSTOMER_ANSWERS)[K][number] };

/** The warm corner asked about: the plainest that many houses have. */
export const WALL_SPOT = 'heated-wall';

/** Years since planting of a young tree: the tenderest class of ages. */
export const YOUNG_YEARS = 2;

/** A buyer with a tree: where it is looked up, and what can be done. */
export interface Scene {
  /** Where it stands: the page's spot, or at the wall. */
  readonly spot: 'page' | 'wall';
  /** In the ground; a row's own age goes over it. */
  readonly tree: TreeState;
  readonly buyer: Buyer;
}

/** What the page knows already, so that it need not be asked. */
export interface KnownOfPage {
  readonly tree: TreeState;
  /** A spot other than the open one is chosen, or measured. */
  readonly hasSpot: boolean;
  /** Every row has an age of its own. */
  readonly hasAges: boolean;
}

/** The scene that answers make of the page's tree. */
export function sceneOf(tree: TreeState, answers: CustomerAnswers): Scene {
  const { container, ...ground } = tree;
  return {
    spot: answers.wall === 'yes' ? 'wall' : 'page',
    tree: {
      ...ground,
      container: false,
      ageYears: answers.young === 'yes' ? Math.min(tree.ageYears, YOUNG_YEARS) : tree.ageYears,
      fruitLoad: tree.fruitLoad || answers.fruit === 'yes',
    },
    buyer: {
      atHome: answers.home !== 'no',
      stands: container ? 'pot' : (answers.stands ?? 'either'),
    },
  };
}

/** What is still to be asked, in the order of the counter. */
export function unknownsLeft(
  { tree, hasSpot, hasAges }: KnownOfPage,
  answers: CustomerAnswers,
): readonly Unknown[] {
  const known: Readonly<Record<Unknown, boolean>> = {
    home: false,
    wall: hasSpot,
    young: hasAges || tree.ageYears <= YOUNG_YEARS_MAX,
    stands: tree.container,
    fruit: tree.fruitLoad,
  };
  return UNKNOWNS.filter((unknown) => !known[unknown] && answers[unknown] === undefined);
}
