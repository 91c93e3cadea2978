import type { PackIndexEntry } from '../../analysis/records/pack.ts';
import { keep, readKept, type Storage } from '../state/kept.ts';
import type { PackState } from '../state/pack-state.svelte.ts';
import { siteAnswers } from './keep-site-pack.ts';
import { PackKeeper } from './pack-keeper.svelte.ts';
import { PageKeeper } from './page-keeper.svelte.ts';

/** What is kept without being asked for: `page` the page alone, `off` nothing, absent both page and first pack. */
export const OFFLINE_KEY = 'citrus-winters-offline';

/** The pack opened first is kept without being asked for up to here, bytes. */
const KEPT_UNASKED_BYTES = 20_000_000;

/** How long the site may take to show that it is there, ms. */
const REACH_PATIENCE_MS = 8000;

/** How often a page without network looks for it, ms. */
const LOOK_AGAIN_MS = 30_000;

/** The part of `navigator.connection` this needs; not all browsers have it. */
interface Connection {
  readonly saveData?: boolean;
  readonly effectiveType?: string;
}

/** Working without network: whether there is one, and what is kept on this device. */
export class OfflineState {
  readonly page = new PageKeeper();
  readonly packs: PackKeeper;
  #offline = $state(false);
  #again: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly packState: PackState,
    private readonly base: string,
    private readonly storage: Storage | null,
  ) {
    this.packs = new PackKeeper(packState, base);
  }

  /** True while the site can't be reached. */
  get offline(): boolean {
    return this.#offline;
  }

  /** The open pack as it is kept, `undefined` where it isn't. */
  readonly keptOpen = $derived.by(() =>
    this.packState.kept.find(({ entry }) => entry.id === this.packState.open?.entry.id),
  );

  /** Watches the network, and keeps page and first pack unless the reader or a costly line is against it. */
  async begin(): Promise<void> {
    addEventListener('online', () => void this.#look());
    addEventListener('offline', () => void this.#look());
    // A part that didn't come may be the first sign.
    addEventListener('vite:preloadError', () => void this.#look());
    if (!navigator.onLine || !this.packState.siteReached) void this.#look();
    if (this.#unasked) await this.turnOn();
    else await this.page.leaveOff();
    const kept = this.keptOpen;
    if (kept && !kept.own && !this.#offline) await this.packs.compare(kept.entry);
  }

  /** Keeps the page, and the open pack if it is small. */
  async turnOn(): Promise<void> {
    if (this.#choice === 'off') keep(this.storage, OFFLINE_KEY, null);
    await this.page.begin();
    const open = this.packState.open?.entry;
    if (this.page.status !== 'ready' || !open || this.keptOpen || this.#offline || this.#choice !== null)
      return;
    if (open.bytes > 0 && open.bytes <= KEPT_UNASKED_BYTES) await this.packs.keep(open);
  }

  /** Removes the page's files and keeps none until asked. */
  async turnOff(): Promise<void> {
    keep(this.storage, OFFLINE_KEY, 'off');
    await this.page.remove();
  }

  /** Keeps one of the site's packs because the reader asked for it. */
  async keepPack(entry: PackIndexEntry): Promise<void> {
    if (this.#choice === 'page') keep(this.storage, OFFLINE_KEY, null);
    await this.packs.keep(entry);
  }

  /** Removes a kept pack; what was removed is not kept again unasked. */
  async removePack(entry: PackIndexEntry): Promise<void> {
    if (this.#choice === null) keep(this.storage, OFFLINE_KEY, 'page');
    await this.packs.remove(entry.id);
  }

  get #choice(): 'page' | 'off' | null {
    return readKept(this.storage, OFFLINE_KEY, ['page', 'off'] as const);
  }

  get #unasked(): boolean {
    const { saveData, effectiveType = '' } = (navigator as { connection?: Connection }).connection ?? {};
    const costly = saveData === true || effectiveType.endsWith('2g');
    return !costly && this.#choice !== 'off';
  }

  async #look(): Promise<void> {
    const there = navigator.onLine && (await siteAnswers(this.base, REACH_PATIENCE_MS));
    this.#offline = !there;
    clearTimeout(this.#again);
    if (!there) this.#again = setTimeout(() => void this.#look(), LOOK_AGAIN_MS);
    else await this.packState.lookForSite();
  }
}
