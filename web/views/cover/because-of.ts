import type { CoverId } from '../../../analysis/cover/cover-ids.ts';
import { refusals } from '../../../analysis/cover/refusals.ts';

/** Refusals that would be gone without this one: what is wrong with it, or with it beside the others. */
export function becauseOf(
  id: CoverId,
  ids: readonly CoverId[],
  tree: { readonly container: boolean },
): readonly string[] {
  const without = refusals(
    ids.filter((other) => other !== id),
    tree,
  );
  return refusals(ids, tree).filter((sentence) => !without.includes(sentence));
}
