import { InputError } from '../../analysis/records/input-error.ts';
import { loadPack, loadPackIndex, type Fetcher } from '../data/load-pack.ts';
import type { PackIndexEntry } from '../../analysis/records/pack.ts';
import type { OpenPack } from '../data/open-pack.ts';

export type LoadStatus = 'loading' | 'ready' | 'failed';

/** Which packs there are, the one that is open, and how far loading has come. */
export class PackState {
  #status = $state<LoadStatus>('loading');
  #packs = $state.raw<readonly PackIndexEntry[]>([]);
  #open = $state.raw<OpenPack | null>(null);
  #error = $state<string | null>(null);
  /** A sentence about a pack that was asked for and isn't there. */
  #note = $state<string | null>(null);
  #base: string;
  #fetcher: Fetcher;
  #asked: string | null = null;
  #turn = 0;

  constructor(base: string, fetcher: Fetcher) {
    this.#base = base;
    this.#fetcher = fetcher;
  }

  get status(): LoadStatus {
    return this.#status;
  }
  get packs(): readonly PackIndexEntry[] {
    return this.#packs;
  }
  get open(): OpenPack | null {
    return this.#open;
  }
  get error(): string | null {
    return this.#error;
  }
  get note(): string | null {
    return this.#note;
  }

  /** Open a pack by id, `null` for the first. The latest call wins; the pack that is open stays as it is. */
  async load(packId: string | null): Promise<void> {
    if (packId === this.#asked && this.#status === 'ready') return;
    const turn = ++this.#turn;
    this.#asked = packId;
    this.#status = 'loading';
    this.#error = null;
    try {
      const packs = this.#packs.length > 0 ? this.#packs : await loadPackIndex(this.#base, this.#fetcher);
      const entry = packs.find(({ id }) => id === packId) ?? packs[0];
      const open = await loadPack(this.#base, entry, this.#fetcher);
      if (turn !== this.#turn) return;
      this.#packs = packs;
      this.#open = open;
      this.#note =
        packId !== null && entry.id !== packId
          ? `There is no record pack “${packId}” here; this is ${entry.title}.`
          : null;
      this.#status = 'ready';
    } catch (error) {
      if (turn !== this.#turn) return;
      this.#error = error instanceof InputError ? error.message : 'The record pack could not be read.';
      this.#status = 'failed';
    }
  }

  /** Try again what failed. */
  retry(): Promise<void> {
    return this.load(this.#asked);
  }
}
