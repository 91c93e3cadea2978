import type { PenaltyCause, Rootstock, TreeState } from '../../analysis/tree/penalties.ts';

/** From this age on a tree counts as mature, years since planting. */
export const MATURE_AGE_YEARS = 6;

export const ROOTSTOCK_WORDS: Readonly<Record<Rootstock, string>> = {
  'sour-orange': 'Sour orange, or not known',
  trifoliate: 'Trifoliate orange and its hybrids',
  'rough-lemon': 'Rough lemon, Volkamer, citron',
};

const CAUSE_WORDS: Readonly<Record<PenaltyCause, string>> = {
  age: 'young tree',
  condition: 'condition',
  fruit_load: 'carrying fruit',
  container: 'in a container',
  not_hardened: 'not hardened',
  rootstock: 'rootstock',
};

/** A penalty's cause in words; causes this page doesn't know yet are shown as they come. */
export function causeWords(cause: string): string {
  return (CAUSE_WORDS as Record<string, string>)[cause] ?? cause.replaceAll('_', ' ');
}

/** `3 years old`, `mature`. */
export function ageWords(ageYears: number | null): string {
  if (ageYears === null || ageYears >= MATURE_AGE_YEARS) return 'mature';
  return ageYears === 1 ? '1 year old' : `${ageYears} years old`;
}

/** The tree before its name: `mature, vigorous`, `3 years old, weak, in a container, carrying fruit`. */
export function treeWords(tree: TreeState): string {
  return [
    ageWords(tree.ageYears),
    tree.condition === 'average' ? 'of average vigour' : tree.condition,
    tree.container ? 'in a container' : '',
    tree.fruitLoad ? 'carrying fruit' : '',
    tree.hardened ? '' : 'not hardened',
    tree.rootstock === 'sour-orange'
      ? ''
      : `on ${tree.rootstock === 'trifoliate' ? 'trifoliate' : 'rough lemon'} stock`,
  ]
    .filter((part) => part !== '')
    .join(', ');
}
