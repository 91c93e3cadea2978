/** Name of the folder of the origin's private file system that holds packs. */
const PACKS = 'packs';

/** True where a failure says that there is no such file or folder. */
export function isAbsent(error: unknown): boolean {
  return (
    error instanceof DOMException && (error.name === 'NotFoundError' || error.name === 'TypeMismatchError')
  );
}

/** True where the browser has a file system of its own for this address: not on http of another machine, nor in old browsers. */
export function hasOwnStorage(): boolean {
  return typeof navigator !== 'undefined' && typeof navigator.storage?.getDirectory === 'function';
}

/**
 * The folder that holds all kept packs; `null` where there is none yet, or no storage at all.
 * @param create makes it where it is missing
 */
export async function packsFolder(create = false): Promise<FileSystemDirectoryHandle | null> {
  if (!hasOwnStorage()) return null;
  try {
    return await (await navigator.storage.getDirectory()).getDirectoryHandle(PACKS, { create });
  } catch (error) {
    // Private windows of some browsers refuse; that is as good as none. What was to be made must say why it isn't.
    if (create && !isAbsent(error)) throw error;
    return null;
  }
}

/** A folder inside another; `null` where it is missing. */
export async function folderIn(
  folder: FileSystemDirectoryHandle,
  name: string,
): Promise<FileSystemDirectoryHandle | null> {
  return folder.getDirectoryHandle(name).catch(absentIsNull);
}

/** A file below a folder by its path with slashes; `null` where it is missing. */
export async function fileIn(folder: FileSystemDirectoryHandle, path: string): Promise<File | null> {
  const names = path.split('/');
  try {
    let inside = folder;
    for (const name of names.slice(0, -1)) inside = await inside.getDirectoryHandle(name);
    return await (await inside.getFileHandle(names[names.length - 1])).getFile();
  } catch (error) {
    return absentIsNull(error);
  }
}

function absentIsNull(error: unknown): null {
  if (isAbsent(error)) return null;
  throw error;
}
