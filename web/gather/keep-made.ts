import type { PackIndexEntry, PackManifest } from '../../analysis/records/pack.ts';
import { reach } from '../data/reach.ts';
import { DatabaseWriter } from '../engine/database-writer.ts';
import { keepWhole } from '../kept/kept-packs.ts';
import { packFetch } from '../kept/pack-files.ts';
import { checkRoom } from '../kept/room.ts';
import type { GatherClient } from '../workers/gather-client.ts';
import type { MadePack } from '../workers/gather-messages.ts';
import type { GatherProgress, PackWish } from './brought.ts';
import { ownPackId } from './own-pack-id.ts';
import { sha256Of } from '../kept/sha256.ts';
import { tryRoom } from './try-room.ts';
import { DATABASE, oneAtATime, unwritten, unwrittenFiles } from './write-nights.ts';

/** What whoever waits for a pack may want. */
export interface Waiting {
  readonly onProgress?: (progress: GatherProgress) => void;
  readonly signal?: AbortSignal;
}

/**
 * Makes a pack of the files a client has read, and keeps it: whole or not at all. Alone it is kept without its database, which
 * takes longer than all the rest: `writeNights` adds that. Together with another pack it is kept with it, since the nights of
 * that one may not be there later.
 * @throws InputError in one sentence for the reader; the signal's reason when stopped
 */
export async function keepMade(
  client: GatherClient,
  wish: PackWish,
  { onProgress = () => {}, signal }: Waiting = {},
): Promise<PackIndexEntry> {
  const made = await client.ask('make', { ...wish, id: ownPackId() }, { onProgress, signal });
  onProgress({ doing: 'keeping' });
  if (wish.join === null) {
    await checkSpace(made, null);
    return keep(made, [], unwrittenFiles(made.tables), signal);
  }
  const joined = await (await reach(wish.join + DATABASE, packFetch)).blob();
  signal?.throwIfAborted();
  await checkSpace(made, joined);
  const writer = new DatabaseWriter();
  const stop = (): void => void writer.close();
  signal?.addEventListener('abort', stop, { once: true });
  try {
    return await oneAtATime(async () => {
      const { manifest, tables, joinedStations: stations } = made;
      const copied = { database: joined, stations };
      const content = await writer.write(tables, copied).catch(async (error: unknown): Promise<Blob> => {
        signal?.throwIfAborted();
        await checkSpace(made, joined);
        throw unwritten(manifest.title, error);
      });
      return keep(made, [{ path: DATABASE, content, sha256: await sha256Of(content) }], [], signal);
    });
  } finally {
    signal?.removeEventListener('abort', stop);
    await writer.close();
  }
}

/** @throws InputError where the pack with its database finds no room */
async function checkSpace({ files, tables, manifest }: MadePack, joined: Blob | null): Promise<void> {
  const others = files.reduce((sum, { content }) => sum + content.size, 0);
  // Rows are smaller in a database than as text; while it is put in its place it is there twice.
  const lines = Object.values(tables).reduce((sum, table) => sum + table.size, joined?.size ?? 0);
  const bytes = others + lines * (joined ? 1 : 2);
  await checkRoom(manifest.title, bytes);
  await tryRoom(manifest.title, bytes);
}

/**
 * @param more files beside those made
 * @param aside files that are none of the pack's
 */
async function keep(
  { files: made, manifest, stations }: MadePack,
  more: MadePack['files'],
  aside: readonly { readonly path: string; readonly content: Blob }[],
  signal?: AbortSignal,
): Promise<PackIndexEntry> {
  const files = [...made, ...more].sort((a, b) => (a.path < b.path ? -1 : 1));
  const listed: PackManifest = {
    ...manifest,
    files: files.map(({ path, content, sha256 }) => ({ path, bytes: content.size, sha256 })),
  };
  const { id, title, invented, winters } = manifest;
  const all = [...files, ...aside];
  const bytes = all.reduce((sum, { content }) => sum + content.size, 0);
  const kept = await keepWhole(
    { id, title, invented, path: id, bytes, stations, winters },
    true,
    async (put) => {
      for (const { path, content } of all) await put(path, content);
      await put('pack.json', `${JSON.stringify(listed)}\n`);
    },
    signal,
  );
  return kept.entry;
}
