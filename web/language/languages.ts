import { readKept, type Storage } from '../state/kept.ts';

/** What the page speaks, by BCP 47 tags; English first, the language everything is written in. */
export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

/** Each in its own language, as its speakers look for it. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: 'English', es: 'Español' };

/** Key of the address. */
export const LANGUAGE_PARAMETER = 'lang';
/** Key of the storage. */
export const LANGUAGE_KEY = 'citrus-winters-language';

/**
 * The language to speak: the one of the address, else the one kept from an earlier visit, else the first of the reader's own
 * that there is, else English.
 */
export function chooseLanguage(
  search: string,
  storage: Storage | null,
  readers: readonly string[],
): Language {
  const asked = new URLSearchParams(search).get(LANGUAGE_PARAMETER);
  const own = readers.map((tag) => LANGUAGES.find((language) => isOf(language, tag)));
  return (
    LANGUAGES.find((language) => language === asked) ??
    readKept(storage, LANGUAGE_KEY, LANGUAGES) ??
    own.find((language) => language !== undefined) ??
    'en'
  );
}

/** How figures and dates are written for a reader of a language: as in the region of theirs that speaks it, else as in most. */
export function localeFor(language: Exclude<Language, 'en'>, readers: readonly string[]): string {
  return readers.find((tag) => isOf(language, tag)) ?? language;
}

function isOf(language: Language, tag: string): boolean {
  return tag.toLowerCase().split('-')[0] === language;
}
