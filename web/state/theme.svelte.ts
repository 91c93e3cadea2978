import { keep, readKept, type Storage } from './kept.ts';

export const THEME_KEY = 'citrus-winters-theme';
export type Theme = 'light' | 'dark';

/** The part of a media query list this needs. */
export interface DarkQuery {
  readonly matches: boolean;
  addEventListener(type: 'change', listener: () => void): void;
}

/**
 * Light or dark. Nothing kept: the system decides, and goes on deciding. `public/theme.js` sets the kept theme before
 * the first paint with the same key; this class takes over from there. It lives as long as the page.
 */
export class ThemeChoice {
  #chosen = $state<Theme | null>(null);
  #systemDark = $state(false);
  #storage: Storage | null;
  #root: { dataset: Record<string, string | undefined> };

  constructor(
    storage: Storage | null,
    root: { dataset: Record<string, string | undefined> },
    dark: DarkQuery | null = null,
  ) {
    this.#storage = storage;
    this.#root = root;
    this.#chosen = readKept(storage, THEME_KEY, ['light', 'dark'] as const);
    this.#systemDark = dark?.matches ?? false;
    dark?.addEventListener('change', () => (this.#systemDark = dark.matches));
  }

  /** `null`: as the system has it. */
  get chosen(): Theme | null {
    return this.#chosen;
  }

  /** What is on the screen. */
  get shown(): Theme {
    return this.#chosen ?? (this.#systemDark ? 'dark' : 'light');
  }

  choose(theme: Theme | null): void {
    this.#chosen = theme;
    keep(this.#storage, THEME_KEY, theme);
    if (theme === null) delete this.#root.dataset.theme;
    else this.#root.dataset.theme = theme;
  }
}
