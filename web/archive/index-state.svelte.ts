import { indexToKeep, type ArchiveDatabase, type KeptIndex } from './archive-database.ts';
import { failure } from './failure.ts';
import type { Fetching } from './bring.ts';
import { readStationIndex } from './read-index.ts';

/** What the list that is on its way has come to. */
export interface ListProgress {
  readonly list: string;
  readonly come: number;
  readonly total: number | null;
  /** Why it is tried again, and when. */
  readonly again: { readonly reason: string; readonly waitMs: number } | null;
}

/** The index of the archive's stations: kept on the device, read when the reader asks for it. */
export class IndexState {
  #kept = $state.raw<KeptIndex | null>(null);
  #reading = $state.raw<ListProgress | null>(null);
  #error = $state<string | null>(null);
  #stop: AbortController | null = null;
  readonly #database: ArchiveDatabase | null;

  constructor(database: ArchiveDatabase | null, kept: KeptIndex | null) {
    this.#database = database;
    this.#kept = kept;
  }

  get kept(): KeptIndex | null {
    return this.#kept;
  }
  get reading(): ListProgress | null {
    return this.#reading;
  }
  get error(): string | null {
    return this.#error;
  }

  /** Reads it from the archive, in place of the one kept once it is whole. */
  async read(base: string, how: Omit<Fetching, 'signal'>): Promise<void> {
    this.stop();
    const stop = (this.#stop = new AbortController());
    this.#error = null;
    let now: ListProgress = { list: '', come: 0, total: null, again: null };
    const hear = (change: Partial<ListProgress>): void => {
      if (this.#stop === stop) this.#reading = now = { ...now, again: null, ...change };
    };
    hear({});
    try {
      const index = await readStationIndex(
        base,
        { ...how, signal: stop.signal },
        {
          bytes: (list, come, total) => hear({ list, come, total }),
          again: (list, reason, waitMs) => hear({ list, again: { reason, waitMs } }),
        },
      );
      const kept = indexToKeep(index, base);
      this.#kept = kept;
      await this.#database?.keepIndex(kept);
    } catch (error) {
      if (this.#stop === stop) this.#error = await failure(error, stop.signal);
    } finally {
      if (this.#stop === stop) this.#reading = this.#stop = null;
    }
  }

  stop(): void {
    this.#stop?.abort(new DOMException('Stopped by the reader.', 'AbortError'));
    this.#stop = null;
    this.#reading = null;
  }
}
