import { formatWinter } from './dates.ts';
import { plural } from './numbers.ts';

/** `61 complete winters, 1951–52 to 2023–24`. */
export function recordWords(
  winters: { readonly complete: number; readonly first: number | null; readonly last: number | null },
  hemisphere: 'north' | 'south',
  noun = 'complete winter',
): string {
  const count = plural(winters.complete, noun);
  if (winters.first === null || winters.last === null) return count;
  return `${count}, ${formatWinter(winters.first, hemisphere)} to ${formatWinter(winters.last, hemisphere)}`;
}
