import { describe, expect, it } from 'vitest';
import { keepAddress, type AddressWindow } from '../../../web/state/address-sync.ts';
import { Choices } from '../../../web/state/choices.svelte.ts';

/** A browser window's address and history, as far as the page uses them. */
function makeWindow(search: string): AddressWindow & { entries: string[]; back(): void } {
  const entries = [search];
  let listener: (() => void) | null = null;
  const queryOf = (url: string): string => url.replace(/^[^?]*/, '').replace(/#.*$/, '');
  return {
    entries,
    location: {
      get search() {
        return entries[entries.length - 1];
      },
      pathname: '/',
      hash: '',
    },
    history: {
      pushState: (_data, _unused, url) => void entries.push(queryOf(url)),
      replaceState: (_data, _unused, url) => void (entries[entries.length - 1] = queryOf(url)),
    },
    addEventListener: (_type, heard) => void (listener = heard),
    removeEventListener: () => void (listener = null),
    back() {
      entries.pop();
      listener?.();
    },
  };
}

describe('choices', () => {
  it('answer with the default until something is chosen, and again after it is taken back', () => {
    const choices = new Choices({ unit: 'C' });
    expect([choices.level, choices.years, choices.ageYears, choices.unit]).toEqual(['wood', 10, null, 'C']);
    choices.choose({ level: 'fruit', ageYears: 3, unit: 'F' });
    expect([choices.level, choices.ageYears, choices.unit]).toEqual(['fruit', 3, 'F']);
    choices.choose({ level: undefined });
    expect(choices.level).toBe('wood');
    expect('level' in choices.chosen).toBe(false);
  });

  it('start from the address and report what it could not use', () => {
    const ignored: string[] = [];
    const choices = new Choices({ unit: 'C' });
    keepAddress(choices, makeWindow('?level=leaf&age=old'), (list) => ignored.push(...list));
    expect(choices.level).toBe('leaf');
    expect(ignored).toHaveLength(1);
  });

  it('make a history entry for a choice, none for a slider in motion, and follow Back', () => {
    const view = makeWindow('');
    const choices = new Choices({ unit: 'C' });
    keepAddress(choices, view, () => {});
    choices.choose({ level: 'leaf' });
    choices.choose({ years: 11 }, 'replace');
    choices.choose({ years: 12 }, 'replace');
    choices.choose({ place: { by: 'station', id: 'X1' } });
    expect(view.entries).toEqual(['', '?level=leaf&years=12', '?station=X1&level=leaf&years=12']);
    view.back();
    expect(choices.place).toBeNull();
    expect(choices.years).toBe(12);
    view.back();
    expect(choices.level).toBe('wood');
  });

  it('make no entry when nothing changes', () => {
    const view = makeWindow('?level=leaf');
    const choices = new Choices({ unit: 'C' });
    keepAddress(choices, view, () => {});
    choices.choose({ level: 'leaf' });
    expect(view.entries).toHaveLength(1);
  });
});
