import { t } from '../../analysis/language/t.ts';
import { PERIOD_CLASSES } from '../charts/period-classes.ts';

/** How an area is filled: a colour of the map's palette, plain, hatched (no answer) or dotted (too rare to tell). */
export type Fill =
  | { readonly ramp: 'cold'; readonly step: 1 | 2 | 3 | 4 | 5 | 6 }
  | { readonly ramp: 'warm'; readonly step: 1 | 2 | 3 }
  | { readonly ramp: 'land'; readonly pattern: 'plain' | 'hatched' | 'dotted' };

/** One entry of a surface's legend. */
export interface PaintClass {
  readonly id: string;
  readonly label: string;
  readonly fill: Fill;
}

/** Classes of a value, from its low end: `classes[k]` from `edges[k - 1]` (in it) to `edges[k]` (outside). */
export interface PaintScale {
  readonly edges: readonly number[];
  readonly classes: readonly PaintClass[];
}

/** Land out of reach of the stations that take part in estimates. */
export const NO_ANSWER: PaintClass = {
  id: 'nodata',
  label: t`no answer: no long record within reach`,
  fill: { ramp: 'land', pattern: 'hatched' },
};

const dotted = (label: string): PaintClass => ({
  id: 'beyond',
  label,
  fill: { ramp: 'land', pattern: 'dotted' },
});

/** Rarer than twice the winters behind a cell, by what the map shows. */
export const BEYOND = {
  periods: dotted(t`rarer than the record can tell`),
  difference: dotted(t`both rarer than the record can tell`),
  where: dotted(t`record too short to say`),
};

/** Return periods in the classes of the stations' marks, from every winter to rare. Values are winters. */
export const PERIOD_SCALE: PaintScale = (() => {
  const frequentFirst = [...PERIOD_CLASSES].reverse();
  return {
    edges: frequentFirst.slice(1).map(({ range }) => range![0]),
    classes: frequentFirst.map(({ id, label, ramp }) => ({
      id,
      label,
      fill: { ramp: 'cold', step: ramp as 1 | 2 | 3 | 4 | 5 | 6 },
    })),
  };
})();

/**
 * How many times longer the first period is than the second. Below 1 the first is hit more often (cold colours), above 1 less
 * often (warm ones); both sides mirror each other.
 */
export const RATIO_SCALE: PaintScale = {
  edges: [1 / 4, 1 / 2, 1 / 1.25, 1.25, 2, 4],
  classes: [
    { id: 'oftener4', label: t`over 4 times as often`, fill: { ramp: 'cold', step: 6 } },
    { id: 'oftener2', label: t`2 to 4 times as often`, fill: { ramp: 'cold', step: 4 } },
    { id: 'oftener', label: t`1¼ to 2 times as often`, fill: { ramp: 'cold', step: 2 } },
    { id: 'even', label: t`about as often`, fill: { ramp: 'land', pattern: 'plain' } },
    { id: 'rarer', label: t`1¼ to 2 times as rarely`, fill: { ramp: 'warm', step: 1 } },
    { id: 'rarer2', label: t`2 to 4 times as rarely`, fill: { ramp: 'warm', step: 2 } },
    { id: 'rarer4', label: t`over 4 times as rarely`, fill: { ramp: 'warm', step: 3 } },
  ],
};

/** Where a period reaches a wanted one; the value is their ratio. */
export const WHERE_SCALE: PaintScale = {
  edges: [1],
  classes: [
    { id: 'oftener', label: t`oftener than that`, fill: { ramp: 'land', pattern: 'plain' } },
    { id: 'safe', label: t`that rarely, or more rarely`, fill: { ramp: 'warm', step: 2 } },
  ],
};

/** Number of the class a value falls in. */
export function classIndex({ edges }: PaintScale, value: number): number {
  let at = 0;
  while (at < edges.length && value >= edges[at]) at++;
  return at;
}
