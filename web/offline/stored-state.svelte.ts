import { ArchiveDatabase } from '../archive/archive-database.ts';
import type { StationIndex } from '../../analysis/archive/station-index.ts';
import { readRoom, type Room } from '../kept/room.ts';
import { listKept, removeKept } from '../kept/kept-packs.ts';
import type { OfflineState } from './offline-state.svelte.ts';
import { storedTexts, type StoredTexts, type TextStorage } from './stored-texts.ts';

/** What of the public archive is stored. */
export interface StoredArchive {
  readonly indexStations: number | null;
  /** Size of its columns, bytes. */
  readonly indexBytes: number;
  readonly indexReadAt: string | null;
  /** Parts of files not yet in a pack, bytes. */
  readonly parts: number;
}

/** Everything this page stores in this browser but packs and its own files, and ways to clear it. */
export class StoredState {
  #texts = $state.raw<readonly StoredTexts[]>([]);
  #archive = $state.raw<StoredArchive | null>(null);
  #room = $state.raw<Room | null>(null);
  #persisted = $state<boolean | null>(null);

  constructor(
    private readonly offline: OfflineState,
    private readonly storage: TextStorage | null,
  ) {}

  get texts(): readonly StoredTexts[] {
    return this.#texts;
  }
  /** `null` where nothing of it is stored. */
  get archive(): StoredArchive | null {
    return this.#archive;
  }
  get room(): Room | null {
    return this.#room;
  }
  /** True where the browser has agreed to keep everything; `null` where it doesn't tell. */
  get persisted(): boolean | null {
    return this.#persisted;
  }

  /** Reads again what is stored. */
  async look(): Promise<void> {
    this.#texts = storedTexts(this.storage);
    [this.#room, this.#persisted, this.#archive] = await Promise.all([
      readRoom(),
      navigator.storage?.persisted?.().catch(() => null) ?? null,
      readArchive().catch(() => null),
    ]);
  }

  /** Asks the browser to keep everything even when the device runs short of room; tells whether it agreed. */
  async persist(): Promise<boolean> {
    this.#persisted = await navigator.storage.persist().catch(() => false);
    return this.#persisted;
  }

  /** Texts of one kind. The page must be opened anew: it still holds what it read. */
  clearTexts({ keys }: StoredTexts): void {
    for (const key of keys) this.storage?.removeItem(key);
  }

  async clearArchive(): Promise<void> {
    await (await ArchiveDatabase.open())?.clear();
    await this.look();
  }

  /** All there is, packs made here included; nothing is kept again unasked. The page must be opened anew. */
  async clearAll(): Promise<void> {
    for (const { entry } of await listKept()) await removeKept(entry.id);
    await (await ArchiveDatabase.open())?.clear();
    storedTexts(this.storage).forEach((texts) => this.clearTexts(texts));
    await this.offline.turnOff();
  }
}

/** Looks only where there is something: opening the database would make one. */
async function readArchive(): Promise<StoredArchive | null> {
  const names = await indexedDB.databases?.();
  if (names && !names.some(({ name }) => name === 'archive')) return null;
  const stored = await (await ArchiveDatabase.open())?.stored();
  if (!stored || (!stored.index && stored.parts === 0)) return null;
  return {
    indexStations: stored.index?.index.count ?? null,
    indexBytes: stored.index ? indexBytes(stored.index.index) : 0,
    indexReadAt: stored.index?.readAt ?? null,
    parts: stored.parts,
  };
}

function indexBytes(index: StationIndex): number {
  return Object.values(index).reduce<number>(
    (sum, column: number | string | ArrayBufferView) =>
      sum + (ArrayBuffer.isView(column) ? column.byteLength : String(column).length),
    0,
  );
}
