import { describe, expect, it } from 'vitest';

import { chooseLanguage, LANGUAGE_KEY, localeFor } from '../../../web/language/languages.ts';

const kept = (language: string): { getItem(key: string): string | null } & Record<string, unknown> => ({
  getItem: (key) => (key === LANGUAGE_KEY ? language : null),
  setItem: () => {},
  removeItem: () => {},
});

describe('the language to speak', () => {
  it('is that of the address, else the one kept, else the reader’s own, else English', () => {
    const storage = kept('en') as never;
    expect(chooseLanguage('?lang=es&unit=C', storage, ['en-US'])).toBe('es');
    expect(chooseLanguage('?lang=xx', storage, ['es-MX'])).toBe('en');
    expect(chooseLanguage('', null, ['fr-CA', 'es-AR', 'en'])).toBe('es');
    expect(chooseLanguage('', null, ['en-GB', 'es'])).toBe('en');
    expect(chooseLanguage('', null, ['eo'])).toBe('en');
    expect(chooseLanguage('', kept('klingon') as never, [])).toBe('en');
  });

  it('is written as in the reader’s region where that speaks it', () => {
    expect(localeFor('es', ['en-US', 'es-MX', 'es'])).toBe('es-MX');
    expect(localeFor('es', ['en-US'])).toBe('es');
  });
});
