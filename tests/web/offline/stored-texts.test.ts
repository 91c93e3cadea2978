import { describe, expect, it } from 'vitest';
import { ageWords } from '../../../web/offline/age-words.ts';
import { OFFLINE_KEY } from '../../../web/offline/offline-state.svelte.ts';
import { storedTexts } from '../../../web/offline/stored-texts.ts';

function storageOf(texts: Record<string, string>) {
  const keys = Object.keys(texts);
  return {
    length: keys.length,
    key: (at: number) => keys[at] ?? null,
    getItem: (key: string) => texts[key] ?? null,
    removeItem: () => {},
  };
}

describe('what of texts is stored', () => {
  it('is told kind by kind with its bytes; what isn’t ours is neither counted nor cleared', () => {
    const stored = storedTexts(
      storageOf({
        'desk-customers': '[é]',
        'desk-remember': 'off',
        'citrus-winters-unit': 'C',
        'citrus-winters-theme': 'dark',
        [OFFLINE_KEY]: 'off',
        'someone-else': 'x',
      }),
    );
    expect(stored.map(({ id, keys, bytes }) => [id, keys, bytes])).toEqual([
      ['customers', ['desk-customers'], 18],
      ['settings', ['desk-remember', 'citrus-winters-unit', 'citrus-winters-theme'], 16 + 20 + 24],
    ]);
  });

  it('is nothing where there is no storage', () => {
    expect(storedTexts(null)).toEqual([]);
    expect(storedTexts(storageOf({}))).toEqual([]);
  });
});

describe('how long ago', () => {
  it.each([
    [0, 'today'],
    [23.9, 'today'],
    [25, 'yesterday'],
    [49, '2 days ago'],
    [24 * 400, '400 days ago'],
    [-5, 'today'],
  ])('%s hours', (hours, words) => {
    const now = Date.UTC(2026, 0, 2);
    expect(ageWords(new Date(now - hours * 3_600_000).toISOString(), now)).toBe(words);
  });
});
