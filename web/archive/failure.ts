import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { formatBytes } from '../format/numbers.ts';
import { isNoRoom, readRoom } from '../kept/room.ts';

/** The sentence for what went wrong; `null` when the reader stopped it. */
export async function failure(error: unknown, signal?: AbortSignal): Promise<string | null> {
  if (signal?.aborted) return null;
  if (error instanceof InputError) return error.message;
  if (isNoRoom(error)) {
    const used = (await readRoom())?.used ?? 0;
    return t`This browser has no more room for what the archive sends: ${formatBytes(used)} are stored for this site. Tick fewer stations, or clear what is kept.`;
  }
  console.error(error);
  return t`Something went wrong on the way: ${error instanceof Error ? error.message : String(error)}.`;
}
