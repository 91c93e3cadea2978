import { headline } from '../extremes/headline.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import type { Reading } from '../tree/winter-margins.ts';
import { gainsAt } from '../winter/gain-spread.ts';
import type { FitShelf } from './fit-book.ts';
import { countAt, fittedAt, limitC } from './level-answer.ts';
import type { GrownTrees } from './life-place.ts';

/**
 * Chance a winter of being killed that the curve allows at most (90 % range) where its period lies beyond twice the record, so that
 * the life of trees claims no more and no less than the headline; `null` where the record's length says all there is to say.
 * Judged for the tree at its tenderest: in its first winter, with its first crop, by the colder reading not hardened.
 */
export function killAtMost(
  shelf: FitShelf,
  type: CitrusType,
  { tree, planting, gains }: GrownTrees,
  reading: Reading,
): number | null {
  const tenderest = {
    ...tree,
    ageYears: planting.startAgeYears,
    fruitLoad: true,
    hardened: reading === 'hardened',
  };
  const { hours } = type.thresholds.kill;
  const book = shelf.forGains(gainsAt(gains.kill, 'centreC')).forHours(hours);
  const limit = limitC({ type, level: 'kill', tree: tenderest });
  const { basis, low } = headline(countAt(book, limit), fittedAt(book, limit), book.valuesC.length);
  return basis === 'beyond' ? 1 / low : null;
}
