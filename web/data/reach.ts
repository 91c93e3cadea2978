import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';

/** The part of a response that tells whether it is one. */
interface Answered {
  readonly ok: boolean;
  readonly status: number;
}

/** Name of the file at an address, for messages. */
export function fileName(url: string): string {
  return url.slice(url.lastIndexOf('/') + 1);
}

/** @throws InputError with one sentence for the reader when the file is not reached or refused */
export async function reach<R extends Answered>(
  url: string,
  fetcher: (url: string) => Promise<R>,
): Promise<R> {
  const name = fileName(url);
  let response: R;
  try {
    response = await fetcher(url);
  } catch {
    throw new InputError(t`${name} could not be reached; the connection may be down.`);
  }
  if (!response.ok)
    throw new InputError(t`${name} could not be loaded: the server answered ${response.status}.`);
  return response;
}
