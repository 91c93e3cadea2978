import { ENGLISH, spokenLocale } from './t.ts';

/** `a`, `a and b`, `a, b and c`, in the language spoken (Spanish `a, b y c`, `peras e higos`); `or` between the last two where asked for. */
export function sayList(items: readonly string[], between: 'and' | 'or' = 'and'): string {
  if (spokenLocale() !== ENGLISH) {
    const type = between === 'and' ? 'conjunction' : 'disjunction';
    return new Intl.ListFormat(spokenLocale(), { type }).format(items);
  }
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} ${between} ${items.at(-1)}`;
}
