import {
  ALL_CHOICES,
  isCoverId,
  MEASURE_IDS,
  WRONG_CHOICES,
  writtenCovers,
  type CoverId,
} from '../../analysis/cover/cover-ids.ts';
import { findMeasure, MEASURES, type Measure } from '../../analysis/cover/measures.ts';
import { YOUNG_YEARS_MAX, type TreeState } from '../../analysis/tree/penalties.ts';

/** The ids of a choice of covers that we know, each once, in the order they are offered. */
export function coverIdsOf(text: string | null): readonly CoverId[] {
  const written = writtenCovers(text);
  return ALL_CHOICES.filter((id) => written.includes(id));
}

/** What a link names and we don't know. */
export function unknownCovers(text: string | null): readonly string[] {
  return writtenCovers(text).filter((id) => !isCoverId(id));
}

/** The choice as it is kept: `a,b`, `undefined` for none. */
export function coverText(ids: readonly string[]): string | undefined {
  const ordered = ALL_CHOICES.filter((id) => ids.includes(id));
  return ordered.length === 0 ? undefined : ordered.join(',');
}

/** The choice with an id taken in or out; a condition goes when nothing chosen asks for it any more. */
export function withCover(ids: readonly CoverId[], id: CoverId, on: boolean): readonly CoverId[] {
  const next = on ? [...ids, id] : ids.filter((other) => other !== id);
  return ALL_CHOICES.filter(
    (one) =>
      next.includes(one) &&
      (one !== 'tied' || canBeTied(next)) &&
      (one !== 'lights-confirmed' || next.includes('lights')),
  );
}

/** Whether something chosen can be tied to the ground. */
export function canBeTied(ids: readonly string[]): boolean {
  return ids.some((id) => findMeasure(id)?.tieable);
}

/** What of a tree decides which measures are for it. */
export type TreeToCover = Pick<TreeState, 'container' | 'ageYears'>;

/** A garage is for pots, a sprinkler in the crown for young trees: its ice breaks the limbs of a grown one. */
export function suits({ potsOnly, youngOnly }: Measure, { container, ageYears }: TreeToCover): boolean {
  return (container || !potsOnly) && (ageYears <= YOUNG_YEARS_MAX || !youngOnly);
}

/** Measures that are offered for a tree: those that suit it, and what a link chose all the same. */
export function offeredMeasures(tree: TreeToCover, ids: readonly string[]): readonly Measure[] {
  return MEASURES.filter((measure) => suits(measure, tree) || ids.includes(measure.id));
}

/** A measure alone, with the conditions that are met: the cover to be told of in its row. */
export function aloneWith({ id, tieable, requires }: Measure, ids: readonly CoverId[]): readonly CoverId[] {
  return [
    id,
    ...(tieable && ids.includes('tied') ? (['tied'] as const) : []),
    ...(requires ? [requires] : []),
  ];
}

/** What a least cover is looked for among: what suits the tree, no lights before they are confirmed. */
export function candidatesFor(tree: TreeToCover, ids: readonly CoverId[]): readonly CoverId[] {
  const confirmed = ids.includes('lights-confirmed');
  return [
    ...MEASURE_IDS.filter((id) => {
      const measure = findMeasure(id)!;
      return suits(measure, tree) && (confirmed || !measure.requires);
    }),
    'tied',
    ...(confirmed ? (['lights-confirmed'] as const) : []),
  ];
}

/** Whether an id is something that should not be done. */
export function isWrong(id: string): boolean {
  return WRONG_CHOICES.some((wrong) => wrong.id === id);
}
