import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { isNoRoom, noRoom } from '../kept/room.ts';

/** The sentence for what went wrong; `null` when the reader stopped it. */
export async function failure(error: unknown, signal?: AbortSignal): Promise<string | null> {
  if (signal?.aborted) return null;
  if (error instanceof InputError) return error.message;
  if (isNoRoom(error)) return (await noRoom(t`what the archive sends`, 0)).message;
  console.error(error);
  return t`Something went wrong on the way: ${error instanceof Error ? error.message : String(error)}.`;
}
