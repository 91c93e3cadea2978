import type { FolderFile } from './keep-folder.ts';
import { FILES_MAX } from './limits.ts';

/** Files an input or a drop gave, folders opened, hidden files left out; at most one more than may come at a time. */
export async function droppedFiles(items: DataTransfer): Promise<FolderFile[]> {
  const entries = [...items.items].flatMap((item) => item.webkitGetAsEntry?.() ?? []);
  if (entries.length === 0) return chosenFiles(items.files);
  const found: FolderFile[] = [];
  for (const entry of entries) await walk(entry, found);
  return found;
}

/** Files chosen by an input, a folder's with their path in it. */
export function chosenFiles(files: FileList): FolderFile[] {
  return [...files]
    .map((file) => ({ path: file.webkitRelativePath || file.name, file }))
    .filter(({ path }) => !isHidden(path));
}

async function walk(entry: FileSystemEntry, found: FolderFile[]): Promise<void> {
  if (found.length > FILES_MAX || entry.name.startsWith('.')) return;
  if (entry.isFile) {
    const file = await new Promise<File>((resolve, reject) =>
      (entry as FileSystemFileEntry).file(resolve, reject),
    );
    found.push({ path: entry.fullPath.replace(/^\//, ''), file });
    return;
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  for (;;) {
    // A reader gives a hundred or so at a time, and nothing at the end.
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) =>
      reader.readEntries(resolve, reject),
    );
    if (some.length === 0) return;
    for (const inside of some) await walk(inside, found);
  }
}

function isHidden(path: string): boolean {
  return path.split('/').some((name) => name.startsWith('.'));
}
