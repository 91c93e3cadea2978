import type { Language } from './languages.ts';

/** What was asked for, and what came of it: set once in `main.ts`, before the page is made. */
export const spoken = {
  asked: 'en' as Language,
  language: 'en' as Language,
  /** True where the catalogue of the language asked for didn't come, so that English is spoken instead. */
  isMissing: false,
};
