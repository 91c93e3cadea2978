import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PackIndexEntry } from '../../analysis/records/pack.ts';
import { packUrl } from '../data/load-pack.ts';
import { removeKept } from '../kept/kept-packs.ts';
import { keptFile } from '../kept/pack-files.ts';
import type { PackState } from '../state/pack-state.svelte.ts';
import { keepSitePack, manifestOnSite } from './keep-site-pack.ts';

/** A pack on its way to this device. */
export interface PackOnItsWay {
  readonly id: string;
  readonly loaded: number;
  readonly total: number;
}

/** Keeps packs on this device, one at a time, and knows which of them the site has anew. */
export class PackKeeper {
  #running = $state.raw<PackOnItsWay | null>(null);
  #failure = $state.raw<{ readonly id: string; readonly message: string } | null>(null);
  #newer = $state.raw<readonly string[]>([]);
  /** Packs kept anew in this visit, whose older files the page still shows. */
  #renewed = $state.raw<readonly string[]>([]);
  #stop: AbortController | null = null;

  constructor(
    private readonly packs: PackState,
    private readonly base: string,
  ) {}

  get running(): PackOnItsWay | null {
    return this.#running;
  }
  /** Why the last one couldn't be kept. */
  get failure(): { readonly id: string; readonly message: string } | null {
    return this.#failure;
  }
  /** Ids of kept packs of which the site has other files now. */
  get newer(): readonly string[] {
    return this.#newer;
  }
  /** Ids of packs kept anew since the page was opened. */
  get renewed(): readonly string[] {
    return this.#renewed;
  }

  /** Keeps a pack of the site; tells whether it is there now. Does nothing while another is on its way. */
  async keep(entry: PackIndexEntry): Promise<boolean> {
    if (this.#running) return false;
    const stop = new AbortController();
    this.#stop = stop;
    this.#failure = null;
    this.#running = { id: entry.id, loaded: 0, total: entry.bytes };
    const again = this.packs.kept.some((kept) => kept.entry.id === entry.id);
    try {
      await keepSitePack(entry, {
        base: this.base,
        signal: stop.signal,
        onBytes: (loaded, total) => (this.#running = { id: entry.id, loaded, total }),
      });
      this.#newer = without(this.#newer, entry.id);
      if (again) this.#renewed = [...this.#renewed, entry.id];
      return true;
    } catch (error) {
      if (!stop.signal.aborted) this.#failure = { id: entry.id, message: sentence(error) };
      return false;
    } finally {
      this.#running = null;
      await this.packs.lookForKept();
    }
  }

  /** Stops what is on its way; nothing of it stays. */
  cancel(): void {
    this.#stop?.abort();
  }

  async remove(id: string): Promise<void> {
    this.#failure = null;
    try {
      await removeKept(id);
    } catch {
      this.#failure = { id, message: t`This browser refused to remove the pack.` };
    }
    this.#newer = without(this.#newer, id);
    await this.packs.lookForKept();
  }

  /** Compares a kept pack with the site's. A site that can't be reached tells nothing. */
  async compare(entry: PackIndexEntry): Promise<void> {
    const [file, there] = await Promise.all([
      keptFile(`${packUrl(this.base, entry)}pack.json`),
      manifestOnSite(this.base, entry).catch(() => null),
    ]);
    if (!file || there === null || there === (await file.text())) return;
    this.#newer = [...without(this.#newer, entry.id), entry.id];
  }
}

function without(ids: readonly string[], id: string): readonly string[] {
  return ids.filter((other) => other !== id);
}

function sentence(error: unknown): string {
  return error instanceof InputError
    ? error.message
    : t`The pack could not be kept: the connection broke off, or this browser refused.`;
}
