import type { Headline, LevelAnswer } from '../../../analysis/answer/assessment.ts';
import type { TreeState } from '../../../analysis/tree/penalties.ts';

/** One type and level without a cover and with it, all of the same question. */
export interface Told {
  /** Name of the place. */
  readonly place: string;
  readonly tree: TreeState;
  readonly typeName: string;
  /** The spot in words, empty in the open. */
  readonly standing: string;
  /** Ids of the cover. */
  readonly ids: readonly string[];
  /** On the bare spot. */
  readonly none: LevelAnswer;
  /** Under the cover. */
  readonly level: LevelAnswer;
  /** Headline of each measure alone, by its id. */
  readonly alone: ReadonlyMap<string, Headline>;
}
