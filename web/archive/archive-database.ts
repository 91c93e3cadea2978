import type { StationIndex } from '../../analysis/archive/station-index.ts';
import type { BodyDescription, PartState, PartStore } from './part-store.ts';

const NAME = 'archive';
/** What is known of each part, the pieces of all parts, and the station index. */
const [BODIES, PIECES, INDEX] = ['bodies', 'pieces', 'index'] as const;

/** The station index as it is kept. */
export interface KeptIndex {
  readonly index: StationIndex;
  /** Base address it was read from. */
  readonly base: string;
  /** ISO date and time. */
  readonly readAt: string;
}

/** An index as it was read just now. */
export function indexToKeep(index: StationIndex, base: string): KeptIndex {
  return { index, base, readAt: new Date().toISOString() };
}

interface KeptBody {
  readonly body: BodyDescription;
  readonly bytes: number;
  readonly pieces: number;
  readonly whole: boolean;
}

/** What of the archive is stored in this browser, bytes. */
export interface ArchiveStored {
  /** Station files, whole or in part, that are not in a pack yet. */
  readonly parts: number;
  readonly index: KeptIndex | null;
}

/**
 * The browser's database of what came from the archive: the station index and the parts of files. A piece is written together
 * with what is known of its part, so that a closed page leaves no part without its description.
 */
export class ArchiveDatabase implements PartStore {
  readonly #database: IDBDatabase;

  private constructor(database: IDBDatabase) {
    this.#database = database;
  }

  /** `null` where the browser keeps nothing for this page. */
  static async open(): Promise<ArchiveDatabase | null> {
    try {
      const asked = indexedDB.open(NAME, 1);
      asked.onupgradeneeded = () => {
        for (const store of [BODIES, PIECES, INDEX]) asked.result.createObjectStore(store);
      };
      const database = await answered(asked);
      database.onversionchange = () => database.close();
      return new ArchiveDatabase(database);
    } catch {
      return null;
    }
  }

  async state(url: string): Promise<PartState | null> {
    const kept = await this.#body(this.#database.transaction(BODIES), url);
    return kept ? { body: kept.body, bytes: kept.bytes, whole: kept.whole } : null;
  }

  async begin(body: BodyDescription): Promise<void> {
    const change = this.#change();
    change.objectStore(PIECES).delete(piecesOf(body.url));
    change.objectStore(BODIES).put({ body, bytes: 0, pieces: 0, whole: false } satisfies KeptBody, body.url);
    await done(change);
  }

  async append(url: string, bytes: Blob, at: number): Promise<boolean> {
    const change = this.#change();
    const kept = await this.#body(change, url);
    if (kept?.bytes !== at || kept.whole) return false;
    change.objectStore(PIECES).put(bytes, [url, kept.pieces]);
    const more = { ...kept, bytes: kept.bytes + bytes.size, pieces: kept.pieces + 1 };
    change.objectStore(BODIES).put(more satisfies KeptBody, url);
    await done(change);
    return true;
  }

  async content(url: string): Promise<Blob> {
    const pieces = this.#database.transaction(PIECES).objectStore(PIECES).getAll(piecesOf(url));
    return new Blob(await answered<Blob[]>(pieces));
  }

  async finish(url: string): Promise<void> {
    const change = this.#change();
    const kept = await this.#body(change, url);
    if (kept) change.objectStore(BODIES).put({ ...kept, whole: true } satisfies KeptBody, url);
    await done(change);
  }

  async discard(url: string): Promise<void> {
    const change = this.#change();
    change.objectStore(PIECES).delete(piecesOf(url));
    change.objectStore(BODIES).delete(url);
    await done(change);
  }

  async keepIndex(kept: KeptIndex): Promise<void> {
    const change = this.#database.transaction(INDEX, 'readwrite');
    change.objectStore(INDEX).put(kept, INDEX);
    await done(change);
  }

  async keptIndex(): Promise<KeptIndex | null> {
    const kept = this.#database.transaction(INDEX).objectStore(INDEX).get(INDEX);
    return (await answered<KeptIndex | undefined>(kept)) ?? null;
  }

  /** What is stored, for whoever wants to see and clear it. */
  async stored(): Promise<ArchiveStored> {
    const bodies = this.#database.transaction(BODIES).objectStore(BODIES).getAll();
    const parts = (await answered<KeptBody[]>(bodies)).reduce((sum, { bytes }) => sum + bytes, 0);
    return { parts, index: await this.keptIndex() };
  }

  /** Forgets everything. */
  async clear(): Promise<void> {
    const change = this.#database.transaction([BODIES, PIECES, INDEX], 'readwrite');
    for (const store of [BODIES, PIECES, INDEX]) change.objectStore(store).clear();
    await done(change);
  }

  #change(): IDBTransaction {
    return this.#database.transaction([BODIES, PIECES], 'readwrite');
  }

  #body(within: IDBTransaction, url: string): Promise<KeptBody | undefined> {
    return answered(within.objectStore(BODIES).get(url));
  }
}

function piecesOf(url: string): IDBKeyRange {
  return IDBKeyRange.bound([url, 0], [url, Infinity]);
}

function answered<T>(asked: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error ?? new Error('The browser’s database failed.'));
  });
}

function done(change: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    change.oncomplete = () => resolve();
    change.onerror = () => reject(change.error ?? new Error('The browser’s database failed.'));
    change.onabort = () => reject(change.error ?? new Error('The browser’s database failed.'));
  });
}
