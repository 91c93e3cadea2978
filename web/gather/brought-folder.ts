import { FILES_MAX } from './limits.ts';

/** A file with its path in the folder that was brought. */
export interface FolderFile {
  readonly path: string;
  readonly file: File;
}

/** The folder of a pack among the files brought: where the topmost `pack.json` lies; `null` where there is none. */
export function packAmong(files: readonly FolderFile[]): string | null {
  const manifests = files.map(({ path }) => path).filter((path) => /(^|\/)pack\.json$/.test(path));
  const [first] = manifests.sort((a, b) => a.split('/').length - b.split('/').length);
  return first === undefined ? null : first.slice(0, -'pack.json'.length);
}

/** Files an input or a drop gave, folders opened, hidden files left out; at most one more than may come at a time. */
export async function droppedFiles(items: DataTransfer): Promise<FolderFile[]> {
  // Both must be read before anything is waited for: a drop is emptied afterwards.
  const entries = [...items.items].flatMap((item) => item.webkitGetAsEntry?.() ?? []);
  if (entries.length === 0) return chosenFiles(items.files);
  const found: FolderFile[] = [];
  for (const entry of entries) await walk(entry, found);
  return found;
}

/** Files chosen by an input, a folder's with their path in it. */
export function chosenFiles(files: Iterable<File>): FolderFile[] {
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
