import { keep, readKept, type Storage } from './kept.ts';

export const THEME_KEY = 'citrus-winters-theme';
export type Theme = 'light' | 'dark';

/**
 * Light or dark. Nothing kept: the system decides. `index.html` sets the kept theme before the first paint with the
 * same key; this class takes over from there.
 */
export class ThemeChoice {
  #chosen = $state<Theme | null>(null);
  #storage: Storage | null;
  #root: { dataset: Record<string, string | undefined> };

  constructor(storage: Storage | null, root: { dataset: Record<string, string | undefined> }) {
    this.#storage = storage;
    this.#root = root;
    this.#chosen = readKept(storage, THEME_KEY, ['light', 'dark'] as const);
  }

  /** `null`: as the system has it. */
  get chosen(): Theme | null {
    return this.#chosen;
  }

  choose(theme: Theme | null): void {
    this.#chosen = theme;
    keep(this.#storage, THEME_KEY, theme);
    if (theme === null) delete this.#root.dataset.theme;
    else this.#root.dataset.theme = theme;
  }
}
