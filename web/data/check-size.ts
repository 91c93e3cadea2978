import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { formatBytes } from '../format/numbers.ts';

/**
 * To be called before a file is read.
 * @throws InputError naming file, size and limit, where it is larger than `most` bytes
 */
export function checkSize(
  { name, size }: { readonly name: string; readonly size: number },
  most: number,
): void {
  if (size > most)
    throw new InputError(t`${name} has ${formatBytes(size)}; at most ${formatBytes(most)} are taken.`);
}
