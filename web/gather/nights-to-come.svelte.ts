import type { PageState } from '../state/page.svelte.ts';
import { writeNights } from './write-nights.ts';

/** Own packs open before their nights are in a database: which are being written, and what went wrong. */
class NightsToCome {
  #writing = $state.raw<readonly string[]>([]);
  #failed = $state.raw<Readonly<Record<string, string | null>>>({});
  readonly #looked = new Set<string>();
  readonly #attempts = new Map<string, Promise<void>>();

  /** True the first time a pack is asked about. */
  isFirstLook(packUrl: string): boolean {
    const first = !this.#looked.has(packUrl);
    this.#looked.add(packUrl);
    return first;
  }

  /** Whether the nights of a pack are being written, by its address. */
  isWriting(packUrl: string): boolean {
    return this.#writing.includes(packUrl);
  }

  /** Why the nights of a pack were not written; `null` where nothing went wrong. */
  failure(packUrl: string): string | null {
    return this.#failed[packUrl] ?? null;
  }

  /**
   * Resolves once the nights of a pack are in its database, written now where they are not; one attempt for all who ask.
   * @param begun called where they have to be written
   * @throws InputError in one sentence; call again to try again
   */
  async written(packUrl: string, begun: () => void = () => {}): Promise<void> {
    if (this.isWriting(packUrl)) begun();
    let attempt = this.#attempts.get(packUrl);
    if (!attempt) {
      attempt = this.#write(packUrl, begun);
      this.#attempts.set(packUrl, attempt);
    }
    await attempt;
  }

  async #write(packUrl: string, begun: () => void): Promise<void> {
    this.#failed = { ...this.#failed, [packUrl]: null };
    try {
      await writeNights(packUrl, () => {
        this.#writing = [...this.#writing, packUrl];
        begun();
      });
    } catch (error) {
      this.#failed = { ...this.#failed, [packUrl]: error instanceof Error ? error.message : String(error) };
      throw error;
    } finally {
      this.#writing = this.#writing.filter((url) => url !== packUrl);
      this.#attempts.delete(packUrl);
    }
  }
}

export const nightsToCome = new NightsToCome();

/** Has the nights of the own pack that is open written where they are not; each pack is looked at once. */
export async function writeOpen(page: PageState): Promise<void> {
  const url = page.pack?.url;
  if (url === undefined || !nightsToCome.isFirstLook(url)) return;
  // What went wrong is told where own packs are listed, and where the nights are asked for.
  await nightsToCome.written(url).catch(() => {});
  await page.packs.lookForKept();
}
