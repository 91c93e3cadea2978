import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import type { LifeQuestion } from '../../state/ports.ts';

/** Age, load and hardening change through a life: what was chosen of them above asks nothing anew. */
export function wholeLife({ nights: _, tree, ...question }: LifeQuestion): Omit<LifeQuestion, 'nights'> {
  const { ageYears, fruitLoad, hardened } = MATURE_TREE;
  return { ...question, tree: { ...tree, ageYears, fruitLoad, hardened } };
}
