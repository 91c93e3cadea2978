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

/** The tree around its name: `mature, vigorous` before it, `in a container, carrying fruit` after it (or `''`). */
export function treeWords(tree: TreeState): { readonly before: string; readonly after: string } {
  const age = tree.ageYears >= MATURE_AGE_YEARS ? 'mature' : `${tree.ageYears}-year-old`;
  const after = [
    tree.condition === 'average' ? 'of average vigour' : '',
    tree.rootstock === 'sour-orange'
      ? ''
      : `on ${tree.rootstock === 'trifoliate' ? 'trifoliate' : 'rough lemon'} stock`,
    tree.container ? 'in a container' : '',
    tree.fruitLoad ? 'carrying fruit' : '',
    tree.hardened ? '' : 'not hardened',
  ].filter((part) => part !== '');
  return {
    before: tree.condition === 'average' ? age : `${tree.condition} ${age}`,
    after: after.length === 0 ? '' : `, ${after.join(', ')},`,
  };
}
