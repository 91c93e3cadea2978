import type { Headline } from '../../analysis/answer/assessment.ts';
import { t } from '../../analysis/language/t.ts';
import type { MarkShape } from './mark-paths.ts';

/** What a station or a row is coloured and shaped by: the class its return period falls in. */
export interface PeriodClass {
  readonly id: 'over50' | 'to50' | 'to25' | 'to10' | 'to5' | 'under2' | 'unseen' | 'nodata';
  /** Return period in winters, `from` inside the class, `to` outside; `null` for the two that have no period. */
  readonly range: readonly [from: number, to: number] | null;
  /** Step of the cold ramp, 1 (rare) to 6 (nearly every winter); 0: paper. */
  readonly ramp: 0 | 1 | 2 | 3 | 4 | 5 | 6;
  readonly shape: MarkShape;
  readonly label: string;
}

/** From rare to frequent; the marks grow points as the cold comes more often, so that they also read without colour. */
export const PERIOD_CLASSES: readonly PeriodClass[] = [
  { id: 'over50', range: [50, Infinity], ramp: 1, shape: 'circle', label: t`rarer than 1 in 50` },
  { id: 'to50', range: [25, 50], ramp: 2, shape: 'square', label: t`1 in 25 to 1 in 50` },
  { id: 'to25', range: [10, 25], ramp: 3, shape: 'diamond', label: t`1 in 10 to 1 in 25` },
  { id: 'to10', range: [5, 10], ramp: 4, shape: 'triangle', label: t`1 in 5 to 1 in 10` },
  { id: 'to5', range: [2, 5], ramp: 5, shape: 'star4', label: t`1 in 2 to 1 in 5` },
  { id: 'under2', range: [0, 2], ramp: 6, shape: 'star6', label: t`more often than 1 in 2` },
];

/** No hit in a record too short for a curve: nothing is claimed about how rare it is. */
const UNSEEN_CLASS: PeriodClass = {
  id: 'unseen',
  range: null,
  ramp: 0,
  shape: 'ring',
  label: t`not seen, short record`,
};

const NO_DATA_CLASS: PeriodClass = {
  id: 'nodata',
  range: null,
  ramp: 0,
  shape: 'hatched',
  label: t`no complete winter`,
};

/** All classes in the order of a legend. */
export const LEGEND_CLASSES: readonly PeriodClass[] = [...PERIOD_CLASSES, UNSEEN_CLASS, NO_DATA_CLASS];

/** The part of a headline that decides its class. */
export type ClassedHeadline = Pick<Headline, 'period' | 'low' | 'basis'>;

/**
 * Class of an answer. "1 in L or rarer" is put where L itself lies, its frequent end, so that a class never
 * says more than the record does. `null`: no data.
 */
export function periodClassOf(headline: ClassedHeadline | null): PeriodClass {
  if (!headline) return NO_DATA_CLASS;
  if (headline.basis === 'not seen') return UNSEEN_CLASS;
  const period = headline.basis === 'beyond' ? (headline.low ?? headline.period) : headline.period;
  if (period === null || Number.isNaN(period)) return NO_DATA_CLASS;
  return PERIOD_CLASSES.find(({ range }) => range !== null && period >= range[0] && period < range[1])!;
}

/** Colour of a class as CSS: its step of the cold ramp, or paper. */
export function classFill({ ramp }: PeriodClass): string {
  return ramp === 0 ? 'var(--paper)' : `var(--cold-${ramp})`;
}
