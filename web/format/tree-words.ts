import { t } from '../../analysis/language/t.ts';
import type { PenaltyCause, Rootstock, TreeState } from '../../analysis/tree/penalties.ts';

/** From this age on a tree counts as mature, years since planting. */
export const MATURE_AGE_YEARS = 6;

export const ROOTSTOCK_WORDS: Readonly<Record<Rootstock, string>> = {
  'sour-orange': t`Sour orange, or not known`,
  trifoliate: t`Trifoliate orange and its hybrids`,
  'rough-lemon': t`Rough lemon, Volkamer, citron`,
};

const CAUSE_WORDS: Readonly<Record<PenaltyCause, string>> = {
  age: t`young tree`,
  condition: t`condition`,
  fruit_load: t`carrying fruit`,
  container: t`in a container`,
  not_hardened: t`not hardened`,
  rootstock: t`rootstock`,
};

/** A penalty's cause in words; causes this page doesn't know yet are shown as they come. */
export function causeWords(cause: string): string {
  return (CAUSE_WORDS as Record<string, string>)[cause] ?? cause.replaceAll('_', ' ');
}

/** `3 years old`, `mature`. */
export function ageWords(ageYears: number | null): string {
  if (ageYears === null || ageYears >= MATURE_AGE_YEARS) return t`mature`;
  return ageYears === 1 ? t`1 year old` : t`${ageYears} years old`;
}

/** The tree around its name: `vigorous mature` before it, `, in a container, carrying fruit,` after it (or `''`). */
export function treeWords(tree: TreeState): { readonly before: string; readonly after: string } {
  const after = [
    tree.condition === 'average' ? t`of average vigour` : '',
    tree.rootstock === 'trifoliate' ? t`on trifoliate stock` : '',
    tree.rootstock === 'rough-lemon' ? t`on rough lemon stock` : '',
    tree.container ? t`in a container` : '',
    tree.fruitLoad ? t`carrying fruit` : '',
    tree.hardened ? '' : t`not hardened`,
  ].filter((part) => part !== '');
  return {
    before: withCondition(tree.condition, ageBefore(tree.ageYears)),
    after: after.length === 0 ? '' : `, ${after.join(', ')},`,
  };
}

function ageBefore(ageYears: number): string {
  if (ageYears >= MATURE_AGE_YEARS) return t`mature`;
  return ageYears === 1 ? t`1-year-old` : t`${ageYears}-year-old`;
}

function withCondition(condition: TreeState['condition'], age: string): string {
  if (condition === 'average') return age;
  return condition === 'vigorous' ? t`vigorous ${age}` : t`weak ${age}`;
}
