import { describe, expect, it } from 'vitest';
import { defaultUnit, UNIT_KEY } from '../../../web/state/default-unit.ts';
import type { Storage } from '../../../web/state/kept.ts';
import { THEME_KEY, ThemeChoice } from '../../../web/state/theme.svelte.ts';
import { memoryStorage } from './memory-storage.ts';

const refusing: Storage = {
  getItem: () => {
    throw new Error('storage is closed');
  },
  setItem: () => {
    throw new Error('storage is closed');
  },
  removeItem: () => {
    throw new Error('storage is closed');
  },
};

describe('the unit to start with', () => {
  it('follows the country of the first language', () => {
    expect(defaultUnit(['en-US', 'en'], null)).toBe('F');
    expect(defaultUnit(['es-Latn-PR'], null)).toBe('F');
    expect(defaultUnit(['en-GB', 'en-US'], null)).toBe('C');
    expect(defaultUnit(['en'], null)).toBe('C');
    expect(defaultUnit([], null)).toBe('C');
  });

  it('prefers the one kept, and bears a storage that refuses or holds rubbish', () => {
    const storage = memoryStorage();
    storage.held.set(UNIT_KEY, 'F');
    expect(defaultUnit(['en-GB'], storage)).toBe('F');
    storage.held.set(UNIT_KEY, 'K');
    expect(defaultUnit(['en-GB'], storage)).toBe('C');
    expect(defaultUnit(['en-US'], refusing)).toBe('F');
  });
});

describe('the theme', () => {
  it('is kept, set on the root, and given back to the system', () => {
    const storage = memoryStorage();
    const root = { dataset: {} as Record<string, string | undefined> };
    const theme = new ThemeChoice(storage, root);
    expect(theme.chosen).toBeNull();
    theme.choose('dark');
    expect([theme.chosen, root.dataset.theme, storage.held.get(THEME_KEY)]).toEqual(['dark', 'dark', 'dark']);
    expect(new ThemeChoice(storage, { dataset: {} }).chosen).toBe('dark');
    theme.choose(null);
    expect([root.dataset.theme, storage.held.size]).toEqual([undefined, 0]);
  });

  it('lasts for the visit when nothing can be kept', () => {
    const theme = new ThemeChoice(refusing, { dataset: {} });
    theme.choose('dark');
    expect(theme.chosen).toBe('dark');
  });
});
