import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { formatBytes } from '../format/numbers.ts';

/** What this site stores in this browser, and how much it may, bytes; `null` where the browser doesn't tell. */
export interface Room {
  readonly used: number;
  readonly allowed: number;
}

/** @returns `null` where the browser doesn't tell */
export async function readRoom(): Promise<Room | null> {
  const estimate = await navigator.storage?.estimate?.().catch(() => null);
  if (estimate?.quota === undefined) return null;
  return { used: estimate.usage ?? 0, allowed: estimate.quota };
}

/**
 * The sentence for a pack that doesn't fit, `bytes` 0 where its size isn't known. What a browser says it allows may be far more than
 * it lets in (Chromium names the same 10 GB whatever the disk has): where that was enough, what was written tells more.
 */
async function noRoom(title: string, bytes: number, written: number): Promise<InputError> {
  const room = await readRoom();
  const left = room && Math.max(0, room.allowed - room.used);
  if (bytes > 0 && left !== null && left < bytes)
    return new InputError(
      t`This browser has no room for “${title}”: it needs ${formatBytes(bytes)}, and ${formatBytes(left)} are left for this page. Nothing was kept.`,
    );
  return new InputError(
    bytes > 0
      ? t`This browser has no room for “${title}”: it needs ${formatBytes(bytes)}, and after ${formatBytes(written)} the browser took no more. Nothing was kept.`
      : t`This browser has no room for “${title}”: after ${formatBytes(written)} it took no more. Nothing was kept.`,
  );
}

/** @throws InputError where a pack of so many bytes can't fit; a browser that doesn't tell is tried */
export async function checkRoom(title: string, bytes: number): Promise<void> {
  const room = await readRoom();
  if (room && room.used + bytes > room.allowed) throw await noRoom(title, bytes, 0);
}

/** The failure to tell of: the sentence about room where that was it, else the failure itself. */
export async function orNoRoom(
  error: unknown,
  title: string,
  bytes: number,
  written: number,
): Promise<unknown> {
  return isNoRoom(error) ? noRoom(title, bytes, written) : error;
}

/** True where a failure says that there is no room. */
export function isNoRoom(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'QuotaExceededError';
}
