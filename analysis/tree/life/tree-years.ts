import { AGE_CLASS_FROM, ageClassOf } from '../winter-margins.ts';

/** Ages told of. A tree's thirtieth year is about as far as anyone plans, and as records are long. */
export const HORIZON_YEARS = 30;

/** When a planted tree bears and how old it counts. */
export interface TreeAges {
  /** Years since planting that the tree counts in its first winter. */
  readonly startAgeYears: number;
  /** First crop of a tree that counts 1 in its first winter: see `bearingOf`. */
  readonly firstCropYear: number;
}

/** Winter since planting whose crop is the first: a tree planted older has less to wait. */
export function firstCropWinter({ startAgeYears, firstCropYear }: TreeAges): number {
  return Math.max(1, firstCropYear - (startAgeYears - 1));
}

/** A tree's states, one bit each in a byte: age class times two, plus one for a tree old enough to bear. */
export const TREE_STATES = AGE_CLASS_FROM.length * 2;

/** Age class of a tree that lost its wood: tender as in its third year. */
const REGROWN_CLASS = ageClassOf(3);

/** The states that a tree is in by age; entry 0 is its first winter. Bits as {@link TREE_STATES} tells. */
export interface TreeYears {
  readonly firstCrop: number;
  readonly ageClass: Uint8Array;
  /** The one bit of its state. */
  readonly grown: Uint8Array;
  /**
   * While wood grows again: also the bit of a tree in its third year. Its own bit stays, so that a loss never makes a tree
   * hardier (the load of a crop that it doesn't carry is taken to be no more than what the loss has cost it).
   */
  readonly regrowing: Uint8Array;
  readonly regrowingClass: Uint8Array;
}

export function treeYears(ages: TreeAges, years: number): TreeYears {
  const firstCrop = firstCropWinter(ages);
  const ageClass = new Uint8Array(years);
  const grown = new Uint8Array(years);
  const regrowing = new Uint8Array(years);
  const regrowingClass = new Uint8Array(years);
  for (let a = 0; a < years; a++) {
    ageClass[a] = ageClassOf(ages.startAgeYears + a);
    regrowingClass[a] = Math.min(ageClass[a]!, REGROWN_CLASS);
    grown[a] = 1 << (ageClass[a]! * 2 + (a + 1 >= firstCrop ? 1 : 0));
    regrowing[a] = grown[a]! | (1 << (regrowingClass[a]! * 2));
  }
  return { firstCrop, ageClass, grown, regrowing, regrowingClass };
}
