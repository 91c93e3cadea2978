import { fahrenheitDifferenceToCelsius } from '../units/temperature.ts';
import type { Basis, CitrusType } from './catalogue.ts';
import type { Level } from './levels.ts';

export const CONDITIONS = ['vigorous', 'average', 'weak'] as const;
export type Condition = (typeof CONDITIONS)[number];

export const ROOTSTOCKS = ['sour-orange', 'trifoliate', 'rough-lemon'] as const;
export type Rootstock = (typeof ROOTSTOCKS)[number];

/** The tree as it stands: what moves its thresholds away from those of a mature, healthy, hardened tree. */
export interface TreeState {
  /** Years since planting; 6 and more is mature. */
  readonly ageYears: number;
  readonly condition: Condition;
  readonly fruitLoad: boolean;
  readonly container: boolean;
  readonly hardened: boolean;
  readonly rootstock: Rootstock;
}

/** The tree the catalogue's thresholds are for. */
export const MATURE_TREE: TreeState = {
  ageYears: 10,
  condition: 'vigorous',
  fruitLoad: false,
  container: false,
  hardened: true,
  rootstock: 'sour-orange',
};

export type PenaltyCause = 'age' | 'condition' | 'fruit_load' | 'container' | 'not_hardened' | 'rootstock';

/** Degrees added to a threshold, °C: plus means hurt at a warmer temperature. */
export interface Penalty {
  readonly cause: PenaltyCause;
  readonly lowC: number;
  readonly centreC: number;
  readonly highC: number;
  readonly basis: Basis;
  /** Keys of `sourceOf`. */
  readonly sources: readonly string[];
}

/**
 * Penalties at a level. Fruit is never moved; leaf, wood and kill are. Young and not hardened describe one weakness,
 * so only the larger of the two counts (design 3.4).
 */
export function penaltiesAt(level: Level, type: CitrusType, tree: TreeState): readonly Penalty[] {
  if (level === 'fruit') return [];
  const age = agePenalty(tree.ageYears);
  const soft = tree.hardened ? null : NOT_HARDENED[type.hardening];
  const tender = !age ? soft : !soft || age.centreC >= soft.centreC ? age : soft;
  const all = [
    tender,
    tree.condition === 'vigorous' ? null : CONDITION[tree.condition],
    tree.fruitLoad ? FRUIT_LOAD : null,
    tree.container ? CONTAINER : null,
    ROOTSTOCK[tree.rootstock],
  ];
  return all.filter((penalty) => penalty !== null);
}

/** Sum of the penalties' centres, °C. */
export function totalPenaltyC(penalties: readonly Penalty[]): number {
  return penalties.reduce((sum, penalty) => sum + penalty.centreC, 0);
}

/** Years since planting through which a tree counts as young. Common practice, no source. */
export const YOUNG_YEARS_MAX = 5;

/** Years 1-2 +5.5 °F, year 3 +3 °F, years 4-5 +1.5 °F: common practice, no source. */
function agePenalty(ageYears: number): Penalty | null {
  if (ageYears > YOUNG_YEARS_MAX) return null;
  if (ageYears > 3) return penaltyF('age', [1, 1.5, 2], 'practice', ['practice']);
  if (ageYears > 2) return penaltyF('age', [2, 3, 4], 'practice', ['practice']);
  return penaltyF('age', [5, 5.5, 6], 'practice', ['practice', 'S04']);
}

/** Satsuma, kumquat and hardier types lose most when not hardened; lemons, limes and citrons have least to lose. */
const NOT_HARDENED = {
  strong: penaltyF('not_hardened', [4, 8, 11], 'found', ['S04', 'S05']),
  moderate: penaltyF('not_hardened', [3, 5, 8], 'inferred', ['S05']),
  slight: penaltyF('not_hardened', [1, 3, 5], 'inferred', ['S05']),
};

const CONDITION = {
  average: penaltyF('condition', [0, 1, 1], 'practice', ['S23', 'practice']),
  weak: penaltyF('condition', [1, 2, 4], 'practice', ['S23', 'practice']),
};
const FRUIT_LOAD = penaltyF('fruit_load', [1, 1.5, 2], 'practice', ['S12', 'practice']);
const CONTAINER = penaltyF('container', [3, 5, 8], 'practice', ['practice']);
/** Kept small: a controlled test found no effect on hardened trees (S07). The hardier credit is the smaller one. */
const ROOTSTOCK = {
  'sour-orange': null,
  trifoliate: penaltyF('rootstock', [-3, -1, 0], 'practice', ['S07', 'practice']),
  'rough-lemon': penaltyF('rootstock', [1, 2, 3], 'practice', ['S27', 'practice']),
};

function penaltyF(
  cause: PenaltyCause,
  [lowF, centreF, highF]: readonly [number, number, number],
  basis: Basis,
  sources: readonly string[],
): Penalty {
  const [lowC, centreC, highC] = [lowF, centreF, highF].map(fahrenheitDifferenceToCelsius);
  return { cause, lowC, centreC, highC, basis, sources };
}
