import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { loadPack, loadPackIndex, type Fetcher } from '../data/load-pack.ts';
import type { PackIndexEntry } from '../../analysis/records/pack.ts';
import type { OpenPack } from '../data/open-pack.ts';
import { isOwnPack } from '../gather/own-pack-id.ts';
import type { KeptPack } from '../kept/kept-entry.ts';

export type LoadStatus = 'loading' | 'ready' | 'failed';

/** How long the site's list of packs may take where packs are kept here, ms: on a poor line nobody should wait for it. */
const LIST_PATIENCE_MS = 4000;

/** Which packs there are, the site's and those kept here; the one that is open, and how far loading has come. */
export class PackState {
  #status = $state<LoadStatus>('loading');
  /** `null` until the site's list has come. */
  #site = $state.raw<readonly PackIndexEntry[] | null>(null);
  #kept = $state.raw<readonly KeptPack[]>([]);
  #open = $state.raw<OpenPack | null>(null);
  #error = $state<string | null>(null);
  /** A sentence about a pack that was asked for and isn't there. */
  #note = $state<string | null>(null);
  #base: string;
  #fetcher: Fetcher;
  #listKept: () => Promise<readonly KeptPack[]>;
  #asked: string | null = null;
  #turn = 0;

  /** @param listKept packs kept in this browser; never rejects for want of a storage */
  constructor(base: string, fetcher: Fetcher, listKept: () => Promise<readonly KeptPack[]> = async () => []) {
    this.#base = base;
    this.#fetcher = fetcher;
    this.#listKept = listKept;
  }

  get status(): LoadStatus {
    return this.#status;
  }
  /** The site's packs, default first, then those only this browser has. */
  readonly #packs = $derived.by((): readonly PackIndexEntry[] => {
    const site = this.#site ?? [];
    return [
      ...site,
      ...this.#kept.map(({ entry }) => entry).filter(({ id }) => !site.some((s) => s.id === id)),
    ];
  });
  get packs(): readonly PackIndexEntry[] {
    return this.#packs;
  }
  /** Packs kept in this browser, once {@link lookForKept} has looked. */
  get kept(): readonly KeptPack[] {
    return this.#kept;
  }
  /** True once the site's own list of packs has come; false may mean that there is no network. */
  get siteReached(): boolean {
    return this.#site !== null;
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

  /** Reads the list of kept packs again; to be called when one was kept or removed. */
  async lookForKept(): Promise<void> {
    this.#kept = await this.#listKept().catch(() => []);
  }

  /** Open a pack by id, `null` for the first. The latest call wins; the pack that is open stays as it is. */
  async load(packId: string | null): Promise<void> {
    if (packId === this.#asked && this.#status === 'ready') return;
    const turn = ++this.#turn;
    this.#asked = packId;
    this.#status = 'loading';
    this.#error = null;
    try {
      const packs = await this.#find(packId);
      const entry = packs.find(({ id }) => id === packId) ?? packs[0];
      const open = await loadPack(this.#base, entry, this.#fetcher);
      if (turn !== this.#turn) return;
      this.#open = open;
      this.#note = packId === null || entry.id === packId ? null : this.#missing(packId, entry.title);
      this.#status = 'ready';
    } catch (error) {
      if (turn !== this.#turn) return;
      this.#error = error instanceof InputError ? error.message : t`The record pack could not be read.`;
      this.#status = 'failed';
    }
  }

  /** Try again what failed. */
  retry(): Promise<void> {
    return this.load(this.#asked);
  }

  /** Asks for the site's list again where it hasn't come yet; tells whether it is there. */
  async lookForSite(): Promise<boolean> {
    if (!this.#site) await this.#readSite().catch(() => {});
    return this.#site !== null;
  }

  #missing(packId: string, title: string): string {
    if (isOwnPack(packId))
      return t`The address names records of someone’s own (“${packId}”); only the browser they were brought to has them. This is ${title}.`;
    return this.#site
      ? t`There is no record pack “${packId}” here; this is ${title}.`
      : t`The record pack “${packId}” is not kept on this device, and the site can’t be reached; this is ${title}.`;
  }

  /** The packs to choose from: the site's alone where that is enough, since its list is there first. */
  async #find(packId: string | null): Promise<readonly PackIndexEntry[]> {
    const site = this.#site ?? this.#readSite();
    if (this.#site?.some(({ id }) => packId === null || id === packId)) return this.#packs;
    void Promise.resolve(site).catch(() => {});
    const late = new Promise<null>((resolve) => setTimeout(() => resolve(null), LIST_PATIENCE_MS));
    const first = await Promise.race([site, late]).catch(() => null);
    if (first?.some(({ id }) => packId === null || id === packId)) return this.#packs;
    await this.lookForKept();
    if (this.#kept.length === 0) await site;
    return this.#packs;
  }

  async #readSite(): Promise<readonly PackIndexEntry[]> {
    const site = await loadPackIndex(this.#base, this.#fetcher);
    this.#site = site;
    return site;
  }
}
