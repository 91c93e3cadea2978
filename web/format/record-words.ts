import { t } from '../../analysis/language/t.ts';
import { formatWinter } from './dates.ts';
import { countedWinters } from './estimated.ts';

/** `61 complete winters, 1951–52 to 2023–24`. */
export function recordWords(
  winters: { readonly complete: number; readonly first: number | null; readonly last: number | null },
  hemisphere: 'north' | 'south',
  estimated = false,
): string {
  const count = countedWinters(winters.complete, estimated);
  if (winters.first === null || winters.last === null) return count;
  return t`${count}, ${formatWinter(winters.first, hemisphere)} to ${formatWinter(winters.last, hemisphere)}`;
}
