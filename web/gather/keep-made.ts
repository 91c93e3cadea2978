import type { PackIndexEntry, PackManifest } from '../../analysis/records/pack.ts';
import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { reach } from '../data/reach.ts';
import { DatabaseWriter, removeHalfWritten } from '../engine/database-writer.ts';
import { keepWhole } from '../kept/kept-packs.ts';
import { packFetch } from '../kept/pack-files.ts';
import { checkRoom } from '../kept/room.ts';
import type { GatherClient } from '../workers/gather-client.ts';
import type { MadePack } from '../workers/gather-messages.ts';
import type { GatherProgress, PackWish } from './brought.ts';
import { ownPackId } from './own-pack-id.ts';
import { sha256Of } from './sha256.ts';
import { tryRoom } from './try-room.ts';

/** What whoever waits for a pack may want. */
export interface Waiting {
  readonly onProgress?: (progress: GatherProgress) => void;
  readonly signal?: AbortSignal;
}

const DATABASE = 'records.duckdb';

/**
 * Makes a pack of the files a client has read, and keeps it: whole or not at all.
 * @param writer brought up before, so that its engine is there by then; closed here
 * @throws InputError in one sentence for the reader; the signal's reason when stopped
 */
export async function keepMade(
  client: GatherClient,
  wish: PackWish,
  { onProgress = () => {}, signal }: Waiting = {},
  writer = new DatabaseWriter(),
): Promise<PackIndexEntry> {
  const stop = (): void => void writer.close();
  signal?.addEventListener('abort', stop, { once: true });
  try {
    const id = ownPackId();
    const made = await client.ask('make', { ...wish, id }, { onProgress, signal });
    onProgress({ doing: 'keeping' });
    const database = wish.join === null ? null : await (await reach(wish.join + DATABASE, packFetch)).blob();
    signal?.throwIfAborted();
    return await alone(() => keep(made, database, writer, signal));
  } finally {
    signal?.removeEventListener('abort', stop);
    await writer.close();
  }
}

async function keep(
  made: MadePack,
  joined: Blob | null,
  writer: DatabaseWriter,
  signal?: AbortSignal,
): Promise<PackIndexEntry> {
  const { manifest, tables, joinedStations } = made;
  const others = made.files.reduce((sum, { content }) => sum + content.size, 0);
  // Rows are smaller in a database than as text; while it is put in its place it is there twice.
  const database = Object.values(tables).reduce((sum, table) => sum + table.size, joined?.size ?? 0);
  await checkRoom(manifest.title, others + database);
  await tryRoom(manifest.title, others + database);
  const copied = joined && { database: joined, stations: joinedStations };
  const file = await writer
    .write(tables, copied)
    .catch((error: unknown) => unwritten(error, made, others + database, signal));
  const files = [
    ...made.files.map(({ path, content, sha256 }) => ({ path, content, sha256 })),
    { path: DATABASE, content: file as Blob, sha256: await sha256Of(file) },
  ].sort((a, b) => (a.path < b.path ? -1 : 1));
  const listed: PackManifest = {
    ...manifest,
    files: files.map(({ path, content, sha256 }) => ({ path, bytes: content.size, sha256 })),
  };
  const { id, title, invented, winters } = manifest;
  const bytes = others + file.size;
  const entry = { id, title, invented, path: id, bytes, stations: made.stations, winters };
  const kept = await keepWhole(
    entry,
    true,
    async (put) => {
      for (const { path, content } of files) await put(path, content);
      await put('pack.json', `${JSON.stringify(listed)}\n`);
    },
    signal,
  );
  return kept.entry;
}

/** Why the engine could not write: its own words are for programmers. */
async function unwritten(
  error: unknown,
  made: MadePack,
  bytes: number,
  signal?: AbortSignal,
): Promise<never> {
  signal?.throwIfAborted();
  const { title } = made.manifest;
  await checkRoom(title, bytes);
  const reason = error instanceof Error ? error.message.split('\n')[0] : String(error);
  throw new InputError(t`The nights of “${title}” could not be written: ${reason}`);
}

/** One at a time over all pages, since what was left half-written is removed first. */
function alone<T>(work: () => Promise<T>): Promise<T> {
  const clean = async (): Promise<T> => {
    await removeHalfWritten().catch(() => {});
    return work();
  };
  return navigator.locks
    ? (navigator.locks.request('citrus-winters gathering', clean) as Promise<T>)
    : clean();
}
