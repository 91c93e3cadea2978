import { orNoRoom } from '../kept/room.ts';

/**
 * Has the browser make room for so many bytes, and gives it back: what it says it allows may be more than it lets in, and the
 * database's engine can't tell what went wrong when it finds no room.
 * @throws InputError in one sentence where there is none
 */
export async function tryRoom(title: string, bytes: number): Promise<void> {
  const root = await navigator.storage.getDirectory();
  const name = `gathering-${crypto.randomUUID()}`;
  const file = await root.getFileHandle(name, { create: true });
  try {
    if (typeof file.createWritable !== 'function') return;
    const writable = await file.createWritable();
    try {
      await writable.truncate(bytes);
    } finally {
      await writable.abort().catch(() => {});
    }
  } catch (error) {
    throw await orNoRoom(error, title, bytes, 0);
  } finally {
    await root.removeEntry(name).catch(() => {});
  }
}
