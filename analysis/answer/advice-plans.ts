import { WRONG_CHOICES, type CoverId } from '../cover/cover-ids.ts';
import { findMeasure, worksAtNight } from '../cover/measures.ts';
import { countingIds } from '../cover/refusals.ts';

/**
 * Covers that a person can realistically put on, least work first, the strongest last (design choice): what is done once a
 * season, then cloth of the middle weight, then the heavy one. All of the graft's bank, which costs an hour a year. A trunk
 * wrap is none of them, since it saves no leaves; lights only where the page has them confirmed; heat lamps never.
 */
export const PLAN_COVERS: readonly (readonly CoverId[])[] = [
  ['bare-soil', 'soil-bank'],
  ['cloth-medium', 'soil-bank', 'tied'],
  ['bare-soil', 'cloth-heavy', 'soil-bank', 'tied'],
];

/** Where a pot is brought to. */
export const POT_COVER: readonly CoverId[] = ['garage'];

/** A cover to be tried. */
export interface Plan {
  readonly ids: readonly CoverId[];
  /** Something of it is put on each cold night. */
  readonly nightWork: boolean;
}

/** The page's own cover first, so far as it counts for a tree in the ground, then {@link PLAN_COVERS}. */
export function plansFor(pageCovers: readonly CoverId[]): readonly Plan[] {
  const own = countingIds(pageCovers, { container: false }).filter(
    (id) => !WRONG_CHOICES.some((wrong) => wrong.id === id),
  );
  const isOwn = (ids: readonly CoverId[]): boolean =>
    ids.length === own.length && ids.every((id) => own.includes(id));
  const first = own.some((id) => findMeasure(id)) ? [own] : [];
  return [...first, ...PLAN_COVERS.filter((ids) => !isOwn(ids))].map((ids) => ({
    ids,
    nightWork: worksAtNight(ids),
  }));
}
