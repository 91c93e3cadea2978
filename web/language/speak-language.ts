import catalogues from 'virtual:catalogues';

import { speak } from '../../analysis/language/t.ts';
import { localeFor, type Language } from './languages.ts';
import { spoken } from './spoken.ts';

/**
 * Makes the page speak a language; to be called before any module is loaded that says something. Where the catalogue doesn't
 * come the page speaks English, and `spoken` tells so.
 */
export async function speakLanguage(language: Language, readers: readonly string[]): Promise<void> {
  spoken.asked = language;
  if (language === 'en') return;
  try {
    const response = await fetch(catalogues[language]);
    if (!response.ok) throw new Error(`${response.url}: ${response.status}`);
    const phrases = (await response.json()) as Record<string, string>;
    speak(new Map(Object.entries(phrases)), localeFor(language, readers));
    document.documentElement.lang = language;
    spoken.language = language;
  } catch {
    spoken.isMissing = true;
  }
}
