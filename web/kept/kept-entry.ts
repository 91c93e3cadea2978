import type { PackIndexEntry } from '../../analysis/records/pack.ts';
import { fileIn } from './storage-folder.ts';

/** File in a pack's folder that makes it a kept one; written last. */
export const ENTRY_FILE = 'entry.json';

/** A pack kept whole in this browser. */
export interface KeptPack {
  readonly entry: PackIndexEntry;
  /** True for a pack made here, which no server has. */
  readonly own: boolean;
  /** Of all its files. */
  readonly bytes: number;
  /** ISO date and time. */
  readonly keptAt: string;
}

/** What {@link ENTRY_FILE} holds. */
export interface KeptEntry extends KeptPack {
  /** The folder inside the pack's that holds its files: a pack kept anew gets another, so that open pages lose nothing. */
  readonly files: string;
  /** When it was kept for the first time, ISO. */
  readonly since: string;
}

/** What a pack's folder says of itself; `null` where the pack was never finished. */
export async function readEntry(folder: FileSystemDirectoryHandle): Promise<KeptEntry | null> {
  const file = await fileIn(folder, ENTRY_FILE);
  if (!file) return null;
  try {
    const value = JSON.parse(await file.text()) as Partial<KeptEntry> | null;
    return typeof value?.files === 'string' && value.entry ? (value as KeptEntry) : null;
  } catch {
    // Written only in part: as good as never finished.
    return null;
  }
}
