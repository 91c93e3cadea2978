import { expect, test } from 'vitest';
import { adviseBatch } from '../../../analysis/answer/batch-advice.ts';
import { FitShelf } from '../../../analysis/answer/fit-book.ts';
import { findType, type CitrusType } from '../../../analysis/tree/catalogue.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { inventedSubject } from './invented-subject.ts';

const satsuma = findType('satsuma_owari')!;
/** The same tree, but for one threshold. */
function butFor(level: 'leaf' | 'kill', change: Partial<CitrusType['thresholds']['kill']>): CitrusType {
  const { thresholds } = satsuma;
  return { ...satsuma, thresholds: { ...thresholds, [level]: { ...thresholds[level], ...change } } };
}

test('types that differ in a single figure are told apart, though what they share is worked out once', () => {
  const { leaf, kill } = satsuma.thresholds;
  const types = [
    satsuma,
    butFor('kill', { highC: kill.highC + 5 }),
    butFor('kill', { centreC: kill.highC }),
    butFor('kill', { hours: 0 }),
    butFor('leaf', { centreC: leaf.centreC + 3 }),
    butFor('leaf', { centreC: leaf.centreC + 3, hours: 0 }),
  ];
  const differs = new Set<number>();
  for (let middleC = -8; middleC <= 3; middleC += 0.25) {
    const subject = inventedSubject(60, [], middleC);
    const told = (asked: readonly CitrusType[]) => {
      const shelves = { ranged: new FitShelf(subject, 50), plain: new FitShelf(subject, 2) };
      const question = { types: asked, tree: MATURE_TREE, bare: NO_LEVEL_GAIN_SPREADS, plans: [] };
      return adviseBatch(question, 60, shelves);
    };
    const together = told(types);
    expect(together).toEqual(types.flatMap((type) => told([type])));
    together.forEach((advice, i) => advice !== together[0] && differs.add(i));
  }
  expect([...differs].sort()).toEqual([1, 2, 3, 4, 5]);
});
