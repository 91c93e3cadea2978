import { vi } from 'vitest';
import { readCatalogue, translationsOf } from '../data-scripts/language/catalogue.ts';

/**
 * Loads modules anew and in Spanish: many hold their words from when they are loaded, and test files share what others have
 * loaded. {@link forgetSpanish} must follow, so that nothing in Spanish is left to them.
 */
export async function inSpanish<T>(load: () => Promise<T>): Promise<T> {
  vi.resetModules();
  const { speak } = await import('../analysis/language/t.ts');
  speak(translationsOf(readCatalogue('.', 'es')), 'es');
  return load();
}

/** What is loaded after this is in English again. */
export function forgetSpanish(): void {
  vi.resetModules();
}
