import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PackIndexEntry } from '../../analysis/records/pack.ts';
import { ENTRY_FILE, readEntry, type KeptEntry, type KeptPack } from './kept-entry.ts';
import { packKey, siteKey } from './pack-key.ts';
import { ifNobodyReads } from './reading-lock.ts';
import { checkRoom, isNoRoom, orNoRoom } from './room.ts';
import { hasOwnStorage, isAbsent, packsFolder } from './storage-folder.ts';
import { writeAnywhere } from './write-anywhere.ts';
import type { Content } from './write-file.ts';

export type { KeptPack } from './kept-entry.ts';

/** Puts one file of a pack, by its path inside the pack; an earlier one of the same path is replaced. */
export type Put = (path: string, content: Content) => Promise<void>;

/**
 * Packs kept whole on this device for this site: the site's own first, in the order they came, then those made here. Empty
 * where the browser has no storage.
 */
export async function listKept(): Promise<readonly KeptPack[]> {
  const kept: KeptEntry[] = [];
  for (const { folder } of await packFolders().catch(() => [])) {
    const found = await readEntry(folder).catch(() => null);
    if (found) kept.push(found);
  }
  return kept
    .sort((a, b) => Number(a.own) - Number(b.own) || a.since.localeCompare(b.since))
    .map(({ entry, own, bytes, keptAt }) => ({ entry, own, bytes, keptAt }));
}

/**
 * Keeps a pack whole or not at all: the entry that makes it a kept one is written after all its files. A pack of the same path
 * is replaced, and stays as it was if this fails; pages that read its files go on with them.
 * @param write puts the files; what it throws is thrown on
 * @param signal ends it, with nothing kept
 * @throws InputError in one sentence: no storage here, or no room, with the sizes
 */
export async function keepWhole(
  entry: PackIndexEntry,
  own: boolean,
  write: (put: Put) => Promise<void>,
  signal?: AbortSignal,
): Promise<KeptPack> {
  if (!hasOwnStorage()) throw new InputError(NO_STORAGE());
  await checkRoom(entry.title, entry.bytes);
  const packs = await packsFolder(true).catch(refused);
  if (!packs) throw new InputError(NO_STORAGE());
  const key = packKey(entry.path);
  return alone(key, async () => {
    const folder = await packs.getDirectoryHandle(key, { create: true }).catch(refused);
    const files = `files-${crypto.randomUUID()}`;
    let bytes = 0;
    try {
      const into = await folder.getDirectoryHandle(files, { create: true });
      await write(async (path, content) => {
        signal?.throwIfAborted();
        bytes += await writeAnywhere(into, path, content);
      });
      signal?.throwIfAborted();
      const keptAt = new Date().toISOString();
      const since = (await readEntry(folder))?.since ?? keptAt;
      const kept: KeptEntry = {
        entry: { ...entry, bytes },
        own,
        bytes,
        keptAt,
        files,
        since,
      };
      await writeAnywhere(folder, ENTRY_FILE, JSON.stringify(kept));
      // The pack is kept by now: nothing about its older files may undo that.
      await tidyFolder(folder, key, files).catch(() => {});
      return { entry: kept.entry, own, bytes, keptAt };
    } catch (error) {
      await folder.removeEntry(files, { recursive: true }).catch(() => {});
      throw await orNoRoom(error, entry.title, entry.bytes, bytes);
    }
  });
}

/**
 * Puts more files into a kept pack where it lies, one after the other: the last may tell of those before, since each is put
 * whole. Pages that read the pack find them.
 * @param without a folder in the pack that goes when all is there
 * @throws InputError in one sentence: the pack isn't kept any more
 * @throws DOMException QuotaExceededError where there is no room; the files put before stay
 */
export async function addToKept(
  id: string,
  files: readonly { readonly path: string; readonly content: Content }[],
  without: string,
): Promise<void> {
  for (const { key, folder } of await packFolders()) {
    if ((await readEntry(folder))?.entry.id !== id) continue;
    return alone(key, async () => {
      const kept = await readEntry(folder);
      if (!kept) throw new InputError(t`The pack “${id}” is not kept in this browser any more.`);
      const into = await folder.getDirectoryHandle(kept.files);
      for (const { path, content } of files) await writeAnywhere(into, path, content);
      await into.removeEntry(without, { recursive: true }).catch(() => {});
      const bytes = await bytesIn(into);
      const now: KeptEntry = { ...kept, bytes, entry: { ...kept.entry, bytes } };
      await writeAnywhere(folder, ENTRY_FILE, JSON.stringify(now));
    });
  }
  throw new InputError(t`The pack “${id}” is not kept in this browser any more.`);
}

async function bytesIn(folder: FileSystemDirectoryHandle): Promise<number> {
  let bytes = 0;
  for await (const [, handle] of folder.entries())
    bytes +=
      handle.kind === 'directory'
        ? await bytesIn(handle as FileSystemDirectoryHandle)
        : (await (handle as FileSystemFileHandle).getFile()).size;
  return bytes;
}

/** Removes a kept pack by its id; one that isn't kept is no error. Pages that have it open must be opened anew. */
export async function removeKept(id: string): Promise<void> {
  for (const { key, folder, packs } of await packFolders()) {
    if ((await readEntry(folder))?.entry.id !== id) continue;
    await alone(key, async () => {
      // First what makes it whole: if the rest should fail, leftovers are all that stays.
      await folder.removeEntry(ENTRY_FILE).catch(passIfAbsent);
      await packs.removeEntry(key, { recursive: true }).catch(passIfAbsent);
    });
  }
}

/** Removes what broken attempts left behind, and files of packs since kept anew that no page reads any more. */
export async function tidyKept(): Promise<void> {
  for (const { key, folder, packs } of await packFolders().catch(() => [])) {
    await alone(
      key,
      async () => {
        const entry = await readEntry(folder);
        if (entry) await tidyFolder(folder, key, entry.files);
        else await packs.removeEntry(key, { recursive: true });
      },
      true,
    ).catch(() => {});
  }
}

async function tidyFolder(folder: FileSystemDirectoryHandle, key: string, current: string): Promise<void> {
  for await (const name of folder.keys()) {
    if (name === ENTRY_FILE || name === current) continue;
    await ifNobodyReads(`${key}/${name}`, () => folder.removeEntry(name, { recursive: true })).catch(
      () => {},
    );
  }
}

interface PackFolder {
  readonly key: string;
  readonly folder: FileSystemDirectoryHandle;
  readonly packs: FileSystemDirectoryHandle;
}

async function packFolders(): Promise<PackFolder[]> {
  const packs = await packsFolder();
  const found: PackFolder[] = [];
  for await (const [key, handle] of packs?.entries() ?? []) {
    if (handle.kind === 'directory' && key.startsWith(siteKey()))
      found.push({ key, folder: handle as FileSystemDirectoryHandle, packs: packs! });
  }
  return found;
}

/** One at a time for a pack, over all pages and workers of the site; with `orSkip` not at all while another is at it. */
async function alone<T>(key: string, work: () => Promise<T>, orSkip: true): Promise<T | null>;
async function alone<T>(key: string, work: () => Promise<T>): Promise<T>;
async function alone<T>(key: string, work: () => Promise<T>, orSkip = false): Promise<T | null> {
  if (!navigator.locks) return work();
  return navigator.locks.request(`citrus-winters keeping ${key}`, { ifAvailable: orSkip }, (lock) =>
    lock ? work() : null,
  ) as Promise<T | null>;
}

/** Another page may have removed it meanwhile. */
function passIfAbsent(error: unknown): void {
  if (!isAbsent(error)) throw error;
}

const NO_STORAGE = (): string =>
  t`This browser keeps nothing for this page: it needs an address that begins with https, or this machine's own (localhost).`;

function refused(error: unknown): never {
  if (isNoRoom(error)) throw error;
  throw new InputError(t`This browser refuses to keep anything for this page; a private window may be why.`);
}
