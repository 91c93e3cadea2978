import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { formatBytes } from '../format/numbers.ts';

/** A file that is wanted. */
export interface Wanted {
  readonly url: string;
  /** Largest body that is taken, bytes. */
  readonly most: number;
  /** Looks at the beginning of a body before anything of it is kept. @throws InputError when it is something else */
  readonly look?: (start: Uint8Array) => void;
}

/** Hears how far a file has come, and why it is tried again. */
export interface Heard {
  bytes(come: number, total: number | null): void;
  again(reason: string, waitMs: number): void;
}

/** The sentence for a file larger than what is taken. */
export function tooLarge({ url, most }: Wanted, bytes: number): InputError {
  return new InputError(
    t`${url} has ${formatBytes(bytes)}, but at most ${formatBytes(most)} of one file are taken.`,
  );
}
