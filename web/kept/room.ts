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

/** The sentence for a pack that doesn't fit. `bytes` 0: not known. */
export async function noRoom(title: string, bytes: number): Promise<InputError> {
  const room = await readRoom();
  const left = room && formatBytes(Math.max(0, room.allowed - room.used));
  if (left === null)
    return new InputError(t`This browser has no room for “${title}”, which needs ${formatBytes(bytes)}.`);
  return new InputError(
    bytes > 0
      ? t`This browser has no room for “${title}”: it needs ${formatBytes(bytes)}, and ${left} are left for this page.`
      : t`This browser has no room for “${title}”: only ${left} are left for this page.`,
  );
}

/** @throws InputError where a pack of so many bytes can't fit; a browser that doesn't tell is tried */
export async function checkRoom(title: string, bytes: number): Promise<void> {
  const room = await readRoom();
  if (room && room.used + bytes > room.allowed) throw await noRoom(title, bytes);
}

/** True where a failure says that there is no room. */
export function isNoRoom(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'QuotaExceededError';
}
