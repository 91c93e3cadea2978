import { readEntry } from './kept-entry.ts';
import { placesOf } from './pack-key.ts';
import { heldByReader } from './reading-lock.ts';
import { fileIn, folderIn, packsFolder } from './storage-folder.ts';

/** The files of each pack met so far: a pack kept anew meanwhile is seen at the next visit, so that all parts fit together. */
const met = new Map<string, Promise<FileSystemDirectoryHandle | null>>();

/** The folder with a pack's files; `null` where the pack isn't kept whole. */
async function filesFolder(key: string): Promise<FileSystemDirectoryHandle | null> {
  const packs = await packsFolder();
  const folder = packs && (await folderIn(packs, key));
  const entry = folder && (await readEntry(folder));
  if (!entry) return null;
  heldByReader(`${key}/${entry.files}`);
  return folderIn(folder, entry.files);
}

async function find(url: string): Promise<File | null> {
  for (const { key, path } of placesOf(url)) {
    let files = met.get(key);
    if (!files) {
      files = filesFolder(key);
      met.set(key, files);
      // A storage that failed once is asked again.
      files.catch(() => met.delete(key));
    }
    const folder = await files;
    const file = folder && (await fileIn(folder, path));
    if (file) return file;
    // Not kept now; it may be at the next question.
    met.delete(key);
  }
  return null;
}

/** A file of a kept pack by its absolute address; `null` where it isn't kept, or where the browser's storage can't be read. */
export function keptFile(url: string): Promise<File | null> {
  return find(url).catch(() => null);
}

/** A file of a pack: the kept one, else from the network. */
export async function packFetch(url: string): Promise<Response> {
  const file = await keptFile(url);
  return file ? new Response(file) : fetch(url);
}
